"""All reviews of a run as one text of a kind: for files, browsers and machines."""

from collections.abc import Iterable, Iterator

from ..judging.review import Outcome


def document(
    outcomes: Iterator[tuple[str, Outcome]],
    kind: str,
    dated: bool,
    full: bool,
    drawn: tuple[int, int] | None = None,
) -> Iterable[str]:
    """The text in pieces; only what makes this kind is imported.

    drawn: number and seed of the builds that a page shows.
    """
    if kind == "sarif":
        from .assess_sarif import sarif_pieces

        return sarif_pieces(outcomes, dated, full)
    if kind == "page":
        from .assess_html import html_report

        return [html_report(list(outcomes), dated, drawn)]
    if kind == "markdown":
        from .assess_markdown import markdown_pieces

        return markdown_pieces(outcomes, dated)
    if kind == "junit":
        from .assess_junit import junit_pieces

        return junit_pieces(outcomes, dated)
    if kind == "lines":
        from .assess_lines import line_pieces

        return line_pieces(outcomes, full)
    from .assess_json import json_lines, json_pieces

    return json_pieces(outcomes, dated) if kind == "json" else json_lines(outcomes, dated)

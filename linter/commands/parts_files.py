"""Parts files among the files of ``assess``: each judged by itself."""

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from ..commands import HELD, NOT_ASSESSED, RELEASED, print_or_write
from .report_option import Report

if TYPE_CHECKING:
    from rich.console import Console

    from ..judging.parts_review import PartsReview
    from ..reading.refusal import Refusal

    Reviewed = tuple[str, PartsReview | tuple[Refusal, ...]]

KINDS = ("text", "markdown", "json")
"""The reports that there are of a parts file."""


def assess_parts(paths: Iterable[Path], reports: Sequence[Report], overwrite: bool) -> int:
    """Make the reports on parts files; the worst file decides the exit status."""
    from ..judging.parts_review import PartsReview, review_parts

    paths = list(paths)
    found = [(str(path), review_parts(path)) for path in paths]
    worst = max(
        NOT_ASSESSED if not isinstance(x, PartsReview) else HELD if x.holds else RELEASED
        for _, x in found
    )
    for report in reports:
        if report.kind == "text" and report.target is None:
            _print(found)
        elif print_or_write(_text(found, report.kind), report.target, overwrite, *paths):
            return NOT_ASSESSED
    return worst


def _text(found: "list[Reviewed]", kind: str) -> str:
    """A report as the text of a file."""
    import io

    from ..reports.console import FILE_WIDTH, console
    from ..reports.parts_json import parts_json
    from ..reports.parts_markdown import parts_markdown

    if kind == "text":
        text = io.StringIO()
        _print(found, console(text, FILE_WIDTH))
        return text.getvalue()
    return parts_json(found) if kind == "json" else parts_markdown(found)


def _print(found: "list[Reviewed]", page: "Console | None" = None) -> None:
    """Print the review of each file."""
    from ..judging.parts_review import PartsReview
    from ..reports.assess_text import print_refusals
    from ..reports.console import console
    from ..reports.parts_text import print_parts

    page = page or console()
    for name, item in found:
        if isinstance(item, PartsReview):
            print_parts(item, page)
        else:
            print_refusals(name, item, page)

"""The reviews of parts files as a Markdown document."""

from collections.abc import Iterable, Iterator

from ..judging.parts_review import PartReview, PartsReview
from ..reading.refusal import Refusal
from .identity import text_hash
from .markdown import markdown_table, refusals_markdown
from .parts_text import COMPLETE, NOTE, missing_of, stated_in, verdict_of
from .phrases import escaped, place_in_words
from .verdict import DISCLAIMER


def parts_markdown(found: Iterable[tuple[str, PartsReview | tuple[Refusal, ...]]]) -> str:
    """One document for all files: what contradicts, and what is missing."""
    parts = ["# Parts files"]
    for name, item in found:
        parts += _file(item) if isinstance(item, PartsReview) else refusals_markdown(name, item)
    return "\n\n".join([*parts, NOTE, f"*{DISCLAIMER}*"]) + "\n"


def _file(found: PartsReview) -> Iterator[str]:
    verdict, why = verdict_of(found)
    yield f"## {escaped(found.file.file)}"
    yield f"**{verdict}** {why}. SHA-256 {text_hash(found.file.text)}"
    for part in found.parts:
        yield from _part(part)


def _part(part: PartReview) -> Iterator[str]:
    yield f"### {escaped(part.kind)} {escaped(part.name)}"
    yield f"{stated_in(part)}."
    if part.findings:
        rows = (
            (x.severity.value if x.severity else "", x.message, place_in_words(x.place))
            for x in part.findings
        )
        yield markdown_table(("severity", "finding", "location"), rows)
    if part.wanted:
        yield markdown_table(("missing for", "values"), missing_of(part))
    else:
        yield f"{COMPLETE.capitalize()}."

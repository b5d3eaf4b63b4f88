"""Tables of Markdown that several reports share."""

from collections.abc import Iterable, Iterator, Sequence

from ..judging.review import Review
from ..reading.refusal import Refusal
from .phrases import escaped, place_in_words
from .promise_words import HEADS, judged_with, promise_rows


def markdown_table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """Rows as a table, their cells escaped."""
    lines = [heads, ["---"] * len(heads), *([escaped(cell) for cell in row] for row in rows)]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)


def promise_markdown(review: Review) -> Iterator[str]:
    """The promises as a section; nothing where there is none."""
    rows = [(row.outlook, row.promised, row.allowed) for row in promise_rows(review.promises)]
    if rows:
        yield "### Promises"
        yield markdown_table(HEADS, rows)
        if given := judged_with(review):
            yield f"The promises are {escaped(given)}."


def refusals_markdown(name: str, refusals: Sequence[Refusal]) -> Iterator[str]:
    """Why a file was not assessed, as a section."""
    yield f"## {escaped(name)}"
    yield "**NOT ASSESSED.** The file must be put right first."
    rows = [
        (item.place.file, place_in_words(item.place), item.problem, item.expected, item.example)
        for item in refusals
    ]
    yield markdown_table(("file", "location", "problem", "expected", "for example"), rows)

"""Tables of Markdown that several reports share."""

from collections.abc import Iterable, Iterator, Sequence

from ..judging.promises import Promised
from .phrases import escaped
from .promise_words import HEADS, promise_rows


def markdown_table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """Rows as a table, their cells escaped."""
    lines = [heads, ["---"] * len(heads), *([escaped(cell) for cell in row] for row in rows)]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)


def promise_markdown(promises: Iterable[Promised]) -> Iterator[str]:
    """The promises as a section; nothing where there is none."""
    rows = [(row.outlook, row.promised, row.allowed) for row in promise_rows(promises)]
    if rows:
        yield "### Promises"
        yield markdown_table(HEADS, rows)

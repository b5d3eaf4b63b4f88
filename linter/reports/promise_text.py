"""The promises as a table at a terminal."""

from collections.abc import Sequence
from itertools import chain

from rich.text import Text

from ..judging.promised import Outlook
from ..judging.review import Review
from .lines import folded, hanging
from .promise_words import HEADS, STYLES, PromiseRow, judged_with, promise_rows

CELL = 2
SUPPORTED: Outlook = "supported"

Widths = tuple[int, int, int]


def promise_lines(review: Review, width: int, most: int = 0) -> list[Text]:
    """The promises as a table of at most so many lines.

    most: 0 for all of them, each in full.  Where they do not fit, those that are supported
    are told by name, and then the last of the others.
    """
    rows = promise_rows(review.promises)
    if not rows:
        return []
    given = judged_with(review)
    note = hanging("", given, width, ("", "dim"), CELL) if given else []
    widths = _columns(rows, width)
    blocks = [_row(_cells(row), widths, STYLES[row.outlook], CELL if most else 0) for row in rows]
    shown = len(rows)
    while most and shown and len(_listed(rows, blocks, shown, widths)) + len(note) > most:
        shown -= 1
    return [*_listed(rows, blocks, shown, widths), *note]


def _cells(row: PromiseRow) -> tuple[str, str, str]:
    return row.outlook, row.promised, row.allowed


def _listed(
    rows: Sequence[PromiseRow], blocks: Sequence[list[Text]], shown: int, widths: Widths
) -> list[Text]:
    """The first rows in full, the others by name behind their outlook."""
    if shown < len(rows):  # what is supported needs no numbers
        shown = min(shown, sum(row.outlook != SUPPORTED for row in rows))
    lines = [Text(), _row(HEADS, widths, "dim")[0], *chain.from_iterable(blocks[:shown])]
    names: dict[Outlook, list[str]] = {}
    for row in rows[shown:]:
        names.setdefault(row.outlook, []).append(row.name)
    for outlook, found in names.items():
        lead = outlook.ljust(widths[0])
        told = ", ".join(dict.fromkeys(found))
        lines += hanging(lead, told, sum(widths) + 2, (STYLES[outlook], ""), CELL)
    return lines


def _columns(rows: Sequence[PromiseRow], width: int) -> Widths:
    """The widths of outlook, promise and what is allowed."""
    first = max(len(row.outlook) for row in rows) + 2
    second = min(max(len(row.promised) for row in rows), (width - first) // 2)
    return max(first, len(HEADS[0]) + 2), second, width - first - second - 2


def _row(cells: Sequence[str], widths: Widths, style: str, most: int = 0) -> list[Text]:
    """One row of three cells, of as many lines as the longest cell takes."""
    columns = [folded(cell, size, most) for cell, size in zip(cells, widths, strict=True)]
    lines = []
    for number in range(max(map(len, columns))):
        texts = [column[number] if number < len(column) else "" for column in columns]
        first, second, third = texts
        line = Text(" ").append(first.ljust(widths[0]), style)
        line.append(second.ljust(widths[1] + 2)).append(third)
        line.rstrip()
        lines.append(line)
    return lines

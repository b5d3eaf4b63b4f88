"""Rows in columns that leave every word and name whole, or below each other if they cannot.

A line may end at a blank, but not between a number and its unit, and in a path after a dot.
A name that stands alone stays whole otherwise; in a text a line may end with its hyphen.
"""

import re
from collections.abc import Collection, Iterable, Sequence

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from .phrases import clean

IN_PATH = r"(?<=\w\.)(?=[a-z_])"
IN_WORD = r"(?<=[a-z]{3}[-/])(?=[a-z])"
UNIT = r"(?<=\d\s)(?:%|[a-zA-ZµΩ°][\w°/²]{0,5})(?:[\s,;)}]|$)"
IN_NAME = re.compile(IN_PATH)
IN_TEXT = re.compile(rf"(?<=\s)(?<!±\s)(?!{UNIT})|{IN_PATH}|{IN_WORD}")
BESIDE = 2
LEAST = 12

Row = Sequence[str]


def print_columns(
    heads: Row,
    rows: Iterable[Row],
    console: Console,
    plain: Collection[str] = (),
    strong: Collection[int] = (),
    indent: int = 0,
) -> None:
    """Print rows as a table, or one below the other where the terminal is too narrow.

    plain: headings that go without saying once rows stand below each other.  strong: the
    numbers of rows to be printed bold.
    """
    cleaned = [[clean(cell) for cell in row] for row in rows]
    widths = fitted([heads, *cleaned], console.width - indent)
    if not cleaned:
        return
    if widths is None:
        for number, row in enumerate(cleaned):
            _print_below(heads, row, console, plain, number in strong)
        return
    table = Table(box=None, padding=(0, 1), show_edge=False, header_style="dim")
    for head, width in zip(heads, widths, strict=True):
        table.add_column(wrapped(head, width), width=width, vertical="top")
    for number, row in enumerate(cleaned):
        cells = (wrapped(cell, width) for cell, width in zip(row, widths, strict=True))
        table.add_row(*cells, style="bold" if number in strong else "")
    console.print(Padding(table, (0, 0, 0, indent)))


def fitted(rows: Sequence[Row], room: int) -> list[int] | None:
    """The widths of the columns, the widest of them narrowed first; None if there is no room.

    >>> fitted([["ab cd", "feed.voltage"], ["x", "y"]], 24), fitted([["abc", "def"]], 8)
    ([5, 12], None)
    """
    columns = list(zip(*rows, strict=True))
    widths = [max(map(len, column)) for column in columns]
    least = [
        max(min(width, LEAST), *(len(piece.rstrip()) for cell in column for piece in pieces(cell)))
        for width, column in zip(widths, columns, strict=True)
    ]
    room -= BESIDE * len(columns)
    if sum(least) > room:
        return None
    while sum(widths) > room:
        wide = [n for n in range(len(widths)) if widths[n] > least[n]]
        widths[max(wide, key=lambda n: widths[n])] -= 1
    return widths


def pieces(text: str) -> list[str]:
    """The parts of a text between which a line may end, with the blanks behind them.

    >>> pieces("fig. 9, stage.coil.l at 0.5 A, half-open")
    ['fig. ', '9, ', 'stage.', 'coil.', 'l ', 'at ', '0.5 A, ', 'half-', 'open']
    >>> pieces("long-check-name")
    ['long-check-name']
    """
    return (IN_TEXT if " " in text else IN_NAME).split(text)


def wrapped(text: str, width: int) -> str:
    r"""A text in lines of at most a width, as far as its pieces allow.

    >>> wrapped("channels.left.stage.coils.l", 14)
    'channels.left.\nstage.coils.l'
    """
    lines = [""]
    for piece in pieces(text):
        if lines[-1] and len(lines[-1] + piece.rstrip()) > width:
            lines.append("")
        lines[-1] += piece
    return "\n".join(line.rstrip() for line in lines)


def _print_below(
    heads: Row, row: Row, console: Console, plain: Collection[str], strong: bool
) -> None:
    first, *others = row
    named = zip(heads[1:], others, strict=True)
    told = (cell if head in plain else f"{head} {cell}" for head, cell in named if cell)
    lines = wrapped(f"{first}: {'; '.join(told)}", console.width - 2 * BESIDE)
    text = Text(lines, style="bold" if strong else "")
    text.stylize("bold", 0, lines.index(":"))
    console.print(Padding(Text.assemble("▪ ", text), (0, 1)))

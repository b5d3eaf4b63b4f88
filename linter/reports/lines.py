"""Lines of text of a known width: what a page can be counted by, printed without tables."""

from collections.abc import Iterable, Sequence

from rich.cells import cell_len, chop_cells
from rich.console import Console
from rich.text import Text

from .columns import wrapped
from .phrases import clean

MOST_WIDTH = 100
EDGE = 1
CUT = " …"


def room(console: Console) -> int:
    """The width that text may take: long lines read badly, however wide a terminal is."""
    return min(console.width, MOST_WIDTH) - EDGE


def folded(text: str, width: int, most: int = 0) -> list[str]:
    """A text in lines of at most a width; beyond ``most`` lines it is cut.

    >>> folded("one two three", 8), folded("one two three", 8, 1)
    (['one two', 'three'], ['one …'])
    """
    width = max(width, 1)
    lines = [
        piece
        for line in wrapped(" ".join(clean(text).split()), width).split("\n")
        for piece in (chop_cells(line, width) if cell_len(line) > width else [line])
    ]
    if not most or len(lines) <= most:
        return lines
    last = lines[most - 1]
    while cell_len(last) > max(width - len(CUT), 0):
        last = last.rpartition(" ")[0] if " " in last else last[:-1]
    return [*lines[: most - 1], last + CUT]


def hanging(
    lead: str, text: str, width: int, styles: tuple[str, str] = ("", ""), most: int = 0
) -> list[Text]:
    """A text behind a lead, its further lines below its first one.

    styles: of the lead and of the text.  most: lines at most.
    """
    blank, found = " " * cell_len(lead), []
    for number, line in enumerate(folded(text, width - cell_len(lead), most)):
        first = blank if number else lead
        found.append(Text.assemble(" " * EDGE, (first, styles[0]), (line, styles[1])))
    return found


def fitting(lead: str, forms: Sequence[str], width: int, most: int) -> list[Text]:
    """The first of ever shorter forms that takes so many lines at most, else the last in full."""
    found = [hanging(lead, text, width, ("dim", "")) for text in forms]
    return next((lines for lines in found if len(lines) <= most), found[-1])


def print_lines(lines: Iterable[Text], console: Console) -> None:
    """Print lines as they are."""
    console.print(Text("\n").join(lines), soft_wrap=True)

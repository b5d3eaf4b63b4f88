"""The bring-up sheet as plain text for a printer."""

from collections.abc import Iterator

from rich.console import Console
from rich.text import Text

from ..judging.bringup import SheetStep
from ..judging.review import Review
from .bringup_words import (
    BOARD,
    HEADS,
    NOTES,
    SIGNED,
    blanks,
    expected,
    lacking,
    leaning,
    standing,
    stop,
    title_of,
    whose,
)
from .columns import print_columns
from .identity import text_hash
from .lines import hanging, print_lines, room
from .phrases import clean
from .verdict import DISCLAIMER

RED = ("bold red", "")
INDENT = 4


def print_sheet(review: Review, steps: tuple[SheetStep, ...], console: Console) -> None:
    """Print the sheet, one step below the other."""
    width = room(console)
    print_lines(_head(review, width), console)
    for step in steps:
        console.print()
        print_lines(_step(step, width), console)
        if step.figures:
            rows = [(whose(step, x), expected(x), stop(x), blanks(x)) for x in step.figures]
            print_columns(HEADS, rows, console, indent=INDENT)
        print_lines(_foot(step, width), console)
    console.print()
    print_lines(hanging("", DISCLAIMER, width, ("", "dim")), console)


def _head(review: Review, width: int) -> Iterator[Text]:
    spec = review.spec
    yield from hanging("", title_of(review), width, ("", "bold"))
    yield from hanging("", f"{spec.file}, SHA-256 {text_hash(spec.text)}", width, ("", "dim"))
    yield Text()
    yield from hanging("", BOARD, width)
    yield Text()
    yield from hanging("", standing(review), width, ("", "bold"))
    for note in NOTES:
        yield from hanging("", note, width)


def _step(step: SheetStep, width: int) -> Iterator[Text]:
    yield Text.assemble(f" {step.number:2}  ", (clean(step.title), "bold"))
    for caution in step.cautions:
        yield from hanging(f"    {caution.signal:<8} ", caution.text, width, RED)
    yield from hanging("    with     ", step.instrument, width, ("dim", ""))
    for line in step.lines:
        yield from hanging("    ☐ ", line, width)


def _foot(step: SheetStep, width: int) -> Iterator[Text]:
    for note in filter(None, (lacking(step), leaning(step))):
        yield from hanging("    ", note, width, ("", "dim"))
    yield Text(f" {SIGNED:>{width - 1}}")

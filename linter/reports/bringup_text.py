"""The bring-up sheet as plain text for a printer."""

from collections.abc import Iterator

from rich.console import Console
from rich.text import Text

from ..check import Caution
from ..evaluation.bringup_steps import notes_of
from ..judging.bringup import SheetStep
from ..judging.review import Review
from .bringup_words import (
    BOARD,
    HEADS,
    NOTE,
    SIGNED,
    beyond,
    blanks,
    expected,
    lacking,
    leaning,
    standing,
    stop,
    throughout,
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
    often = throughout(steps)
    print_lines(_head(review, often, width), console)
    for step in steps:
        console.print()
        print_lines(_step(step, often, width), console)
        if step.figures:
            rows = [(whose(step, x), expected(x), stop(x), blanks(x)) for x in step.figures]
            print_columns(HEADS, rows, console, indent=INDENT)
        print_lines(_foot(step, width), console)
    console.print()
    print_lines(hanging("", DISCLAIMER, width, ("", "dim")), console)


def _head(review: Review, often: tuple[Caution, ...], width: int) -> Iterator[Text]:
    spec = review.spec
    yield from hanging("", title_of(review), width, ("", "bold"))
    yield from hanging("", f"{spec.file}, SHA-256 {text_hash(spec.text)}", width, ("", "dim"))
    yield Text()
    yield from hanging("", BOARD, width)
    yield Text()
    yield from hanging("", standing(review), width, ("", "bold"))
    for note in (NOTE, *notes_of(review.catalogue)):
        yield from hanging("", note, width)
    if often:
        yield Text()
        yield from hanging("", "In every step:", width)
    yield from _cautions(often, width)


def _step(step: SheetStep, often: tuple[Caution, ...], width: int) -> Iterator[Text]:
    yield Text.assemble(f" {step.number:2}  ", (clean(step.title), "bold"))
    if beyond(step):
        yield from hanging("    ", beyond(step), width, RED[::-1])
    yield from _cautions(tuple(x for x in step.cautions if x not in often), width)
    yield from hanging("    with     ", step.instrument, width, ("dim", ""))
    for line in step.lines:
        yield from hanging("    ☐ ", line, width)


def _cautions(cautions: tuple[Caution, ...], width: int) -> Iterator[Text]:
    for caution in cautions:
        yield from hanging(f"    {caution.signal:<8} ", caution.text, width, RED)


def _foot(step: SheetStep, width: int) -> Iterator[Text]:
    for note in (lacking(step), leaning(step)):
        yield from hanging("    ", note, width, ("", "dim")) if note else ()
    yield Text(f" {SIGNED:>{width - 1}}")

"""What a sweep comes to."""

from rich.console import Console
from rich.text import Text

from ..batch.result import Word
from ..sweeping.region import boxes, in_words
from ..sweeping.sweep import Tally
from .lines import hanging, print_lines, room

MOST_HOLDERS = 5
BETWEEN = "Only these values were tried; what lies between two of them is not proven."


def print_summary(file: str, tally: Tally, console: Console, output: str) -> None:
    """Print how many variants are released, where, and what holds the others."""
    width = room(console)
    words: tuple[Word, ...] = ("released", "held", "not assessed")
    counts = ", ".join(f"{tally.number(word)} {word}" for word in words)
    size = len(tally.verdicts)
    lines = hanging("", f"{size} variants of {file}: {counts}", width, ("", "bold"))
    lines.append(Text())
    for axis in tally.axes:
        spreads = dict.fromkeys(item.told for item in axis.spread.values() if item.told)
        kept = f"; each with the stated spread, {' or '.join(spreads)}" if spreads else ""
        lines += hanging(f"{axis.path}  ", axis.in_words() + kept, width)
    lines.append(Text())
    lines += _region(tally, width)
    if tally.holders:
        told = [f"{name} ({number})" for name, number in tally.holders.most_common(MOST_HOLDERS)]
        more = len(tally.holders) - len(told)
        rest = f" and {more} more" if more else ""
        lines += hanging("Gravest finding of those held  ", ", ".join(told) + rest, width)
    lines += hanging("", BETWEEN, width)
    if output:
        lines += hanging("", f"Table: {output}", width)
    print_lines(lines, console)


def _region(tally: Tally, width: int) -> list[Text]:
    """Where it is released, box by box."""
    released = [word == "released" for word in tally.verdicts]
    if not any(released):
        return hanging("Released  ", "nowhere among these variants", width)
    if all(released):
        return hanging("Released  ", "everywhere among these variants", width)
    axes = tally.axes
    found = boxes(tally.points, released, [axis.is_numeric for axis in axes])
    known = [frozenset(values) for values in zip(*tally.points, strict=True)]
    lines, told = [], set[int]()
    for number, box in enumerate(found):
        more = len(box.inside - told)
        told |= box.inside
        text = f"{in_words(box, axes, known)} ({more} variants)"
        lines += hanging("and for       " if number else "Released for  ", text, width)
    rest = sum(released) - len(told)
    if rest:
        lines += hanging("", f"and {rest} more, scattered: see the table", width)
    return lines

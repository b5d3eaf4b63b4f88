"""Two checks that pull one value apart: the proof that no value of it meets both.

The value runs over its usual range while every other leaf stands at the worst corner that
each check reported; each check allows a part of the range, and the parts do not meet.
"""

from dataclasses import dataclass

from .catalogue import Entry
from .check import Lever
from .engine import Assessment
from .finding import Finding
from .quantity import show
from .solve import Dial, number_dial, probe
from .spec import local_path


@dataclass(frozen=True, slots=True)
class Part:
    """The part of a range that a check allows, as the grid shows it."""

    name: str
    allowed: tuple[bool, ...]
    text: str


def conflict(
    run: Assessment,
    lever: Lever,
    path: str,
    one: tuple[Entry, Finding],
    others: list[tuple[Entry, Finding]],
) -> str:
    """The first of other checks whose part of the range leaves nothing to the first one.

    Empty where the range of some value meets them all, or cannot be searched.
    """
    turn = number_dial(run, lever, path)
    if turn is None:
        return ""
    first = _part(run, turn, *one)
    for entry, finding in others:
        second = _part(run, turn, entry, finding)
        if first is None or second is None or not any(first.allowed) or not any(second.allowed):
            continue
        if not any(a and b for a, b in zip(first.allowed, second.allowed, strict=True)):
            span = f"{show(turn.low, turn.unit)} .. {show(turn.high, turn.unit)}"
            return (
                f"no {local_path(path)} in {span} meets both {first.name} ({first.text})"
                f" and {second.name} ({second.text})"
            )
    return ""


def _part(run: Assessment, turn: Dial, entry: Entry, finding: Finding) -> Part | None:
    meets = probe(run, entry, finding, turn)
    if meets is None:
        return None
    grid = turn.grid()
    allowed = tuple(meets(point) for point in grid)
    return Part(entry.name, allowed, _region(grid, allowed, turn.unit))


def _region(grid: list[float], allowed: tuple[bool, ...], unit: str) -> str:
    """The allowed part in words: up to, from, or between."""
    inside = [point for point, fine in zip(grid, allowed, strict=True) if fine]
    if not inside:
        return "nowhere"
    low, high = show(inside[0], unit, 2), show(inside[-1], unit, 2)
    if inside[0] == grid[0]:
        return "anywhere" if inside[-1] == grid[-1] else f"up to about {high}"
    return f"from about {low}" if inside[-1] == grid[-1] else f"about {low} .. {high}"

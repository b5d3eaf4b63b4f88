"""Two checks that pull one value apart: the proof that no value of it meets both.

The value runs over its usual range while every other leaf stands at the worst corner that
each check reported; each check allows a part of the range, and the parts do not meet.
"""

from ..check import Lever
from ..declare import local_path
from ..evaluation.catalogue import Entry
from ..evaluation.engine import Assessment
from ..finding import Finding
from ..quantities.quantity import show
from .solve import numeric_leaf, probe


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
    leaf = numeric_leaf(run, lever, path)
    if leaf is None:
        return ""
    grid = leaf.grid()
    meets = probe(run, *one, leaf)
    first = [meets(point) for point in grid] if meets else []
    here = [point for point, fine in zip(grid, first, strict=bool(first)) if fine]
    for entry, finding in others if here else ():
        meets = probe(run, entry, finding, leaf)
        if meets is None or any(meets(point) for point in here):
            continue
        second = [meets(point) for point in grid]
        if any(second):
            span = f"{show(leaf.low, leaf.unit)} .. {show(leaf.high, leaf.unit)}"
            return (
                f"no {local_path(path)} in {span} meets both"
                f" {one[0].name} ({_region(grid, first, leaf.unit)})"
                f" and {entry.name} ({_region(grid, second, leaf.unit)})"
            )
    return ""


def _region(grid: list[float], allowed: list[bool], unit: str) -> str:
    """The allowed part in words: up to, from, or between."""
    inside = [point for point, fine in zip(grid, allowed, strict=True) if fine]
    if not inside:
        return "nowhere"
    low, high = show(inside[0], unit, 2), show(inside[-1], unit, 2)
    if inside[0] == grid[0]:
        return "anywhere" if inside[-1] == grid[-1] else f"up to about {high}"
    return f"from about {low}" if inside[-1] == grid[-1] else f"about {low} .. {high}"

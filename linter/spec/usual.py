"""Usual ranges: text to numbers, and a value from the middle of one as an example."""

import math
from functools import cache

from ..quantity import to_si


def ends(usual: str) -> tuple[str, str]:
    """The two ends of ``low .. high unit`` as text, the unit on both."""
    low, high = usual.removeprefix("0 or ").split(" .. ")
    number, _, unit = high.partition(" ")
    return (f"{low} {unit}", f"{number} {unit}") if unit else (low, number)


@cache
def bounds(usual: str, unit: str) -> tuple[float, float]:
    """The two ends of a usual range in SI."""
    low, high = ends(usual)
    return to_si(low, unit), to_si(high, unit)


def middle(usual: str) -> str:
    """A round value from the middle of a usual range: what an example may look like."""
    if not usual:
        return ""
    low, high = (end.split(" ") for end in ends(usual))
    bottom, top = float(low[0]), float(high[0])
    if top < 4 * bottom or bottom < 0:
        return " ".join([f"{float(f'{(bottom + top) / 2:.2g}'):g}", *high[1:]])
    value = math.sqrt(bottom * top)
    digits = -math.floor(math.log10(value))
    return " ".join([f"{round(value, digits):g}", *high[1:]])

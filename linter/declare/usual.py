"""Usual ranges: text to numbers, and a value from the middle of one as an example."""

import math
import sys
from functools import cache

from ..quantities.quantity import to_si


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


# No slip of a prefix reaches further: from pico to milli, from micro to kilo.
REACH = 1e9
# What a quantity of a unit can be at all: not colder than liquid nitrogen, a share of a whole,
# the phase of a passive impedance; to the others a ratio is applied.
POSSIBLE = {
    "degC": "-200 .. 1000 degC",
    "dB": "-200 .. 300 dB",
    "%": "0 .. 100 %",
    "K": "0 .. 1000 K",
    "deg": "0 .. 90 deg",
}
MOST_COUNTED = 1000


@cache
def limits(usual: str, usual_high: str, possible: str, unit: str) -> tuple[float, float]:
    """The range in SI beyond which a value cannot be meant."""
    stated = possible or POSSIBLE.get(unit, "")
    if stated:
        return bounds(stated, unit)
    if not usual:
        return -sys.float_info.max, sys.float_info.max
    return bounds(usual, unit)[0] / REACH, bounds(usual_high or usual, unit)[1] * REACH


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

"""What a stated value has around it, kept when other values take its place.

To vary a value does not make it exact: ``10 uH ± 20 %`` varied to 12 uH is ``12 uH ± 20 %``, and
the sides of a data-sheet line keep their ratios (of temperatures and levels their distances).
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from ..quantities.quantity import Value, spell
from ..reading.validation import Leaf

TOLERANCE = re.compile(r"\s*(±|\+/-|\+-|\+(?=[^-]*-)|-(?=[^+]*\+)).*", re.DOTALL)
SHIFTED = ("degC", "dB")


@dataclass(frozen=True, slots=True)
class Spread:
    """told: in words, empty where there is none; around: a number in SI units as plain data."""

    told: str
    around: Callable[[float], object]


def spread_of(stated: Leaf | None, unit: str) -> Spread:
    """The spread of a stated value; a range is a condition, and no spread."""

    def exact(x: float) -> object:
        return spell(Value(x, x, x), unit)

    if isinstance(stated, Value) and stated.form == "tolerance":
        tolerance = TOLERANCE.search(stated.text.lstrip("+-"))
        if tolerance:
            text = tolerance[0].strip()
            return Spread(text, lambda x: f"{exact(x)} {text}")
    if isinstance(stated, Value) and stated.form == "line":
        line = replace(stated, provenance=None)
        return Spread(stated.text, lambda x: spell(_moved(line, x, unit), unit))
    return Spread("", exact)


def _moved(line: Value, x: float, unit: str) -> Value:
    """A data-sheet line around another nominal value."""
    if unit in SHIFTED or line.nominal == 0.0:
        step = x - line.nominal
        return replace(line, lo=line.lo + step, nominal=x, hi=line.hi + step)
    factor = x / line.nominal
    return replace(line, lo=line.lo * factor, nominal=x, hi=line.hi * factor)

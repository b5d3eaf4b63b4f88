"""The border of a missing value: from where on a check is met, solved by bisection."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

from ..check import Check
from ..finding import CLEAR, Severity
from ..quantities.quantity import Value, show
from .node import Computed, Moved
from .threshold import ZERO_CELSIUS, missed

SCAN = 16
BISECTIONS = 40
DIGITS = 3
NO_DIFFERENCE = 1e-9


@dataclass(frozen=True, slots=True)
class Border:
    """What a value must be for a check to be met: at least or at most so much, in SI.

    beyond: what the check finds a hair beyond it.  end: ``low`` or ``high`` of a range.
    """

    at_least: bool
    value: float
    unit: str
    beyond: Severity | None = None
    end: str = ""

    def __str__(self) -> str:
        side = "at least" if self.at_least else "at most"
        end = {"low": " at its lower end", "high": " at its upper end"}.get(self.end, "")
        return f"{side} {show(self.value, self.unit, DIGITS)}{end}"


def rank_of(severity: Severity | None) -> int:
    """The rank of a finding; a check that is met ranks behind all."""
    return CLEAR if severity is None else severity.rank


def points_of(leaf: Value) -> list[float]:
    """Values over a range, in equal ratios where it does not begin at zero."""
    low, high = leaf.lo, leaf.hi
    if low > 0.0:
        return [low * (high / low) ** (n / SCAN) for n in range(SCAN + 1)]
    return [low + (high - low) * n / SCAN for n in range(SCAN + 1)]


def solved(
    node: Computed,
    corner: Mapping[str, float],
    check: Check,
    path: str,
    unit: str,
    avoids: Severity | None = None,
) -> Border | None:
    """The border of one leaf at a corner of the others; ``avoids`` as a finding that must not be.

    None where the check is not met from there to one end of the leaf's range.
    """
    limit = CLEAR if avoids is None else avoids.rank + 1

    def found(x: float) -> Severity | None:
        return missed(check, float(node.value(Moved(corner, path, x))))

    def meets(x: float) -> bool:
        return rank_of(found(x)) >= limit

    tries = points_of(node.leaves[path])
    fine = [meets(x) for x in tries]
    if sum(one is not other for one, other in pairwise(fine)) != 1:
        return None
    number = fine.index(not fine[0])
    good, bad = tries[number], tries[number - 1]
    if fine[0]:
        good, bad = bad, good
    for _ in range(BISECTIONS):
        middle = (good + bad) / 2
        good, bad = (middle, bad) if meets(middle) else (good, middle)
    span = NO_DIFFERENCE * (node.leaves[path].hi - node.leaves[path].lo)
    rounded = _rounded(good, unit, good > bad, span)
    return Border(good > bad, rounded, unit, found(bad), path.partition(":")[2])


def _rounded(x: float, unit: str, up: bool, span: float) -> float:
    """A border with few digits, on the side where the check is met; zero within a span of it."""
    zero = ZERO_CELSIUS if unit == "degC" else 0.0
    plain = x - zero
    if abs(plain) <= span:
        return zero
    step = 10.0 ** (math.floor(math.log10(abs(plain))) - DIGITS + 1)
    return zero + step * (math.ceil if up else math.floor)(plain / step)

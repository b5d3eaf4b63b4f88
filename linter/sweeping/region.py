"""Where a sweep is released, as boxes in words: from .. to of one value while another is ...

A box holds no variant that was tried and not released.  It is grown from a released variant,
as far as it goes along one axis after the other, in every order of the axes; the box with the
most variants is told first, then what lies outside it in the same way.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice, permutations

from ..quantities.quantity import show
from .axis import Axis

SEEDS = 12
ORDERS = 6
MOST_STEPS = 60_000
MOST_BOXES = 3

Point = tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Box:
    """Values of each axis between which all variants tried are released.

    allowed: of each axis, those of its values that are in it.  inside: released variants in it.
    """

    allowed: tuple[frozenset[float], ...]
    inside: frozenset[int]


def boxes(points: Sequence[Point], released: Sequence[bool], ordered: Sequence[bool]) -> list[Box]:
    """The boxes that hold most of the released variants, the largest first.

    points: a coordinate for each axis; ordered: whether an axis has values between others.
    """
    left = [number for number, is_released in enumerate(released) if is_released]
    grower = _Grower(points, released, ordered)
    found: list[Box] = []
    while left and len(found) < MOST_BOXES:
        seeds = max(1, min(SEEDS, MOST_STEPS // len(points)))
        step = -(-len(left) // seeds)
        grown = [box for seed in left[::step] for box in grower.grown(seed)]
        best = max(grown, key=lambda box: len(box.inside.intersection(left)))
        found.append(best)
        left = [number for number in left if number not in best.inside]
    return found


class _Grower:
    def __init__(
        self, points: Sequence[Point], released: Sequence[bool], ordered: Sequence[bool]
    ) -> None:
        self.points = points
        self.released = released
        self.ordered = ordered
        self.values = [sorted({point[axis] for point in points}) for axis in range(len(ordered))]

    def grown(self, seed: int) -> Iterator[Box]:
        """The boxes around a point, one for each order in which the axes are grown along."""
        for order in islice(permutations(range(len(self.ordered))), ORDERS):
            allowed = [frozenset({x}) for x in self.points[seed]]
            for axis in order:
                allowed[axis] = self._along(axis, allowed, self.points[seed][axis])
            inside = frozenset(
                number for number, point in enumerate(self.points) if _lies_in(point, allowed)
            )
            yield Box(tuple(allowed), inside)

    def _along(self, axis: int, allowed: list[frozenset[float]], start: float) -> frozenset[float]:
        """How far a box goes along one axis without meeting what is not released."""
        others = [*allowed[:axis], frozenset(self.values[axis]), *allowed[axis + 1 :]]
        bad = {
            point[axis]
            for point, is_released in zip(self.points, self.released, strict=True)
            if not is_released and _lies_in(point, others)
        }
        if not self.ordered[axis]:
            return frozenset(x for x in self.values[axis] if x not in bad)
        low = max((x for x in bad if x < start), default=float("-inf"))
        high = min((x for x in bad if x > start), default=float("inf"))
        return frozenset(x for x in self.values[axis] if low < x < high)


def _lies_in(point: Point, allowed: Sequence[frozenset[float]]) -> bool:
    return all(x in some for x, some in zip(point, allowed, strict=True))


def in_words(box: Box, axes: Sequence[Axis], all_values: Sequence[frozenset[float]]) -> str:
    """A box as a sentence: the axes that it limits, then those that it does not."""
    limited, free = [], []
    for axis, allowed, known in zip(axes, box.allowed, all_values, strict=True):
        if allowed == known:
            free.append(axis.path)
        else:
            limited.append(f"{axis.path} {_limits(axis, allowed, known)}")
    if not limited:
        return "whatever is varied"
    text = limited[0] + (f" while {' and '.join(limited[1:])}" if limited[1:] else "")
    return f"{text}, whatever {' and '.join(free)}" if free else text


def _limits(axis: Axis, allowed: frozenset[float], known: frozenset[float]) -> str:
    if not axis.is_numeric:
        return " or ".join(axis.choices[int(number)].shown for number in sorted(allowed))
    low, high = min(allowed), max(allowed)
    if low == high:
        return f"at {show(low, axis.unit)}"
    if low == min(known):
        return f"at most {show(high, axis.unit)}"
    if high == max(known):
        return f"at least {show(low, axis.unit)}"
    return f"{show(low, axis.unit)} to {show(high, axis.unit)}"

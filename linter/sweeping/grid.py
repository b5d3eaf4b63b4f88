"""All variants of a sweep in one order: every combination, or a number of them that are drawn."""

import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate
from math import prod
from operator import mul
from typing import Literal

from .axis import Axis, Choice
from .place import SweepError

Pattern = Literal["random", "low-discrepancy"]
DIGITS = 6
NEEDS_SCIPY = (
    "low-discrepancy points are drawn with scipy, which is not installed;"
    " install it with: pip install 'ampreview[sweep]'"
)


@dataclass(frozen=True, slots=True)
class Draw:
    """How many variants are drawn, and how."""

    count: int
    pattern: Pattern = "random"
    seed: int = 1


@dataclass(frozen=True, slots=True)
class Combination:
    """One value of each axis."""

    choices: tuple[Choice, ...]

    @property
    def changes(self) -> dict[str, object]:
        """What is different in the spec."""
        return {path: data for item in self.choices for path, data in item.data.items()}


def size_of(axes: Sequence[Axis], draw: Draw | None) -> int:
    """The number of variants."""
    return draw.count if draw else prod(len(axis.choices) for axis in axes)


def combinations(axes: Sequence[Axis], draw: Draw | None, start: int = 0) -> Iterator[Combination]:
    """The variants from a number on: the first axis moves last, as in a nested loop."""
    if draw:
        points = _points(draw, len(axes))[start:]
        yield from (Combination(tuple(map(_drawn, axes, point))) for point in points)
        return
    below = [*accumulate([len(axis.choices) for axis in axes[:0:-1]], mul, initial=1)][::-1]
    for number in range(start, size_of(axes, None)):
        places = zip(axes, below, strict=True)
        yield Combination(tuple(x.choices[number // step % len(x.choices)] for x, step in places))


def _drawn(axis: Axis, share: float) -> Choice:
    """The value of an axis at a share of it, 0 to below 1; numbers to six digits."""
    if axis.interval is None:
        return axis.choices[int(share * len(axis.choices))]
    low, high = axis.interval
    return axis.at(min(max(float(f"{low + share * (high - low):.{DIGITS}g}"), low), high))


def _points(draw: Draw, axes: int) -> list[list[float]]:
    """Points of the unit cube: the same for the same seed."""
    if draw.pattern == "random":
        dice = random.Random(draw.seed)
        return [[dice.random() for _ in range(axes)] for _ in range(draw.count)]
    try:
        from scipy.stats import qmc
    except ImportError as error:
        raise SweepError(NEEDS_SCIPY) from error
    points: list[list[float]] = qmc.Halton(axes, rng=draw.seed).random(draw.count).tolist()
    return points

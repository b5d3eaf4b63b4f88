"""Texts among lines: each where it hides no other text and few lines run through it."""

from collections.abc import Callable, Iterable, Sequence
from typing import Any

import numpy
from matplotlib.axes import Axes
from matplotlib.textpath import TextPath
from matplotlib.transforms import Bbox, IdentityTransform

from .drawing import SMALL
from .phrases import clean

Array = Any
Spot = tuple[float, float]
Places = Callable[[float, float], Iterable[Spot]]
"""From width and height of a text the places of its lower left corner, the best ones first."""

HIDES, OUTSIDE, CROSSED, LATER = 40.0, 400.0, 1.0, 0.05
BETWEEN = 4
NEAR = 36.0
FAR = (-1e6, -1e6)
HEIGHT, BOLD, SIGN = 1.2, 1.12, 5.0


class Labels:
    """Puts the texts of a picture; ways: the lines, as points in the units of the sheet."""

    def __init__(self, axes: Axes, ways: Sequence[Sequence[Spot]]) -> None:
        self.axes = axes
        self.ways = [_dense(way or [FAR]) for way in ways]
        self.taken: list[Bbox] = []

    def put(
        self,
        text: str,
        places: Places,
        colour: str,
        size: float = SMALL,
        bold: bool = False,
        upright: bool = False,
        own: int | None = None,
    ) -> None:
        """Write a text at the best of its places.  own: the line that it names."""
        artist = self.axes.text(
            0.0,
            0.0,
            clean(text),
            transform=IdentityTransform(),
            color=colour,
            fontsize=size,
            fontweight="bold" if bold else "normal",
            rotation=90 if upright else 0,
            ha="left",
            va="bottom",
        )
        size_ = _size(clean(text), size, bold)
        width, height = reversed(size_) if upright else size_
        boxes = [Bbox.from_bounds(x, y, width, height) for x, y in places(width, height)]
        costs = [self._cost(x, own) + LATER * number for number, x in enumerate(boxes)]
        best = boxes[costs.index(min(costs))]
        artist.set_position((best.x0, best.y0))
        self.taken.append(best)

    def keep_clear(self, x: float, y: float) -> None:
        """Keep texts off a sign."""
        self.taken.append(Bbox.from_extents(x - SIGN, y - SIGN, x + SIGN, y + SIGN))

    def _cost(self, box: Bbox, own: int | None) -> float:
        """How much a text would hide there, or be crossed."""
        frame = self.axes.bbox
        cost = HIDES * sum(box.overlaps(other) for other in self.taken)
        if box.x0 < frame.x0 or box.x1 > frame.x1 or box.y0 < frame.y0 or box.y1 > frame.y1 + 12:
            cost += OUTSIDE
        nearest = NEAR
        for number, (x, y) in enumerate(self.ways):
            inside = (box.x0 <= x) & (x <= box.x1) & (box.y0 <= y) & (y <= box.y1)
            cost += CROSSED * float(inside.sum())
            if own is not None and number != own:
                away = abs(x - (box.x0 + box.x1) / 2) + abs(y - (box.y0 + box.y1) / 2)
                nearest = min(nearest, float(away.min()))
        return cost + (NEAR - nearest) / NEAR


def along(way: Sequence[Spot]) -> Places:
    """Places above and below a line, all along it."""

    def places(width: float, height: float) -> Iterable[Spot]:
        for number in range(25):
            x, y = way[round((0.08 + 0.84 * number / 24) * (len(way) - 1))]
            for bottom in (y + 3, y - 3 - height):
                for left in (x - width / 2, x, x - width):
                    yield left, bottom

    return places


def _dense(way: Sequence[Spot]) -> tuple[Array, Array]:
    """The places of a line, with more between its points."""
    x, y = numpy.array(way).T
    points = numpy.arange(len(x))
    between = numpy.linspace(0, len(x) - 1, BETWEEN * len(x))
    return numpy.interp(between, points, x), numpy.interp(between, points, y)


def _size(text: str, size: float, bold: bool) -> tuple[float, float]:
    """Width and height of a text, in the units of the sheet."""
    width = TextPath((0, 0), text, size=size).get_extents().width
    return width * (BOLD if bold else 1.0) + 1, HEIGHT * size

"""Values on the axes of curves and points among them, each with its name."""

from collections.abc import Callable, Iterable

from matplotlib.axes import Axes

from ..judging.drawn import Drawn, DrawnMark, DrawnSpot
from .drawing import BAD, INK, MUTED
from .drawing_labels import Labels, Spot

Ruler = Callable[[float], float]
MARKS = {
    "limit": (BAD, "-"),
    "trip": (INK, (0, (2, 1.5))),
    "second": (MUTED, (0, (6, 3))),
    "measured": (INK, (0, (1, 2.5))),
}
SHARES = (0.02, 0.5, 0.25, 0.75, 0.12, 0.88)
SIGNS = {"measured": "x", "claim": "s"}


def all_marks(drawn: Drawn) -> list[DrawnMark]:
    """The marks, and those of an older revision that stood elsewhere."""
    old = drawn.before.marks if drawn.before else ()
    moved = [mark for mark in old if mark not in drawn.marks]
    before = [DrawnMark(f"{x.label}, before", x.axis, x.value, x.kind) for x in moved]
    return [*drawn.marks, *before]


def on_sheet(axes: Axes, x: float, y: float) -> Spot:
    """A point of the data in the units of the sheet."""
    left, bottom = axes.transData.transform((x, y))
    return float(left), float(bottom)


def mark_way(axes: Axes, mark: DrawnMark, to_x: Ruler, to_y: Ruler) -> list[Spot]:
    """The line of a mark, from one side of the picture to the other."""
    frame = axes.bbox
    steps = [number / 60 for number in range(61)]
    if mark.axis == "y":
        y = on_sheet(axes, axes.get_xlim()[0], to_y(mark.value))[1]
        return [(frame.x0 + step * frame.width, y) for step in steps]
    x = on_sheet(axes, to_x(mark.value), axes.get_ylim()[0])[0]
    return [(x, frame.y0 + step * frame.height) for step in steps]


def draw_mark(labels: Labels, mark: DrawnMark, to_x: Ruler, to_y: Ruler, width: float) -> None:
    """A line across at a value, with its name beside it."""
    axes, frame = labels.axes, labels.axes.bbox
    colour, dash = MARKS.get(mark.kind, MARKS["limit"])
    (x, y), _ = mark_way(axes, mark, to_x, to_y)[::60]
    if mark.axis == "y":
        axes.axhline(to_y(mark.value), color=colour, lw=width, ls=dash, zorder=2)
    else:
        axes.axvline(to_x(mark.value), color=colour, lw=width, ls=dash, zorder=2)

    def places(wide: float, high: float) -> Iterable[Spot]:
        if mark.axis == "y":
            room = frame.width - wide
            for left in (frame.x1 - wide, *(frame.x0 + share * room for share in SHARES)):
                yield from ((left, y + 1), (left, y - high))
        else:
            room = frame.height - high
            for bottom in (frame.y0 + share * room for share in (0.02, 0.98, 0.5, 0.25, 0.75)):
                yield from ((x - wide - 1, bottom), (x + 2, bottom))

    labels.put(mark.label, places, colour, upright=mark.axis == "x")


def draw_spot(labels: Labels, spot: DrawnSpot, to_x: Ruler, to_y: Ruler, when: str) -> None:
    """A point with its uncertainty and its name."""
    axes = labels.axes
    at, low, y_at, high = to_x(spot.x), to_y(spot.low), to_y(spot.y), to_y(spot.high)
    thin = 0.5 if when else 1.0
    axes.plot((at, at), (low, high), color=INK, lw=1.2 * thin, zorder=6)
    axes.plot((at,), (y_at,), marker=SIGNS[spot.kind], ms=7, mew=1.8 * thin, mfc="none", color=INK,
              ls="none", zorder=7, clip_on=False)  # fmt: skip
    x, y = on_sheet(axes, at, y_at)
    labels.keep_clear(x, y)

    def places(wide: float, tall: float) -> Iterable[Spot]:
        yield from ((x + 7, y - tall / 2), (x - 7 - wide, y - tall / 2))
        yield from ((x - wide / 2, y + 7), (x - wide / 2, y - 7 - tall))
        yield from ((x - 5 - wide, y + 5), (x + 5, y + 5), (x - 5 - wide, y - 5 - tall))

    labels.put(spot.label + when, places, INK)

"""Curves over one axis, with their names at the lines."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import log
from typing import Any

from matplotlib.axes import Axes
from matplotlib.axis import Axis as DrawnAxis
from matplotlib.ticker import FuncFormatter, LogLocator, MaxNLocator, NullFormatter

from ..judging.drawn import Drawn, DrawnMark, DrawnSpot, Line
from ..picture import Axis, Curves
from ..quantities.quantity import from_si, show
from .drawing import BAD, INK, LINE, MUTED, SERIES, SMALL, TEXT, bare, place, write
from .phrases import clean

Ruler = Callable[[float], float]
FRACTIONS = tuple(0.08 + 0.84 * step / 24 for step in range(25))
CROWDED = 0.1
NAME_OF_SPOT = 0.1
NOW, THIN = 1.8, 0.8
MARKS = {
    "limit": (BAD, "-"),
    "trip": (INK, (0, (2, 1.5))),
    "second": (MUTED, (0, (6, 3))),
    "measured": (INK, (0, (1, 2.5))),
}
SIGNS = {"measured": "x", "claim": "s"}


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line as it is drawn; thin, by its width, for what was before."""

    line: Line
    label: str
    colour: str
    dash: Any
    width: float


def draw_curves(axes: Axes, drawn: Drawn, picture: Curves) -> None:
    """Draw lines, worst-case bands, marks and names."""
    place(axes, 54, 16, 20, 40)
    to_x, to_y = ruler(picture.x), ruler(picture.y)
    _frame(axes, drawn, picture)
    strokes, marks = _strokes(drawn), _all_marks(drawn)
    for stroke in strokes:
        line = stroke.line
        x = [to_x(value) for value in line.x]
        if line.low and stroke.width == NOW:
            low, high = [to_y(v) for v in line.low], [to_y(v) for v in line.high]
            axes.fill_between(x, low, high, color=stroke.colour, alpha=0.2, lw=0, zorder=2)
        axes.plot(x, [to_y(v) for v in line.y], color=stroke.colour, ls=stroke.dash,
                  lw=stroke.width, zorder=3)  # fmt: skip
    _names(axes, strokes, marks, drawn.spots, to_x, to_y)
    for mark in marks:
        _mark(axes, mark, drawn, marks, to_x, to_y)
    old = drawn.before.spots if drawn.before else ()
    for spot in (*drawn.spots, *(x for x in old if x not in drawn.spots)):
        _spot(axes, spot, to_x, to_y, "" if spot in drawn.spots else ", before")


def _strokes(drawn: Drawn) -> list[Stroke]:
    """The lines, and those of an older revision that ran elsewhere."""
    now = {line.label: line for line in drawn.lines}
    styles = dict(zip(now, SERIES, strict=False))
    found = [Stroke(line, label, *styles[label], NOW) for label, line in now.items()]
    for line in drawn.before.lines if drawn.before else ():
        same = now.get(line.label)
        if same is None or (same.x, same.y) != (line.x, line.y):
            label = f"{line.label}, before" if len(now) > 1 else "before"
            found.append(Stroke(line, label, *styles.get(line.label, SERIES[-1]), THIN))
    return found


def _all_marks(drawn: Drawn) -> list[DrawnMark]:
    """The marks, and those of an older revision that stood elsewhere."""
    old = drawn.before.marks if drawn.before else ()
    moved = [mark for mark in old if mark not in drawn.marks]
    before = [DrawnMark(f"{x.label}, before", x.axis, x.value, x.kind) for x in moved]
    return [*drawn.marks, *before]


def _frame(axes: Axes, drawn: Drawn, picture: Curves) -> None:
    """Ends, ticks and names of both axes."""
    to_x, to_y = ruler(picture.x), ruler(picture.y)
    if picture.x.logarithmic:
        axes.set_xscale("log")
    _, _, y_low, y_high = drawn.ends
    lines = [stroke.line for stroke in _strokes(drawn)]
    places = [to_x(v) for line in lines for v in (line.x[0], line.x[-1])]
    axes.set_xlim(min(places), max(places))
    values = [to_y(v) for line in drawn.lines for v in (*line.low, *line.high)]
    values += [to_y(v) for line in lines for v in line.y]
    values += [to_y(v) for spot in drawn.spots for v in (spot.low, spot.high)]
    values += [to_y(mark.value) for mark in _all_marks(drawn) if mark.axis == "y"]
    low = min(values) if y_low is None else to_y(y_low)
    high = max(values) if y_high is None else max(to_y(y_high), *values)
    pad = 0.08 * (high - low or 1.0)
    axes.set_ylim(low if y_low is not None else max(low, high - 90.0) - pad, high + pad)
    ticks(axes.xaxis, picture.x)
    ticks(axes.yaxis, picture.y)
    axes.set_xlabel(picture.x.label, fontsize=SMALL)
    axes.grid(color=LINE, lw=0.5, alpha=0.6)
    axes.set_axisbelow(True)
    axes.text(0.0, 1.02, picture.y.label, transform=axes.transAxes, fontsize=SMALL, color=MUTED,
              va="bottom")  # fmt: skip
    bare(axes)


def ticks(axis: DrawnAxis, declared: Axis) -> None:
    """Ticks with their unit, as the rest of the report writes numbers."""
    if declared.logarithmic:
        axis.set_major_locator(LogLocator(numticks=6))
        axis.set_minor_formatter(NullFormatter())
    else:
        axis.set_major_locator(MaxNLocator(5))
    back = _back(declared.unit)
    axis.set_major_formatter(FuncFormatter(lambda x, _: show(back(x), declared.unit)))
    axis.set_tick_params(labelsize=SMALL, length=3)


def ruler(declared: Axis) -> Ruler:
    """From SI to what is drawn: the number in front of the unit."""
    return lambda value: from_si(value, declared.unit)


def _back(unit: str) -> Ruler:
    """From what is drawn back to SI."""
    zero = from_si(0.0, unit)
    factor = from_si(1.0, unit) - zero
    return lambda drawn: (drawn - zero) / factor


def _names(
    axes: Axes,
    strokes: list[Stroke],
    marks: list[DrawnMark],
    points: Sequence[DrawnSpot],
    to_x: Ruler,
    to_y: Ruler,
) -> None:
    """The name of each line where it is farthest from the others and from every mark."""
    taken = [
        (_share(axes.get_xlim(), to_x(x.value), axes.get_xscale()), None)
        if x.axis == "x"
        else (None, _share(axes.get_ylim(), to_y(x.value)))
        for x in marks
    ]
    spots = [
        (_share(axes.get_xlim(), to_x(x.x), axes.get_xscale()) + NAME_OF_SPOT,
         _share(axes.get_ylim(), to_y(x.y)))
        for x in points
    ]  # fmt: skip
    bottom, top = axes.get_ylim()
    for stroke in strokes:
        line = stroke.line
        others = [other.line for other in strokes if other is not stroke]
        best, spot = -9.0, (0.5, 0.5)
        for fraction in FRACTIONS:
            index = round(fraction * (len(line.x) - 1))
            y = _share((bottom, top), to_y(line.y[index]))
            if not 0.04 < y < 1.0:
                continue
            apart = min((_distance(y, _share((bottom, top), to_y(o.y[index]))) for o in others),
                        default=0.3)  # fmt: skip
            free = min((max(abs(fraction - a), 1.5 * abs(y - b)) for a, b in spots), default=1.0)
            clear = min(
                (abs(fraction - a) if a is not None else 1.5 * _distance(y, b or 0.0)
                 for a, b in taken),
                default=1.0,
            )  # fmt: skip
            worth = min(apart, 0.3) + min(free, 0.4) + min(clear, 0.25)
            if worth > best + 0.01:
                best, spot = worth, (fraction, y)
        spots.append(spot)
        index = round(spot[0] * (len(line.x) - 1))
        side = "left" if spot[0] < 0.35 else "right" if spot[0] > 0.65 else "center"
        above = spot[1] < 0.88
        height = bottom + (spot[1] + (0.03 if above else -0.03)) * (top - bottom)
        write(axes, to_x(line.x[index]), height, stroke.label, colour=stroke.colour, size=TEXT,
              bold=stroke.width == NOW, where=(side, "bottom" if above else "top"))  # fmt: skip


def _distance(y: float, other: float) -> float:
    """How far a name that stands just above y is from something else."""
    return abs(y + 0.06 - other)


def _share(ends: tuple[float, float], value: float, scale: str = "linear") -> float:
    """Where a value lies on an axis, from 0 to 1."""
    low, high = ends
    if scale == "log":
        return log(value / low) / log(high / low)
    return (value - low) / (high - low)


def _spot(axes: Axes, spot: DrawnSpot, to_x: Ruler, to_y: Ruler, when: str) -> None:
    """A point with its uncertainty and its name, on the side that has room."""
    x, low, y, high = to_x(spot.x), to_y(spot.low), to_y(spot.y), to_y(spot.high)
    thin = 0.5 if when else 1.0
    axes.plot((x, x), (low, high), color=INK, lw=1.2 * thin, zorder=6)
    axes.plot((x,), (y,), marker=SIGNS[spot.kind], ms=7, mew=1.8 * thin, mfc="none", color=INK,
              ls="none", zorder=7, clip_on=False)  # fmt: skip
    is_right = _share(axes.get_xlim(), x, axes.get_xscale()) > 0.5
    axes.annotate(clean(spot.label + when), (x, y), (-7 if is_right else 7, 0),
                  textcoords="offset points", ha="right" if is_right else "left", va="center",
                  fontsize=SMALL, color=INK)  # fmt: skip


def _mark(
    axes: Axes,
    mark: DrawnMark,
    drawn: Drawn,
    marks: list[DrawnMark],
    to_x: Ruler,
    to_y: Ruler,
) -> None:
    """A line across at a value, with its name; thin for what was before."""
    colour, dash = MARKS.get(mark.kind, MARKS["limit"])
    width = 1.4 if mark in drawn.marks else THIN
    if mark.axis == "y":
        value = to_y(mark.value)
        axes.axhline(value, color=colour, lw=width, ls=dash, zorder=2)
        share = _share(axes.get_ylim(), value)
        others = (x for x in marks if x is not mark and x.axis == "y")
        crowded = any(
            0.0 <= _share(axes.get_ylim(), to_y(x.value)) - share < CROWDED for x in others
        )
        side = "top" if crowded or share > 1.0 - CROWDED / 2 else "bottom"
        write(axes, axes.get_xlim()[1], value, mark.label, where=("right", side), colour=colour)
        return
    axes.axvline(to_x(mark.value), color=colour, lw=width, ls=dash, zorder=2)
    ends = axes.get_ylim()
    heights = [
        _share(ends, to_y(y)) for line in drawn.lines
        for y in [line.y[min(range(len(line.x)), key=lambda i: abs(line.x[i] - mark.value))]]
    ]  # fmt: skip
    high = sum(heights) / len(heights) < 0.5
    at = _share(axes.get_xlim(), to_x(mark.value), axes.get_xscale())
    others = (x for x in marks if x is not mark and x.axis == "x")
    crowded = any(
        0.0 <= at - _share(axes.get_xlim(), to_x(x.value), axes.get_xscale()) < CROWDED / 2
        for x in others
    )
    axes.text(to_x(mark.value), ends[0] + (0.98 if high else 0.03) * (ends[1] - ends[0]),
              f" {mark.label} ", rotation=90, color=colour, fontsize=SMALL,
              ha="left" if crowded else "right",
              va="top" if high else "bottom")  # fmt: skip

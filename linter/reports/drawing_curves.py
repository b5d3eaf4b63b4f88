"""Curves over one axis, with their names at the lines; lanes of signals over time."""

from collections.abc import Callable
from math import log

from matplotlib.axes import Axes
from matplotlib.axis import Axis as DrawnAxis
from matplotlib.ticker import FuncFormatter, LogLocator, MaxNLocator, NullFormatter

from ..judging.drawn import Drawn, DrawnMark
from ..picture import Axis, Curves
from ..quantities.quantity import from_si, show
from .drawing import BAD, FIRST, GOOD, INK, LINE, MUTED, SERIES, SMALL, TEXT, place, write

Ruler = Callable[[float], float]
FRACTIONS = tuple(0.08 + 0.84 * step / 24 for step in range(25))
CROWDED = 0.1
MARKS = {"limit": (BAD, "-"), "trip": (INK, (0, (2, 1.5))), "second": (MUTED, (0, (6, 3)))}


def draw_curves(axes: Axes, drawn: Drawn, picture: Curves) -> None:
    """Draw lines, worst-case bands, marks and names."""
    place(axes, 54, 16, 20, 40)
    to_x, to_y = _ruler(picture.x), _ruler(picture.y)
    _frame(axes, drawn, picture)
    for line, (colour, dash) in zip(drawn.lines, SERIES, strict=False):
        x = [to_x(value) for value in line.x]
        if line.low:
            low, high = [to_y(v) for v in line.low], [to_y(v) for v in line.high]
            axes.fill_between(x, low, high, color=colour, alpha=0.2, lw=0, zorder=2)
        axes.plot(x, [to_y(v) for v in line.y], color=colour, ls=dash, lw=1.8, zorder=3)
    _names(axes, drawn, to_x, to_y)
    for mark in drawn.marks:
        _mark(axes, mark, drawn, to_x, to_y)


def lanes_height(drawn: Drawn) -> float:
    """How high a picture with lanes gets, in the units of its SVG."""
    return 64 + 40 * len(drawn.lines)


def draw_lanes(axes: Axes, drawn: Drawn, picture: Curves) -> None:
    """Draw each line in a lane of its own, the first one on top."""
    place(axes, 12, 22, 20, 40)
    to_x = _ruler(picture.x)
    count = len(drawn.lines)
    left, right = to_x(drawn.lines[0].x[0]), to_x(drawn.lines[0].x[-1])
    axes.set_xlim(left, right)
    axes.set_ylim(0, count)
    axes.yaxis.set_visible(False)
    for span in drawn.spans:
        colour = BAD if span.turned else GOOD
        low, high = to_x(span.low), to_x(span.high)
        axes.axvspan(low, high, color=colour, alpha=0.25, lw=0,
                     hatch="///" if span.turned else None)  # fmt: skip
        text = f"{span.label}, {show(span.high - span.low, picture.x.unit)}"
        middle = (low + high) / 2
        side = "center" if 0.3 < (middle - left) / (right - left) < 0.7 else "right"
        write(axes, middle if side == "center" else right, count + 0.18, text,
              where=(side, "bottom"), size=TEXT, bold=True)  # fmt: skip
    for number, line in enumerate(drawn.lines):
        base = count - 1 - number + 0.12
        y = [base + 0.56 * value for value in line.y]
        axes.plot([to_x(v) for v in line.x], y, color=FIRST, lw=1.8)
        axes.axhline(base, color=LINE, lw=0.6, zorder=1)
        write(axes, left, base + 0.6, line.label, where=("left", "bottom"), colour=MUTED)
    _ticks(axes.xaxis, picture.x)
    axes.set_xlabel(picture.x.label, fontsize=SMALL)
    _bare(axes)


def _frame(axes: Axes, drawn: Drawn, picture: Curves) -> None:
    """Ends, ticks and names of both axes."""
    to_x, to_y = _ruler(picture.x), _ruler(picture.y)
    if picture.x.logarithmic:
        axes.set_xscale("log")
    x_low, x_high, y_low, y_high = drawn.ends
    assert x_low is not None
    assert x_high is not None
    axes.set_xlim(to_x(x_low), to_x(x_high))
    values = [to_y(v) for line in drawn.lines for v in (*line.y, *line.low, *line.high)]
    values += [to_y(mark.value) for mark in drawn.marks if mark.axis == "y"]
    low = min(values) if y_low is None else to_y(y_low)
    high = max(values) if y_high is None else max(to_y(y_high), *values)
    pad = 0.08 * (high - low or 1.0)
    axes.set_ylim(low if y_low is not None else max(low, high - 90.0) - pad, high + pad)
    _ticks(axes.xaxis, picture.x)
    _ticks(axes.yaxis, picture.y)
    axes.set_xlabel(picture.x.label, fontsize=SMALL)
    axes.grid(color=LINE, lw=0.5, alpha=0.6)
    axes.set_axisbelow(True)
    axes.text(0.0, 1.02, picture.y.label, transform=axes.transAxes, fontsize=SMALL, color=MUTED,
              va="bottom")  # fmt: skip
    _bare(axes)


def _bare(axes: Axes) -> None:
    for side in ("left", "right", "top"):
        axes.spines[side].set_visible(False)


def _ticks(axis: DrawnAxis, declared: Axis) -> None:
    """Ticks with their unit, as the rest of the report writes numbers."""
    if declared.logarithmic:
        axis.set_major_locator(LogLocator(numticks=6))
        axis.set_minor_formatter(NullFormatter())
    else:
        axis.set_major_locator(MaxNLocator(5))
    back = _back(declared.unit)
    axis.set_major_formatter(FuncFormatter(lambda x, _: show(back(x), declared.unit)))
    axis.set_tick_params(labelsize=SMALL, length=3)


def _ruler(declared: Axis) -> Ruler:
    """From SI to what is drawn: the number in front of the unit."""
    return lambda value: from_si(value, declared.unit)


def _back(unit: str) -> Ruler:
    """From what is drawn back to SI."""
    zero = from_si(0.0, unit)
    factor = from_si(1.0, unit) - zero
    return lambda drawn: (drawn - zero) / factor


def _names(axes: Axes, drawn: Drawn, to_x: Ruler, to_y: Ruler) -> None:
    """The name of each line where it is farthest from the others and from every mark."""
    taken = [
        (_share(axes.get_xlim(), to_x(x.value), axes.get_xscale()), None)
        if x.axis == "x"
        else (None, _share(axes.get_ylim(), to_y(x.value)))
        for x in drawn.marks
    ]
    spots: list[tuple[float, float]] = []
    bottom, top = axes.get_ylim()
    for line, (colour, _) in zip(drawn.lines, SERIES, strict=False):
        others = [other for other in drawn.lines if other is not line]
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
        write(axes, to_x(line.x[index]), height, line.label, colour=colour, size=TEXT, bold=True,
              where=(side, "bottom" if above else "top"))  # fmt: skip


def _distance(y: float, other: float) -> float:
    """How far a name that stands just above y is from something else."""
    return abs(y + 0.06 - other)


def _share(ends: tuple[float, float], value: float, scale: str = "linear") -> float:
    """Where a value lies on an axis, from 0 to 1."""
    low, high = ends
    if scale == "log":
        return log(value / low) / log(high / low)
    return (value - low) / (high - low)


def _mark(axes: Axes, mark: DrawnMark, drawn: Drawn, to_x: Ruler, to_y: Ruler) -> None:
    """A line across at a value, with its name."""
    colour, dash = MARKS.get(mark.kind, MARKS["limit"])
    if mark.axis == "y":
        value = to_y(mark.value)
        axes.axhline(value, color=colour, lw=1.4, ls=dash, zorder=2)
        share = _share(axes.get_ylim(), value)
        others = (x for x in drawn.marks if x is not mark and x.axis == "y")
        crowded = any(
            0.0 <= _share(axes.get_ylim(), to_y(x.value)) - share < CROWDED for x in others
        )
        side = "top" if crowded or share > 1.0 - CROWDED / 2 else "bottom"
        write(axes, axes.get_xlim()[1], value, mark.label, where=("right", side), colour=colour)
        return
    axes.axvline(to_x(mark.value), color=colour, lw=1.4, ls=dash, zorder=2)
    ends = axes.get_ylim()
    heights = [
        _share(ends, to_y(y)) for line in drawn.lines
        for y in [line.y[min(range(len(line.x)), key=lambda i: abs(line.x[i] - mark.value))]]
    ]  # fmt: skip
    high = sum(heights) / len(heights) < 0.5
    axes.text(to_x(mark.value), ends[0] + (0.98 if high else 0.03) * (ends[1] - ends[0]),
              f"{mark.label} ", rotation=90, color=colour, fontsize=SMALL, ha="right",
              va="top" if high else "bottom")  # fmt: skip

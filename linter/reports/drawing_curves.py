"""Curves over one axis, with their names at the lines."""

from dataclasses import dataclass
from typing import Any

from matplotlib.axes import Axes
from matplotlib.axis import Axis as DrawnAxis
from matplotlib.ticker import FuncFormatter, LogLocator, MaxNLocator, NullFormatter

from ..judging.drawn import Drawn, Line
from ..picture import Axis, Curves
from ..quantities.quantity import from_si, show
from .drawing import LINE, MUTED, SERIES, SMALL, TEXT, bare, place
from .drawing_labels import Labels, Spot, along
from .drawing_marks import Ruler, all_marks, draw_mark, draw_spot, mark_way, on_sheet

NOW, THIN, NOW_MARK = 1.8, 0.8, 1.4


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
    strokes, marks = _strokes(drawn), all_marks(drawn)
    for stroke in strokes:
        line = stroke.line
        x = [to_x(value) for value in line.x]
        if line.low and stroke.width == NOW:
            low, high = [to_y(v) for v in line.low], [to_y(v) for v in line.high]
            axes.fill_between(x, low, high, color=stroke.colour, alpha=0.2, lw=0, zorder=2)
        axes.plot(x, [to_y(v) for v in line.y], color=stroke.colour, ls=stroke.dash,
                  lw=stroke.width, zorder=3)  # fmt: skip
    ways = [_way(axes, stroke.line, to_x, to_y) for stroke in strokes]
    labels = Labels(axes, [*ways, *(mark_way(axes, mark, to_x, to_y) for mark in marks)])
    for mark in marks:
        draw_mark(labels, mark, to_x, to_y, NOW_MARK if mark in drawn.marks else THIN)
    old = drawn.before.spots if drawn.before else ()
    for spot in (*drawn.spots, *(x for x in old if x not in drawn.spots)):
        draw_spot(labels, spot, to_x, to_y, "" if spot in drawn.spots else ", before")
    for number, (stroke, way) in enumerate(zip(strokes, ways, strict=True)):
        if way:
            bold = stroke.width == NOW
            labels.put(stroke.label, along(way), stroke.colour, TEXT, bold, own=number)


def _way(axes: Axes, line: Line, to_x: Ruler, to_y: Ruler) -> list[Spot]:
    """A line in the units of the sheet, as far as it lies on the picture."""
    points = [on_sheet(axes, to_x(x), to_y(y)) for x, y in zip(line.x, line.y, strict=True)]
    return [point for point in points if axes.bbox.y0 <= point[1] <= axes.bbox.y1]


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
    values += [to_y(mark.value) for mark in all_marks(drawn) if mark.axis == "y"]
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

"""Signals over time, each in a lane of its own."""

from matplotlib.axes import Axes

from ..judging.drawn import Drawn, DrawnSpan, Line
from ..picture import Curves
from ..quantities.quantity import show
from .drawing import BAD, FIRST, GOOD, INK, LINE, MUTED, SMALL, TEXT, bare, place, write
from .drawing_curves import NOW, THIN, ruler, ticks

OFFSET = 0.07


def lanes_height(drawn: Drawn) -> float:
    """How high a picture with lanes gets, in the units of its SVG."""
    return _top(drawn) + 42 + 40 * len(drawn.lines)


def _top(drawn: Drawn) -> float:
    """Room for what is said of the span."""
    return 40 if drawn.before else 22


def draw_lanes(axes: Axes, drawn: Drawn, picture: Curves) -> None:
    """Draw each line in a lane of its own, the first one on top; what was before thin."""
    place(axes, 12, _top(drawn), 20, 40)
    to_x = ruler(picture.x)
    count = len(drawn.lines)
    left = to_x(drawn.lines[0].x[0])
    axes.set_xlim(left, to_x(drawn.lines[0].x[-1]))
    axes.set_ylim(0, count)
    axes.yaxis.set_visible(False)
    for span in drawn.spans:
        _span(axes, span, drawn, picture)
    for number, line in enumerate(drawn.lines):
        base = count - 1 - number + 0.12
        old = _old(drawn, line)
        if old is not None:
            y = [base + 0.56 * value + OFFSET for value in old.y]
            axes.plot([to_x(v) for v in old.x], y, color=INK, lw=THIN)
        y = [base + 0.56 * value for value in line.y]
        axes.plot([to_x(v) for v in line.x], y, color=FIRST, lw=NOW)
        axes.axhline(base, color=LINE, lw=0.6, zorder=1)
        write(axes, left, base + 0.6, line.label, where=("left", "bottom"), colour=MUTED)
    for mark in drawn.marks:
        _mark(axes, to_x(mark.value), mark.label)
    ticks(axes.xaxis, picture.x)
    axes.set_xlabel(picture.x.label, fontsize=SMALL)
    bare(axes)


def _old(drawn: Drawn, line: Line) -> Line | None:
    """The same line of an older revision, where it is another."""
    lines = drawn.before.lines if drawn.before else ()
    found = next((x for x in lines if x.label == line.label), None)
    return None if found is None or (found.x, found.y) == (line.x, line.y) else found


def _span(axes: Axes, span: DrawnSpan, drawn: Drawn, picture: Curves) -> None:
    """A stretch that is shaded, with how long it lasts, and how long it did before."""
    to_x, (left, right) = ruler(picture.x), axes.get_xlim()
    low, high = to_x(span.low), to_x(span.high)
    axes.axvspan(low, high, color=BAD if span.turned else GOOD, alpha=0.25, lw=0,
                 hatch="///" if span.turned else None)  # fmt: skip
    middle = (low + high) / 2
    is_inside = 0.3 < (middle - left) / (right - left) < 0.7
    at, side = (middle, "center") if is_inside else (right, "right")
    top = axes.get_ylim()[1] + 0.18
    write(axes, at, top, f"{span.label}, {_lasts(span, picture)}", where=(side, "bottom"),
          size=TEXT, bold=True)  # fmt: skip
    for old in drawn.before.spans if drawn.before else ():
        told = f"thin, before: {old.label}, {_lasts(old, picture)}"
        write(axes, at, top + 0.42, told, where=(side, "bottom"), colour=MUTED)


def _mark(axes: Axes, x: float, label: str) -> None:
    """A dotted line at a time, with its name on the side that has room."""
    axes.axvline(x, color=INK, lw=1.4, ls=(0, (1, 2.5)), zorder=4)
    left, right = axes.get_xlim()
    side = "left" if x - left < 0.6 * (right - left) else "right"
    write(axes, x, 0.3, f" {label} ", where=(side, "bottom"))


def _lasts(span: DrawnSpan, picture: Curves) -> str:
    return show(span.high - span.low, picture.x.unit)

"""Parts on one scale: for each its name, its marks, and its numbers in words below."""

from collections.abc import Sequence

from matplotlib.axes import Axes
from matplotlib.textpath import TextPath
from matplotlib.ticker import FuncFormatter, LogLocator, MaxNLocator, NullFormatter

from ..judging.drawn import Drawn, DrawnRow, Point
from ..picture import Scale
from ..quantities.quantity import from_si, show
from .drawing import (
    BAD,
    FIRST,
    INK,
    LINE,
    MUTED,
    PAPER,
    SECOND,
    SMALL,
    TEXT,
    WIDTH,
    bare,
    place,
    sheet,
)

ROW, FURTHER = 54, 13
LINE_AT, LIFT = 23, 8
TOP, BOTTOM = 26, 24
SIDE = 20
CHARACTERS = 62
RATED, TRIP, BEFORE = "rated", "switches off", "before"


def scale_height(drawn: Drawn) -> float:
    """How high the picture gets, in the units of its SVG."""
    return TOP + BOTTOM + _tops(drawn)[-1]


def _tops(drawn: Drawn) -> list[float]:
    """Where each row begins, and where the last one ends."""
    assert isinstance(drawn.picture, Scale)
    tops, row_height = [0.0], ROW + _drop(drawn)
    for row in drawn.rows:
        text = numbers(row, drawn.picture.unit, _before(drawn, row))
        tops.append(tops[-1] + row_height + FURTHER * text.count("\n"))
    return tops


def _drop(drawn: Drawn) -> float:
    """Room for what was before, between the name of a row and its line."""
    return LIFT if drawn.before else 0.0


def _before(drawn: Drawn, row: DrawnRow) -> tuple[Point, ...] | None:
    """What the row showed in the older revision; None where there is none to compare with."""
    if drawn.before is None:
        return None
    return next((x.points for x in drawn.before.rows if x.label == row.label), ())


def draw_scale(axes: Axes, drawn: Drawn, picture: Scale, words: Sequence[str]) -> None:
    """Draw all rows from top to bottom; words: what is said of each at its right end."""
    place(axes, SIDE, TOP, SIDE, BOTTOM)
    _axis(axes, drawn, picture)
    across = axes.get_yaxis_transform()
    for row, word, top in zip(drawn.rows, words, _tops(drawn), strict=False):
        line = top + LINE_AT + _drop(drawn)
        axes.text(0, top + 9, row.label, transform=across, fontsize=TEXT, va="center",
                  fontweight="bold", color=INK)  # fmt: skip
        axes.text(1, top + 9, word, transform=across, fontsize=SMALL, va="center", ha="right",
                  color=MUTED)  # fmt: skip
        axes.plot((0, 1), (line, line), color=LINE, lw=0.8, transform=across, zorder=1)
        before = _before(drawn, row)
        for point in before or ():
            _marker(axes, point, line, picture, is_old=True)
        for point in row.points:
            _marker(axes, point, line, picture)
        for number, text in enumerate(numbers(row, picture.unit, before).split("\n")):
            axes.text(0, line + 16 + FURTHER * number, text, transform=across, fontsize=SMALL,
                      va="center", color=MUTED)  # fmt: skip
    if picture.chain:
        _joined(axes, drawn, picture.unit)
    _legend(axes, drawn, picture)


def numbers(row: DrawnRow, unit: str, before: tuple[Point, ...] | None = None) -> str:
    """What a row says in words: values at their most, ratings at their least."""
    old = {point.label: worst(point, unit) for point in before or ()}
    told = [_told(point.label, worst(point, unit), old, before is not None) for point in row.points]
    known = {point.label for point in row.points}
    told += [f"{label} {text} before, not now" for label, text in old.items() if label not in known]
    lines = [""]
    for text in told:
        joined = f"{lines[-1]} · {text}" if lines[-1] else text
        if len(joined) <= CHARACTERS:
            lines[-1] = joined
        else:
            lines.append(text)
    return "\n".join(lines)


def _told(label: str, now: str, old: dict[str, str], is_compared: bool) -> str:
    """A number, and what it was before where that is something else."""
    if not is_compared or old.get(label) == now:
        return f"{label} {now}"
    return f"{label} {now} (before {old.get(label, 'not shown')})"


def worst(point: Point, unit: str) -> str:
    """A number at the end that counts."""
    if point.kind == "trip" and point.low < point.high:
        return f"{show(point.low, unit)} .. {show(point.high, unit)}"
    if point.kind == "measured":
        return show(point.nominal, unit)
    return show(point.low if point.kind in ("limit", "trip") else point.high, unit)


def _axis(axes: Axes, drawn: Drawn, picture: Scale) -> None:
    unit = picture.unit
    rows = (*drawn.rows, *(drawn.before.rows if drawn.before else ()))
    ends = [from_si(x, unit) for row in rows for p in row.points for x in (p.low, p.high)]
    low, high = min(ends), max(ends)
    if picture.logarithmic and low > 0:
        axes.set_xscale("log")
        axes.set_xlim(low / 1.3, high * 1.3)
        axes.xaxis.set_major_locator(LogLocator(subs=(1.0, 2.0, 5.0)))
        axes.xaxis.set_minor_formatter(NullFormatter())
    else:
        low = 0.0 if picture.bars or 0 < low < 0.3 * high else low
        pad = 0.05 * (high - low or abs(high) or 1.0)
        axes.set_xlim(low - (0.0 if low == 0.0 else pad), high + pad)
        axes.xaxis.set_major_locator(MaxNLocator(5))
    axes.set_ylim(_tops(drawn)[-1], 0)
    axes.yaxis.set_visible(False)
    bare(axes)
    offset = from_si(0.0, unit)
    scale = 1.0 if unit in ("degC", "dB") else from_si(1.0, unit) - offset

    def told(x: float, _: int) -> str:
        return show(x - offset if unit == "degC" else x / scale, unit)

    axes.xaxis.set_major_formatter(FuncFormatter(told))
    axes.tick_params(axis="x", labelsize=SMALL, length=3)
    axes.grid(axis="x", color=LINE, lw=0.5, alpha=0.6)
    axes.set_axisbelow(True)


def _marker(axes: Axes, point: Point, y: float, picture: Scale, is_old: bool = False) -> None:
    """A range with its nominal value, or a rating as a stroke across the line.

    What was before stands above the line, thin and hollow.
    """
    low, at, high = (from_si(x, picture.unit) for x in (point.low, point.nominal, point.high))
    bold = 0.4 if is_old else 1.0
    if point.kind == "measured":
        y -= LIFT if is_old else 0
        axes.plot((low, high), (y, y), color=INK, lw=bold, zorder=6)
        axes.plot((at,), (y,), color=INK, marker="x", ms=7, mew=1.8 * bold, zorder=7, ls="none")
        return
    if point.kind in ("limit", "trip"):
        style = "-" if point.kind == "limit" else (0, (2, 1.5))
        colour = BAD if point.kind == "limit" else INK
        foot = y - 1 if is_old else y + 9
        axes.plot((low, low), (foot - (13 if is_old else 15), foot), color=colour, lw=2.4 * bold,
                  ls=style, zorder=4)  # fmt: skip
        axes.plot((low, high), (foot - 9, foot - 9), color=colour, lw=1.2 * bold, zorder=3)
        return
    first = point.kind == "value"
    colour, sign = (FIRST, "o") if first else (SECOND, "D")
    if is_old:
        y -= LIFT
    if picture.bars:
        y += -3.5 if first else 3.5
        axes.plot((0, at), (y, y), color=colour, lw=5 * bold, solid_capstyle="butt", alpha=0.45,
                  zorder=2)  # fmt: skip
    axes.plot((low, high), (y, y), color=colour, lw=3 * bold, solid_capstyle="butt", zorder=3)
    axes.plot((at,), (y,), color=colour, marker=sign, ms=4.5 if is_old else 5.5, zorder=5,
              ls="none", mfc=PAPER if is_old else colour, mew=1.0)  # fmt: skip


def _joined(axes: Axes, drawn: Drawn, unit: str) -> None:
    """The values of the rows as a way from one to the next."""
    for kind, colour in (("value", FIRST), ("second", SECOND)):
        way = [
            (from_si(point.nominal, unit), top + LINE_AT + _drop(drawn))
            for row, top in zip(drawn.rows, _tops(drawn), strict=False)
            for point in row.points
            if point.kind == kind and not row.aside
        ]
        x, y = zip(*way, strict=True) if way else ((), ())
        axes.plot(x, y, color=colour, lw=0.9, ls=(0, (4, 3)), zorder=2, alpha=0.8)


def _legend(axes: Axes, drawn: Drawn, picture: Scale) -> None:
    """What the signs mean, over the rows."""
    kinds: set[str] = {point.kind for row in drawn.rows for point in row.points}
    kinds |= {"before"} if drawn.before else set()
    told = (
        ("value", picture.value or "design", "o", FIRST),
        ("second", picture.second, "D", SECOND),
        ("limit", RATED, "|", BAD),
        ("trip", TRIP, "|", INK),
        ("measured", "measured", "x", INK),
        ("before", BEFORE, "o", MUTED),
    )
    x = 2.0
    height = sheet(axes).get_figheight() * 72
    whole = sheet(axes).transFigure
    for kind, text, sign, colour in told:
        if kind in kinds:
            left, y = (SIDE + x) / WIDTH, 1 - 11 / height
            axes.plot((left,), (y,), marker=sign, ms=6, mew=2 if sign in "|x" else 1.0,
                      mfc=PAPER if kind == "before" else colour, color=colour, ls="none",
                      transform=whole, clip_on=False)  # fmt: skip
            axes.text(left + 8 / WIDTH, y, text, transform=whole, va="center", fontsize=SMALL,
                      color=MUTED)  # fmt: skip
            x += 24 + TextPath((0, 0), text, size=SMALL).get_extents().width

"""The margins of all checks on one scale, the worst first."""

from collections.abc import Sequence
from dataclasses import dataclass

from matplotlib.axes import Axes
from matplotlib.ticker import FixedLocator, FuncFormatter

from ..evaluation.threshold import closeness
from ..finding import Finding, Status
from ..judging.review import Review
from .assess_text import is_yes_or_no
from .drawing import (
    BAD,
    FIRST,
    INK,
    LINE,
    MUTED,
    PAPER,
    SMALL,
    as_svg,
    bare,
    canvas,
    in_style,
    place,
)
from .groups import groups, together
from .phrases import against, clean, margin_of

MOST = 14
ROW, SLOPE = 25, 40
NEAR, FAR_BELOW, FAR_ABOVE = 0.1, -20.0, 1.2
TITLE = 45
MET = "met"
QUESTION = "How near is each check to its limit?"
MOVED = "Which margins moved most?"


@dataclass(frozen=True, slots=True)
class Margin:
    """A check on the scale.  share: of the limit, or of what is ample where none means anything."""

    title: str
    word: str
    share: float
    text: str


def margins_of(review: Review) -> list[Margin]:
    """All checks with a margin, the worst first; equal channels once."""
    rows = []
    for item, subjects in groups(review.findings):
        share = closeness(item.evidence)
        met = item.status is Status.MEETS
        if share is not None and (item.severity or met) and not (met and is_yes_or_no(item)):
            rows.append(_margin(review, item, subjects))
    return sorted(rows, key=lambda row: row.share)


def shown(margins: Sequence[Margin]) -> tuple[list[Margin], str]:
    """The worst of those that fail and of those that are met, and how many that is."""
    failing = [row for row in margins if row.word != MET]
    met = [row for row in margins if row.word == MET]
    told = [
        f"the worst {MOST} of {len(rows)} that {words}"
        for rows, words in ((failing, "fail"), (met, "meet their limit"))
        if len(rows) > MOST
    ]
    text = " and ".join(told)
    return [*failing[:MOST], *met[:MOST]], text[:1].upper() + text[1:] + "." if text else ""


def distances_told(margins: Sequence[Margin]) -> str:
    """How distances without a share of the limit are drawn, where there are any."""
    if all(row.text.endswith("%") for row in margins):
        return ""
    return "A distance with a unit is drawn as a share of what is ample."


def margin_svg(margins: Sequence[Margin], number: int) -> str:
    """The worst margins as an SVG element."""
    with in_style():
        axes = _rows(len(margins), ROW)
        for place_, row in enumerate(margins):
            top = place_ * ROW
            failed = row.word != MET
            axes.barh(top + 18, _inside(row.share), height=7, color=BAD if failed else FIRST,
                      alpha=0.9 if failed else 0.6, lw=0, hatch="////" if failed else None,
                      edgecolor="none")  # fmt: skip
            _words(axes, top + 7, row.title, f"{row.text} {row.word}".strip())
        return as_svg(axes, number)


def slope_svg(moved: Sequence[tuple[Margin, Margin]], number: int) -> str:
    """Where each margin was and where it is now, as an SVG element."""
    with in_style():
        axes = _rows(len(moved), SLOPE)
        for place_, (old, new) in enumerate(moved):
            y = place_ * SLOPE + 20
            start, end = _inside(old.share), _inside(new.share)
            colour = FIRST if new.word == MET else BAD
            axes.annotate("", (end, y), (start, y),
                          arrowprops={"arrowstyle": "-|>", "lw": 1.8, "color": colour,
                                      "shrinkA": 0, "shrinkB": 0})  # fmt: skip
            axes.plot((start,), (y,), marker="o", ms=4.5, mfc=PAPER, color=colour, ls="none")
            _words(axes, y - 12, new.title, new.word)
            _words(axes, y + 11, f"{old.text} before, {new.text} now", "")
        return as_svg(axes, number)


def moved_margins(
    review: Review, pairs: Sequence[tuple[Finding, Finding]]
) -> list[tuple[Margin, Margin]]:
    """Margins before and now of the answers of two revisions; equal channels once."""
    found: dict[tuple[object, ...], tuple[list[str], Finding, Finding]] = {}
    for old, new in pairs:
        key = (new.check, *(x.evidence.margin for x in (old, new)), against(new.evidence))
        found.setdefault(key, ([], old, new))[0].append(new.subject)
    return [
        (_margin(review, old, tuple(subjects)), _margin(review, new, tuple(subjects)))
        for subjects, old, new in found.values()
    ]


def _margin(review: Review, item: Finding, subjects: tuple[str, ...]) -> Margin:
    share = closeness(item.evidence)
    assert share is not None
    told = margin_of(item.evidence)
    return Margin(_titled(review, item, subjects), _word(item), share, told)


def _rows(count: int, height: float) -> Axes:
    """A scale of margins with room for some rows of a title and a mark."""
    axes = canvas(height * count + 32)
    place(axes, 20, 8, 20, 24)
    axes.axvline(0.0, color=INK, lw=1.2)
    axes.set_xscale("symlog", linthresh=NEAR)
    axes.set_xlim(FAR_BELOW, FAR_ABOVE)
    axes.set_ylim(height * count, 0)
    axes.yaxis.set_visible(False)
    axes.xaxis.set_major_locator(FixedLocator([-10.0, -1.0, -NEAR, 0.0, NEAR, 1.0]))
    axes.xaxis.set_major_formatter(FuncFormatter(_tick))
    axes.tick_params(axis="x", labelsize=SMALL, length=3)
    axes.grid(axis="x", color=LINE, lw=0.5, alpha=0.6)
    axes.set_axisbelow(True)
    bare(axes)
    return axes


def _inside(share: float) -> float:
    return max(FAR_BELOW, min(share, FAR_ABOVE))


def _words(axes: Axes, y: float, title: str, told: str) -> None:
    across = axes.get_yaxis_transform()
    axes.text(0, y, title, transform=across, fontsize=SMALL, color=INK, va="center")
    axes.text(1, y, told, transform=across, fontsize=SMALL, color=MUTED, va="center", ha="right")


def _tick(x: float, _: int) -> str:
    return f"{100 * x:+.0f} %" if x else "limit"


def _titled(review: Review, item: Finding, subjects: tuple[str, ...]) -> str:
    """The title, with the channels where not all of them are meant; cut where it is too long."""
    channels = review.spec.channels
    some = len(channels) > 1 and set(subjects) < set(channels)
    text = clean(f"{item.title} ({together(subjects)})" if some else item.title)
    return text if len(text) <= TITLE else text[: TITLE - 1].rstrip() + "…"


def _word(item: Finding) -> str:
    return str(item.severity) if item.severity else MET

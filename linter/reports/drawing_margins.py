"""The margins of all checks on one scale, the worst first."""

from collections.abc import Sequence
from dataclasses import dataclass

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
    SMALL,
    as_svg,
    canvas,
    in_style,
    place,
)
from .groups import groups, together
from .phrases import clean, margin_of

MOST = 14
ROW = 25
NEAR, FAR_BELOW, FAR_ABOVE = 0.1, -20.0, 1.2
TITLE = 45
MET = "met"
QUESTION = "How near is each check to its limit?"


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
            rows.append(Margin(_titled(review, item, subjects), _word(item), share,
                               margin_of(item.evidence)))  # fmt: skip
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


def margin_svg(margins: Sequence[Margin], number: int) -> str:
    """The worst margins as an SVG element."""
    with in_style():
        axes = canvas(ROW * len(margins) + 32)
        place(axes, 20, 8, 20, 24)
        across = axes.get_yaxis_transform()
        for place_, row in enumerate(margins):
            top = place_ * ROW
            end = max(FAR_BELOW, min(row.share, FAR_ABOVE))
            failed = row.word != MET
            axes.barh(top + 18, end, height=7, color=BAD if failed else FIRST,
                      alpha=0.9 if failed else 0.6, lw=0, hatch="////" if failed else None,
                      edgecolor="none")  # fmt: skip
            axes.text(0, top + 7, row.title, transform=across, fontsize=SMALL, color=INK,
                      va="center")  # fmt: skip
            told = f"{row.text} {row.word}".strip()
            axes.text(1, top + 7, told, transform=across, fontsize=SMALL, color=MUTED,
                      va="center", ha="right")  # fmt: skip
        axes.axvline(0.0, color=INK, lw=1.2)
        axes.set_xscale("symlog", linthresh=NEAR)
        axes.set_xlim(FAR_BELOW, FAR_ABOVE)
        axes.set_ylim(ROW * len(margins), 0)
        axes.yaxis.set_visible(False)
        axes.xaxis.set_major_locator(FixedLocator([-10.0, -1.0, -NEAR, 0.0, NEAR, 1.0]))
        axes.xaxis.set_major_formatter(FuncFormatter(_tick))
        axes.tick_params(axis="x", labelsize=SMALL, length=3)
        axes.grid(axis="x", color=LINE, lw=0.5, alpha=0.6)
        axes.set_axisbelow(True)
        for side in ("left", "right", "top"):
            axes.spines[side].set_visible(False)
        return as_svg(axes, number)


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

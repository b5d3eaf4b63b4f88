"""How many builds have which figure: a small histogram for each check, its limit across it."""

from collections.abc import Sequence

from matplotlib.axes import Axes

from ..check import AtLeast
from ..evaluation.wording import in_words
from ..judging.spread import Spread
from .drawing import BAD, FIRST, INK, LINE, MUTED, SMALL, TEXT, as_svg, canvas, in_style, place
from .phrases import apart, clean

ROW, HIGH, FOOT = 86, 42, 62
SIDE = 20
PAD = 0.04
QUESTION = "How many builds miss the limits that hold the design?"
HEADS = ("check", "of", "builds that miss it", "least", "most", "limit")


def spread_svg(spreads: Sequence[Spread], builds: int, number: int) -> str:
    """All histograms as an SVG element, each on a scale of its own."""
    with in_style():
        axes = canvas(ROW * len(spreads) + 6)
        place(axes, SIDE, 0, SIDE, 6)
        axes.set_axis_off()
        axes.set_xlim(0.0, 1.0)
        axes.set_ylim(ROW * len(spreads) + 6, 0)
        for row, spread in enumerate(spreads):
            _row(axes, spread, builds, ROW * row)
        return as_svg(axes, number)


def spread_rows(spreads: Sequence[Spread], builds: int) -> tuple[tuple[str, ...], ...]:
    """The same as rows of a table."""
    return tuple(
        (
            spread.finding.title,
            spread.finding.subject,
            missing(spread, builds),
            *(in_words(x, spread.finding.evidence.unit) for x in (spread.low, spread.high)),
            limit(spread),
        )
        for spread in spreads
    )


def missing(spread: Spread, builds: int) -> str:
    """The share of the builds that miss the limit."""
    return f"{spread.missing / builds:.1%}".replace("%", " %")


def limit(spread: Spread) -> str:
    """The limit and its side."""
    side = "at least" if _rising(spread) else "at most"
    return f"{side} {in_words(spread.limit, spread.finding.evidence.unit)}"


def _rising(spread: Spread) -> bool:
    return isinstance(spread.finding.evidence.limits, AtLeast)


def _steps(spread: Spread, is_missed: bool) -> tuple[list[float], list[int]]:
    """Ends and counts of the steps on one side of the limit."""
    below = _rising(spread) == is_missed
    width = (spread.high - spread.low) / len(spread.counts)
    edges: list[float] = []
    counts: list[int] = []
    for number, count in enumerate(spread.counts):
        low = spread.low + number * width
        ends = (
            (low, min(low + width, spread.limit))
            if below
            else (max(low, spread.limit), low + width)
        )
        if ends[0] < ends[1]:
            edges += [*ends] if not edges else [ends[1]]
            counts.append(count)
    return edges, counts


def _row(axes: Axes, spread: Spread, builds: int, top: float) -> None:
    unit = spread.finding.evidence.unit
    low, high = min(spread.low, spread.limit), max(spread.high, spread.limit)
    span = (high - low) * (1 + 2 * PAD)

    def across(value: float) -> float:
        return (value - low) / span + PAD / (1 + 2 * PAD)

    base = top + FOOT
    for is_missed in (False, True):
        edges, counts = _steps(spread, is_missed)
        if counts:
            heights = [base - HIGH * count / max(spread.counts) for count in counts]
            axes.stairs(heights, [across(x) for x in edges], baseline=base, fill=True,
                        color=BAD if is_missed else FIRST, alpha=0.85 if is_missed else 0.6,
                        hatch="////" if is_missed else None, lw=0)  # fmt: skip
    at = across(spread.limit)
    axes.plot((0, 1), (base, base), color=LINE, lw=0.8, zorder=1)
    axes.plot((at, at), (base + 4, base - HIGH - 2), color=INK, lw=2.0, zorder=4)
    low_told = apart(spread.low, spread.limit, unit)[0]
    told = f"{low_told} .. {in_words(spread.high, unit)}; limit {limit(spread)}"
    axes.text(0, top + 9, clean(spread.finding.title), fontsize=TEXT, fontweight="bold",
              color=INK, va="center")  # fmt: skip
    axes.text(0, base + 12, told, fontsize=SMALL, color=MUTED, va="center")
    axes.text(1, base + 12, f"{missing(spread, builds)} miss it", fontsize=SMALL, color=INK,
              va="center", ha="right")  # fmt: skip

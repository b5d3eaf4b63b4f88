"""Root-sum-square and Monte Carlo results as a table beside the worst case."""

from collections.abc import Sequence

from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from ..evaluation.wording import in_words
from ..finding import Finding
from ..judging.monte_carlo import Yield
from .columns import print_columns
from .groups import alike

SQUARE_HEADS = ("check", "of", "nominal", "worst case", "root-sum-square", "limit")
DRAWN = (
    "Tolerances uniform between their ends, data-sheet lines triangular, conditions of use"
    " at their worst ends; parts shared by checks share one draw."
)
YIELD_HEADS = ("fails on", "of", "builds", "worst case")


def print_root_sum_square(rows: Sequence[tuple[Finding, float]], console: Console) -> None:
    """Print worst case and root-sum-square of each check, tightest first."""
    console.print(
        Padding(Text("ROOT-SUM-SQUARE beside the worst case", style="bold"), (1, 1, 0, 1))
    )
    told = []
    for item, figure in rows:
        found = item.evidence
        numbers = (found.nominal, found.figure, figure, found.limit)
        cells = (in_words(x, found.unit) if x is not None else "" for x in numbers)
        told.append((item.title, item.subject, *cells))
    print_columns(SQUARE_HEADS, alike(told), console)


def print_yield(done: Yield, console: Console) -> None:
    """Print which share of the builds meets every check, and what the others fail on."""
    share, rest = yield_words(done)
    style = "bold green" if done.good == done.builds else "bold yellow"
    text = Text.assemble(("MONTE CARLO  ", "bold"), (share, style), rest)
    console.print(Padding(text, (1, 1, 0, 1)))
    if done.shares:
        told = []
        for item in done.shares:
            found = item.finding.evidence
            worst = in_words(found.figure, found.unit)
            lost = f"{item.missing / done.builds:.1%}"
            told.append((item.finding.title, item.finding.subject, lost, worst))
        print_columns(YIELD_HEADS, alike(told), console)
    console.print(Padding(Text(DRAWN, style="dim"), (0, 1)))


def yield_words(done: Yield) -> tuple[str, str]:
    """Which share of the builds is good, and at what."""
    share = f"{done.good / done.builds:.1%} of {done.builds} builds"
    return share, f" miss no limit of {done.severity.value} or graver (seed {done.seed})"

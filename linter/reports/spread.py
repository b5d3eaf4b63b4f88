"""Root-sum-square and Monte Carlo results as a table beside the worst case."""

from collections.abc import Sequence

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from ..builds import Yield
from ..finding import Finding
from ..wording import in_words
from .marks import clean


def print_root_sum_square(rows: Sequence[tuple[Finding, float]], console: Console) -> None:
    """Print worst case and root-sum-square of each check, tightest first."""
    console.print(
        Padding(Text("ROOT-SUM-SQUARE beside the worst case", style="bold"), (1, 1, 0, 1))
    )
    table = _table("check", "place", "nominal", "worst case", "root-sum-square", "limit")
    for item, figure in rows:
        numbers = (item.nominal, item.figure, figure, item.limit)
        cells = [in_words(x, item.unit) if x is not None else "" for x in numbers]
        table.add_row(item.check, clean(item.subject), *cells)
    console.print(Padding(table, (0, 1)))


def print_yield(done: Yield, console: Console) -> None:
    """Print which share of the builds meets every check, and what the others fail on."""
    share = done.good / done.builds
    text = Text.assemble(
        ("MONTE CARLO  ", "bold"),
        (f"{share:.1%} of {done.builds} builds", "bold green" if share == 1.0 else "bold yellow"),
        f" miss no limit of {done.severity.value} or graver (seed {done.seed})",
    )
    console.print(Padding(text, (1, 1, 0, 1)))
    if done.shares:
        table = _table("fails on", "place", "builds", "worst case")
        for item in done.shares:
            worst = in_words(item.finding.figure, item.finding.unit)
            lost = f"{item.missing / done.builds:.1%}"
            table.add_row(item.finding.check, clean(item.finding.subject), lost, worst)
        console.print(Padding(table, (0, 1)))
    note = (
        "Tolerances uniform between their ends, data-sheet lines triangular, conditions of use"
        " at their worst ends; parts shared by checks share one draw."
    )
    console.print(Padding(Text(note, style="dim"), (0, 1)))


def _table(*headings: str) -> Table:
    table = Table(box=None, padding=(0, 1), show_edge=False, header_style="dim")
    for heading in headings:
        table.add_column(heading, overflow="fold")
    return table

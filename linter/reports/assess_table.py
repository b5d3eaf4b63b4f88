"""Several files in one table: file, verdict, counts."""

from collections.abc import Sequence
from dataclasses import dataclass

from rich.console import Console
from rich.text import Text

from ..judging.review import Outcome, Review
from .lines import hanging, print_lines, room
from .verdict import counted

STYLES = {"RELEASED": "green", "HELD": "red", "NOT ASSESSED": "magenta"}


@dataclass(frozen=True, slots=True)
class TableRow:
    """One file of several."""

    file: str
    verdict: str
    told: str


def row_of(file: str, outcome: Outcome) -> TableRow:
    """The row of a file."""
    if not isinstance(outcome, Review):
        return TableRow(file, "NOT ASSESSED", outcome[0].problem)
    word = "RELEASED" if outcome.verdict.released else "HELD"
    return TableRow(file, word, f"at {outcome.verdict.milestone}: {counted(outcome)}")


def print_table(rows: Sequence[TableRow], console: Console) -> None:
    """Print all files with their verdicts, each with what was counted below."""
    width, lines = room(console), []
    size = max(len(row.verdict) for row in rows)
    for row in rows:
        lead = f" {row.verdict:<{size}} "
        lines += hanging(lead, row.file, width, (f"bold reverse {STYLES[row.verdict]}", "bold"))
        lines += hanging(" " * len(lead), row.told, width)
    numbers = [f"{sum(x.verdict == word for x in rows)} {word.lower()}" for word in STYLES]
    lines += [Text(), Text(f" {len(rows)} files: {', '.join(numbers)}", "bold")]
    print_lines(lines, console)

"""What the missing values must be: a table by part, for a terminal and as Markdown."""

import re
from collections.abc import Sequence

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from ..asking.requirements import Requirement, Requirements
from ..judging.review import Review
from ..quantities.quantity import show
from .phrases import clean, escaped
from .questions_text import heading, subject
from .verdict import DISCLAIMER, house_told

HEADINGS = ("value", "must be", "beyond it", "set by")
NOTHING = "Nothing that is missing is bounded by what is stated."
ABOUT = (
    "Worst case of all that is stated, with usual values for what is assumed. Beyond its bound a"
    " value gives the finding that is named. Where other values are still missing (marked +), one"
    " within the bound may not be enough."
)


def print_requirements(review: Review, parts: Sequence[Requirements], console: Console) -> None:
    """Print the bounds part by part."""
    console.print(Padding(Text(clean(subject(review)), style="bold"), (0, 1)))
    console.print(Padding(Text(ABOUT if parts else NOTHING), (0, 1)))
    for part in parts:
        table = Table(box=None, padding=(0, 2, 0, 0), show_header=False, expand=True)
        for ratio in (6, 3, 3):
            table.add_column(ratio=ratio)
        table.add_column(ratio=5, style="dim")
        for item in part.bounds:
            table.add_row(*map(clean, row(item)))
        console.print(Padding(Text(clean(heading(part)), style="bold underline"), (1, 1, 0, 1)))
        console.print(Padding(table, (0, 1, 0, 3)))
    for line in (*house_told(review.criteria.house), DISCLAIMER):
        console.print(Padding(Text(clean(line), style="dim"), (1, 1, 0, 1)))


def markdown(review: Review, parts: Sequence[Requirements]) -> str:
    """The same as a Markdown text."""
    found = [f"# Requirements: {escaped(subject(review))}", ABOUT if parts else NOTHING]
    for part in parts:
        rows = [HEADINGS, tuple("---" for _ in HEADINGS)]
        rows += [tuple(map(escaped, row(item))) for item in part.bounds]
        found.append(f"## {escaped(heading(part))}")
        found.append("\n".join(f"| {' | '.join(row)} |" for row in rows))
    return (
        "\n\n".join([*found, *map(escaped, house_told(review.criteria.house)), f"*{DISCLAIMER}*"])
        + "\n"
    )


def row(item: Requirement) -> tuple[str, str, str, str]:
    """A bound as it is printed: the value, its bound, what happens beyond, what sets it."""
    return value(item), bound(item), beyond(item), "; ".join((item.title, *warnings(item)))


def beyond(item: Requirement) -> str:
    """What the check finds beyond the bound, and from where on it finds worse.

    The worse finding is that of the other bound, which lies further out.
    """
    soft, hard = item.border, item.hard
    if hard is None or hard.beyond == soft.beyond:
        return f"{soft.beyond}"
    side = "below" if hard.at_least else "above"
    return f"{soft.beyond}; {hard.beyond} {side} {show(hard.value, hard.unit)}"


def warnings(item: Requirement) -> list[str]:
    """Where no value can do: the bound of the other side, and checks that fail with any value."""
    told = [f"fails with any value: {title}" for title in item.unmet]
    return told + ([f"contradicts {item.conflicts}"] if item.conflicts else [])


def value(item: Requirement) -> str:
    """What is bounded, in words, with the name of its field."""
    words = re.match(r"(?:[A-Za-z]+: )?[^;,(]{8,}", item.field.meaning)
    return (
        f"{words[0].strip() if words else item.field.meaning} ({item.paths[0].rpartition('.')[2]})"
    )


def bound(item: Requirement) -> str:
    """The bound; marked where other values are missing beside it."""
    return f"{item.border}{' +' if item.beside else ''}"

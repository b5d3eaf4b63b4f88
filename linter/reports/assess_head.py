"""Around the findings at a terminal: what holds, what the house file changes, hashes."""

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from ..judging.house import House
from ..judging.review import Review
from .phrases import clean
from .verdict import demands, house_change, rests_on, weakened_lines

SHORT_HASH = 16


def print_weakened(review: Review, console: Console) -> None:
    """Print, before anything else, what the house file weakens in matters of safety."""
    changes = weakened_lines(review)
    if changes:
        head = Text(" SAFETY CHECK WEAKENED BY THE HOUSE FILE ", style="bold reverse red")
        console.print(Padding(head, (0, 1)))
    for number, change in enumerate(changes, start=1):
        below = 1 if number == len(changes) else 0
        console.print(Padding(Text(clean(f"▪ {change}"), style="red"), (0, 1, below, 1)))


def print_demands(review: Review, console: Console) -> None:
    """Print exactly what must change to be released, gravest first."""
    if review.verdict.released:
        return
    console.print(Padding(Text("Required before release:", style="bold"), (1, 1, 0, 1)))
    table = Table.grid(padding=(0, 1))
    table.add_column(no_wrap=True, style="dim", justify="right")
    table.add_column(no_wrap=True)
    table.add_column(overflow="fold")
    for number, item in enumerate(demands(review), start=1):
        text = Text.assemble((clean(item.label), "bold"), f": {clean(item.text)}")
        table.add_row(f"{number}.", item.gravity, text)
    console.print(Padding(table, (0, 1, 0, 1)))


def print_house(house: House | None, console: Console) -> None:
    """Print every change of the house file."""
    if house is None:
        return
    console.print(Padding(Text(f"HOUSE RULES  {clean(house.file)}", style="bold"), (1, 1, 0, 1)))
    for change in house.changes:
        style = "red" if change.safety else ""
        console.print(Padding(Text(f"▪ {clean(house_change(change))}", style=style), (0, 1, 0, 1)))
    if not house.changes:
        console.print(Padding(Text("changes nothing", style="dim"), (0, 1, 0, 1)))


def print_rests_on(review: Review, console: Console, dated: bool = False) -> None:
    """Print what the report rests on; the long forms of the report give whole hashes."""
    parts = []
    for what, name, digest in rests_on(review):
        parts.append(f"{what} {clean(name)}" + (f" {digest[:SHORT_HASH]}" if digest else ""))
    if dated and review.criteria.day:
        parts.append(f"reviewed on {review.criteria.day.isoformat()}")
    console.print(Padding(Text(" · ".join(parts), style="dim"), (1, 1, 0, 1)))

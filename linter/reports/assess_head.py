"""Around the findings at a terminal: the verdict, what the house file changes, hashes."""

from rich.console import Console
from rich.text import Text

from ..judging.house import House
from ..judging.review import Review
from .lines import hanging, print_lines, room
from .phrases import clean
from .verdict import counted, house_change, reason, rests_on, weakened_lines

SHORT_HASH = 16
ABOUT = 2


def verdict_lines(review: Review, width: int, brief: bool = False) -> list[Text]:
    """The verdict, what it is on, and why.  brief: few lines, however long the title is."""
    spec = review.spec
    revision = f"revision {spec.revision}" if spec.revision else ""
    about = " · ".join(part for part in (spec.title, revision) if part)
    lines = verdict_line(review, width)
    for text, style in ((about, "bold"), (spec.file, "dim")):
        lines += hanging("", text, width, ("", style), ABOUT if brief else 0) if text else []
    return [*lines, *hanging("", reason(review, brief), width)]


def verdict_line(review: Review, width: int) -> list[Text]:
    """The verdict in one line, where there is room, with what counts."""
    released = review.verdict.released
    word, style = (" RELEASED ", "green") if released else (" HELD ", "red")
    told = f" at {review.verdict.milestone}: {counted(review)}"
    return hanging(word, told, width, (f"bold reverse {style}", ""))


def weakened_text(review: Review, width: int, most: int = 0) -> list[Text]:
    """What the house file weakens in matters of safety; beyond ``most`` it is counted."""
    changes = weakened_lines(review)
    if not changes:
        return []
    head = "SAFETY CHECK WEAKENED BY THE HOUSE FILE"
    lines = hanging("", head, width, ("", "bold reverse red"))
    shown = changes[:most] if most else changes
    for change in shown:
        lines += hanging("▪ ", change, width, ("red", "red"), 2 if most else 0)
    if len(shown) < len(changes):
        lines += hanging("  ", f"and {len(changes) - len(shown)} more: --full", width)
    return [*lines, Text()]


def print_weakened(review: Review, console: Console) -> None:
    """Print, before anything else, what the house file weakens in matters of safety."""
    lines = weakened_text(review, room(console))
    if lines:
        print_lines(lines, console)


def print_house(house: House | None, console: Console) -> None:
    """Print every change of the house file."""
    if house is not None:
        print_lines([Text(), *house_lines(house, room(console))], console)


def house_lines(house: House, width: int) -> list[Text]:
    """Every change of the house file."""
    lines = hanging("HOUSE RULES  ", house.told, width, ("bold", "bold"))
    for change in house.changes:
        style = "red" if change.safety else ""
        lines += hanging("▪ ", house_change(change), width, (style, style))
    return lines if house.changes else [*lines, Text(" changes nothing", "dim")]


def rests_on_lines(review: Review, width: int, dated: bool = False) -> list[Text]:
    """What the report rests on; the long forms of the report give whole hashes."""
    parts = []
    for what, name, digest in rests_on(review):
        parts.append(f"{what} {clean(name)}" + (f" {digest[:SHORT_HASH]}" if digest else ""))
    if dated and review.criteria.day:
        parts.append(f"reviewed on {review.criteria.day.isoformat()}")
    return hanging("", " · ".join(parts), width, ("", "dim"))

"""The review of a parts file at a terminal: contradictions first, then what is missing."""

from collections.abc import Iterable

from rich.console import Console
from rich.text import Text

from ..judging.parts_review import PartReview, PartsReview, Wanted
from .identity import text_hash
from .lines import hanging, print_lines, room
from .phrases import place_in_words

SHORT_HASH = 16
NOTE = (
    "Judged are the values of each part against each other and against their usual ranges. What"
    " needs the circuit is judged in the spec that names the part."
)


def print_parts(found: PartsReview, console: Console) -> None:
    """Print the review of a parts file."""
    width, file = room(console), found.file
    verdict, style = ("HELD", "bold red") if found.holds else ("CONSISTENT", "bold green")
    told = "a value below cannot be as stated" if found.holds else "no value contradicts another"
    lines = hanging(f"{verdict}  ", told, width, (style, ""))
    lines += hanging("", f"parts file {file.file} {text_hash(file.text)[:SHORT_HASH]}", width)
    for part in found.parts:
        lines += [Text(), *_part(part, width)]
    if not found.parts:
        lines += [Text(), *hanging("", "No part is stated.", width)]
    print_lines([*lines, Text(), *hanging("", NOTE, width, ("", "dim"))], console)


def _part(part: PartReview, width: int) -> list[Text]:
    """One part: its findings, then what it does not state."""
    lines = hanging(f"{part.kind} {part.name}  ", _count(part.stated), width, ("bold", ""))
    for item in part.findings:
        place = f" ({place_in_words(item.place)})" if item.place else ""
        lead = f"  {item.severity.value if item.severity else ''}  "
        lines += hanging(lead, item.message + place, width, ("red", ""))
    wanted = [item for item in part.wanted if not item.only_for]
    lines += _missing("hazards and ratings", (x for x in wanted if x.grave), width)
    lines += _missing("other checks", (x for x in wanted if not x.grave), width)
    for only_for in dict.fromkeys(item.only_for for item in part.wanted if item.only_for):
        rest = (item for item in part.wanted if item.only_for == only_for)
        lines += _missing(f"{only_for} alone", rest, width)
    if not part.wanted:
        lines += hanging("  ", "complete: every value that a check can use", width)
    return lines


def _missing(why: str, wanted: Iterable[Wanted], width: int) -> list[Text]:
    """The values that are not stated, those that most checks can use first."""
    ordered = sorted(wanted, key=lambda item: (-item.grave, -item.checks))
    text = ", ".join(f"{item.name}{_unit(item)}" for item in ordered)
    return hanging(f"  missing for {why}: ", text, width, ("dim", "")) if text else []


def _unit(item: Wanted) -> str:
    return "" if item.unit in ("1", "word") else f" [{item.unit}]"


def _count(number: int) -> str:
    return f"{number} value{'' if number == 1 else 's'} stated"

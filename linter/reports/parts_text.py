"""The review of a parts file at a terminal: contradictions first, then what is missing."""

from collections.abc import Iterable, Iterator

from rich.console import Console
from rich.text import Text

from ..judging.parts_review import PartReview, PartsReview, Wanted
from .identity import text_hash
from .lines import hanging, print_lines, room
from .phrases import place_in_words

SHORT_HASH = 16
COMPLETE = "complete: every value that a check can use"
NOTE = (
    "Judged are the values of each part against each other and against their usual ranges. What"
    " needs the circuit is judged in the spec that names the part."
)


def print_parts(found: PartsReview, console: Console) -> None:
    """Print the review of a parts file."""
    width, file = room(console), found.file
    style = "bold red" if found.holds else "bold green"
    lines = hanging(f"{verdict_of(found)[0]}  ", verdict_of(found)[1], width, (style, ""))
    lines += hanging("", f"parts file {file.file} {text_hash(file.text)[:SHORT_HASH]}", width)
    for part in found.parts:
        lines += [Text(), *_part(part, width)]
    if not found.parts:
        lines += [Text(), *hanging("", "No part is stated.", width)]
    print_lines([*lines, Text(), *hanging("", NOTE, width, ("", "dim"))], console)


def verdict_of(found: PartsReview) -> tuple[str, str]:
    """The verdict on a file, and why."""
    if found.holds:
        return "HELD", "a value below cannot be as stated"
    return "CONSISTENT", "no value contradicts another"


def _part(part: PartReview, width: int) -> list[Text]:
    """One part: its findings, then what it does not state."""
    lines = hanging(f"{part.kind} {part.name}  ", stated_in(part), width, ("bold", ""))
    for item in part.findings:
        place = f" ({place_in_words(item.place)})" if item.place else ""
        lead = f"  {item.severity.value if item.severity else ''}  "
        lines += hanging(lead, item.message + place, width, ("red", ""))
    for why, names in missing_of(part):
        lines += hanging(f"  missing for {why}: ", names, width, ("dim", ""))
    if not part.wanted:
        lines += hanging("  ", COMPLETE, width)
    return lines


def missing_of(part: PartReview) -> Iterator[tuple[str, str]]:
    """What a part does not state: for what it is wanted, and its names."""
    wanted = [item for item in part.wanted if not item.only_for]
    designs = dict.fromkeys(item.only_for for item in part.wanted if item.only_for)
    groups = {
        "hazards and ratings": [x for x in wanted if x.grave],
        "other checks": [x for x in wanted if not x.grave],
        **{f"{name} alone": [x for x in part.wanted if x.only_for == name] for name in designs},
    }
    for why, items in groups.items():
        if items:
            yield why, _names(items)


def _names(wanted: Iterable[Wanted]) -> str:
    """Values by name and unit, those that most checks can use first."""
    ordered = sorted(wanted, key=lambda item: (-item.grave, -item.checks))
    return ", ".join(f"{item.name}{_unit(item)}" for item in ordered)


def _unit(item: Wanted) -> str:
    return "" if item.unit in ("1", "word") else f" [{item.unit}]"


def stated_in(part: PartReview) -> str:
    """How much a part states."""
    return f"{part.stated} value{'' if part.stated == 1 else 's'} stated"

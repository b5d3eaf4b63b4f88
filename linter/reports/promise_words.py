"""Promises in words, the same in every report: what is promised, the outlook, what is allowed."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from ..declare import local_path, without_channel
from ..finding import Missing
from ..judging.promised import OUTLOOKS, Allowed, Outlook, Promised
from ..judging.review import Review
from ..quantities.quantity import Value, show
from .groups import together

HEADS = ("Outlook", "Promised", "What the spec allows")
STYLES = {
    "impossible": "bold red",
    "unlikely": "yellow",
    "not shown": "blue",
    "supported": "green",
}
MOST_NUMBERS = 2
AS_SPECIFIED = "as specified"
MOST_MISSING = 2
MOST_SLIPS = 2
MANY_TIMES = 100.0


@dataclass(frozen=True, slots=True)
class PromiseRow:
    """One promise as the reports print it, that of equal channels once.

    channels: those that it is about, where it differs between them.
    """

    outlook: Outlook
    name: str
    claim: str
    channels: str
    allowed: str

    @property
    def promised(self) -> str:
        """What is promised, in one line."""
        return f"{self.name} {self.claim}{self.channels}"


def promise_rows(promises: Iterable[Promised]) -> list[PromiseRow]:
    """All promises, the least likely first."""
    found: dict[tuple[str, str, Outlook, str], list[str]] = {}
    told = list(promises)
    for item in told:
        key = (item.name, item.claim, item.outlook, allowed_in_words(item))
        found.setdefault(key, []).append(item.subject)
    kinds = [name for name, *_ in found]
    rows = [
        PromiseRow(outlook, name, claim, _of(names, kinds.count(name) > 1), allowed)
        for (name, claim, outlook, allowed), names in found.items()
    ]
    return sorted(rows, key=lambda row: OUTLOOKS.index(row.outlook))


def judged_with(review: Review) -> str:
    """Which values are taken otherwise than stated to judge the promises; mostly nothing."""
    told: dict[str, None] = {}
    for path, right in review.slips.items():
        stated = review.spec.values.get(path)
        was = f" (stated: {stated.text})" if isinstance(stated, Value) else ""
        meant = right["value"] if isinstance(right, Mapping) else right
        told.setdefault(f"{local_path(path)} at {meant}{was}")
    more = len(told) - MOST_SLIPS
    names = " and ".join([*told][:MOST_SLIPS]) + (f" and {more} more slips" if more > 0 else "")
    return f"judged with {names}" if told and review.promises else ""


def allowed_in_words(item: Promised) -> str:
    """What the spec allows, the most favourable number first, or what it takes to tell."""
    parts = _numbers(item, item.allowed[:MOST_NUMBERS])
    if item.missing:
        parts.append(f"needs {_names(item.missing)}")
    elif item.told:
        told = without_channel(item.told, item.subject)
        parts.append(begun_small(told) if parts else told)
    return "; ".join(dict.fromkeys(parts))


def begun_small(text: str) -> str:
    """A sentence as it goes on behind another part of one; an abbreviation keeps its capital."""
    return text if text[1:2].isupper() else f"{text[:1].lower()}{text[1:]}"


def _numbers(item: Promised, numbers: Sequence[Allowed]) -> list[str]:
    """The numbers with what they hold for; what holds for all of them is said once."""
    same = len({number.at for number in numbers}) == 1
    told = []
    for place, number in enumerate(numbers, start=1):
        plain = AS_SPECIFIED if len(numbers) > 1 else ""
        parts = (_number(item, number), number.says or plain)
        text = " ".join(part for part in parts if part)
        at = number.at if not same or place == len(numbers) else ""
        least = number.at_worst
        beside = "" if least is None else f" ({show(least, number.unit)} at worst)"
        told.append((f"{text}, {at}" if at else text) + beside)
    return told


def _number(item: Promised, number: Allowed) -> str:
    """A number; one that keeps the promise many times over only as what it stays below."""
    if item.outlook == "supported" and item.figure and number.unit == item.unit:
        plenty = abs(item.figure) / MANY_TIMES
        if abs(number.value) < plenty:
            return f"below {show(plenty, number.unit)}"
    return show(number.value, number.unit)


def _names(missing: Iterable[Missing]) -> str:
    """Missing values by their last names, each once, with what they must be."""
    names = list(
        dict.fromkeys(
            x.path.rpartition(".")[2] + (f" ({x.border})" if x.border else "") for x in missing
        )
    )
    more = len(names) - MOST_MISSING
    return ", ".join(names[:MOST_MISSING]) + (f" and {more} more" if more > 0 else "")


def _of(subjects: list[str], several: bool) -> str:
    """The channels, where what is promised of them differs."""
    return f" ({together(tuple(subjects))})" if several else ""

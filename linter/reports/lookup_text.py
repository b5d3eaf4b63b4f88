"""What has to be looked up before production, as lines for the house file."""

from collections.abc import Iterator, Mapping

from ..evaluation.recalled import Recalled, is_yes_or_no
from ..judging.house import NAME
from ..judging.review import Review
from ..reading.format import HOUSE_KEY, VERSION
from .standing import to_look_up

NOTHING = "No grave limit of safety rests on memory or on a quotation: there is no file to write."
HOW = (
    "Look each of them up in the text named, in the edition that holds for your market. Write",
    "text with its edition, who looked, the day, and of each limit the value found and its",
    "clause. A record that stays blank counts for nothing. A value that differs becomes the limit.",
)


def lookup_text(review: Review) -> str:
    """Records to fill in, grouped by text; nothing where there is none."""
    texts = to_look_up(review)
    if not texts:
        return ""
    house = review.criteria.house
    where = f"below `verified:` in {house.file}" if house else f"into {NAME} beside the spec"
    lines = [f"# Limits that nobody has looked up yet. These records go {where}."]
    lines += [f"# {line}" for line in HOW]
    lines += [] if house else [f"{HOUSE_KEY}: {VERSION}"]
    lines.append("verified:")
    for text, checks in texts.items():
        lines += _record(text, checks, review)
    return "\n".join(lines) + "\n"


def _record(text: str, checks: Mapping[str, tuple[Recalled, ...]], review: Review) -> Iterator[str]:
    yield f"  - text:  # {text}, edition and year"
    yield "    by:    # name or role"
    yield "    on:    # a day such as 2025-06-30"
    yield "    limits:"
    for name, items in checks.items():
        entry = review.catalogue.entry(name)
        assert entry is not None
        yield f"      {name}:  # {entry.check.title}"
        for item in items:
            source = ", ".join(x for x in (item.source.title, item.source.where) if x)
            either = is_yes_or_no(entry.check, item.name)
            value, asks = ("required: yes", "  # yes or no") if either else (item.value, "")
            memory = ", from memory" if item.source.kind == "from memory" else ""
            yield f"        # {value}{memory}: {source}"
            yield f"        {item.name}: {{found: , clause: }}{asks}"

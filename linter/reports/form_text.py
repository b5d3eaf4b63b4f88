"""Forms as YAML text: names to be filled in, with comments from the models.

A comment has a space behind its ``#``.  A name right behind a ``#`` can be put to use by
taking that one character away.
"""

import textwrap
from collections.abc import Iterator, Sequence

from ..asking.form import FormEntry
from ..declare import CHANNELS, Field

WIDTH = 100
STEP = 2
HOW = (
    "Write a value behind its name, with its unit: 22 uH ± 20 %, 20 V .. 29 V (all of it occurs),"
    " {min: 8 ns, typ: 12 ns, max: 25 ns} (any of the three), {value: 375 ns, from: measured} (or"
    " datasheet, supplier, estimate). What stays blank is not stated.",
)
OPTIONAL = (
    "A name right behind a # is not always needed: take away the # of the name, and those of the"
    " names above and below that belong to it."
)
NEXT = (
    "Then: ampreview assess FILE for the verdict, ampreview questions --requirements FILE for the"
    " ratings that missing parts need; with the next milestone written in, ampreview questions"
    " --blank ANSWERS.amp.yaml FILE for a form of what is missing then, ampreview bringup FILE for"
    " the first boards."
)
PARTS = (
    "Kept beside the specs or in a folder above, the file gives its values to every spec that"
    " names the part. A value beside the name in a spec counts instead. Then: ampreview assess"
    " on this file tells what is missing and what contradicts."
)
GIVEN = {
    "line": "min, typ and max as printed",
    "tol": "with its tolerance",
    "range": "as a range",
    "typ": "the typical value",
    "max": "a limit",
}
SPACE, TIED = " ", "\u00a0"
LEANINGS = {
    "favourable": ", the better case",
    "adverse": ", the worst case",
    "neutral": ", as is usual",
}


def form_text(entries: Sequence[FormEntry], title: str, explain: Sequence[str] = HOW) -> str:
    """A form as it is printed or stored."""
    lines = [line for text in (title, *explain) for line in commented(text, 0)]
    for entry in entries:
        lines += ["", *_lines(entry, 0)] if entry.below else _lines(entry, 0)
    return "\n".join(lines) + "\n"


def commented(text: str, indent: int) -> list[str]:
    """A text as comment lines that stay within the width."""
    margin = " " * indent + "# "
    lines = textwrap.wrap(
        text,
        max(WIDTH, indent + 40),
        initial_indent=margin,
        subsequent_indent=margin,
        break_long_words=False,
        break_on_hyphens=False,
    )
    return [line.replace(TIED, SPACE) for line in lines]


def told(entry: FormEntry) -> str:
    """What the models know of a field, in one line or two."""
    field = entry.field
    if field.kind in ("section", "sections"):
        parts = [field.meaning.rstrip(".")]
        if field.can_be_none:
            parts.append(f"if there is none: {_tied(f'{entry.name}: none')}, nothing below")
    else:
        unit = "" if field.unit in ("1", "word") else f"[{field.unit}] "
        meaning = field.meaning if unit else f"{field.meaning[0].upper()}{field.meaning[1:]}"
        parts = [f"{unit}{meaning}", *_allowed(field, bool(entry.value))]
    if entry.only_for:
        parts.append(f"only for {entry.only_for}")
    return "; ".join([*parts, *_default(field, bool(entry.value))]) + "."


def _allowed(field: Field, filled: bool) -> Iterator[str]:
    if field.words:
        yield "one of " + ", ".join(field.words)
    if filled or (field.words and field.kind != "list"):
        return
    if field.usual:
        high = f", its upper end {_tied(field.usual_high)}" if field.usual_high else ""
        yield f"usually {_tied(field.usual)}{high}"
    if field.example:
        yield f"example {_tied(field.example)}"


def _default(field: Field, filled: bool) -> Iterator[str]:
    known = field.default
    if filled or known is None or known.value is None or known.value == float("inf"):
        return
    value = known.value if isinstance(known.value, str) else f"{known.value:g}"
    yield f"default {_tied(value)}"


def _tied(text: str) -> str:
    """A quantity that stays on one line."""
    return text.replace(SPACE, TIED)


def _lines(entry: FormEntry, indent: int, hidden: bool = False) -> list[str]:
    hidden = hidden or entry.optional
    margin = " " * indent + ("#" if hidden else "")
    if entry.field.kind == "named sections":
        return _named(entry, indent)
    lines = commented(told(entry), indent)
    lines.append(f"{margin}{entry.name}: {entry.value}".rstrip())
    if entry.field.kind == "sections":
        return lines + _item(entry.below, indent + STEP)
    for below in entry.below:
        lines += _lines(below, indent + STEP, hidden)
    return lines


def _item(entries: Sequence[FormEntry], indent: int) -> list[str]:
    """One item of a list, commented out: a dash before its first name."""
    lines: list[str] = []
    for number, entry in enumerate(entries):
        lines += commented(told(entry), indent + STEP)
        mark = " " * indent + "#- " if not number else " " * (indent + STEP) + "#"
        lines.append(f"{mark}{entry.name}:")
    return lines


def _named(entry: FormEntry, indent: int) -> list[str]:
    """The channels: the first in full, those that repeat it as a merge."""
    if entry.same_as:
        text = f"As {entry.same_as}. What differs is written here, a section in full."
        margin = " " * (indent + STEP)
        return [
            f"{' ' * indent}{entry.name}:",
            *commented(text, indent + STEP),
            f"{margin}<<: *channel",
        ]
    shared = any(below.same_as for below in entry.below)
    lines = [f"{' ' * indent}{entry.name}:"]
    for below in entry.below:
        inner = _lines(below, indent + STEP)
        if shared and not below.same_as and entry.name == CHANNELS:
            inner[0] += " &channel"
        lines += inner
    return lines

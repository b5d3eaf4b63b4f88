"""Limits that somebody looked up: a record in the house file, taken into the catalogue.

A record names the text and its edition, who looked and when, and of each threshold or constant
the value found and its clause.  The value found is the limit from then on.  One that is looser
in a matter of safety is shown as such, and none is taken that no file can loosen, nor one of a
day still to come.  A record that nobody has begun to fill in says nothing: what it names stays
open.
"""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any, Protocol

from ..check import AtLeast, Case, Check, Constant, Input, Source
from ..evaluation.catalogue import Catalogue, Entry, faults
from ..evaluation.recalled import UNSEEN, is_yes_or_no
from ..finding import Place, Severity
from ..quantities.quantity import QuantityError, to_si
from .days import day_of, still_to_come
from .deviation import NOBODY
from .house import HouseEffect, fixed, kept_on, untouchable

KEYS = ("text", "by", "on", "limits")
ABOUT = {
    "text": ("which text was looked up", "a standard with its edition", "text: IEC 60000:2020"),
    "by": ("who looked it up", "a name or a role", "by: head of safety"),
    "on": ("when it was looked up", "a day such as 2025-06-30", "on: 2025-06-30"),
}
FOUND = "critical: {found: 60 V, clause: table 4}"
EITHER = "critical: {found: yes, clause: 7.1}"
LIMITS = f"limits: {{name-of-the-check: {{{FOUND}}}}}"
RECORD = f"- {{text: IEC 60000:2020, by: head of safety, on: 2025-06-30, {LIMITS}}}"


class HouseReader(Protocol):
    """What takes a house file, as far as a record needs it."""

    file: str
    day: date
    catalogue: Catalogue
    checks: dict[str, Check]

    def entry(self, name: str, path: str) -> Entry | None:
        """The check of a name."""

    def place(self, path: str) -> Place:
        """Where a path stands in the file."""

    def refuse(self, path: str, problem: str, expected: str, example: str = "") -> None:
        """Refuse what stands at a path."""

    def changed(
        self, effect: HouseEffect, about: str, text: str, reason: str, path: str, safety: bool
    ) -> None:
        """Put one change on record."""


def take_record(house: HouseReader, data: Any, path: str) -> None:
    """One record: a text, who looked and when, and what was found."""
    if not isinstance(data, Mapping):
        house.refuse(path, "this is not a record", ", ".join(KEYS), RECORD)
        return
    if _is_blank(data):
        return
    said = {key: _said(house, data.get(key), key, path) for key in ABOUT}
    for key in data:
        if key not in KEYS:
            house.refuse(f"{path}.{key}", f"{key} is not known here", ", ".join(KEYS), RECORD)
    limits = data.get("limits")
    if not isinstance(limits, Mapping) or not limits:
        house.refuse(path, "nothing that was found is stated", "checks and values", LIMITS)
        return
    for name, items in limits.items():
        entry = house.entry(name, f"{path}.limits.{name}")
        if entry is None or not all(said.values()):
            continue
        if not isinstance(items, Mapping):
            house.refuse(f"{path}.limits.{name}", "this is not a section", "limits", FOUND)
            continue
        for key, found in items.items():
            _take(house, entry, key, found, f"{path}.limits.{name}.{key}", said)


def _is_blank(data: Any) -> bool:
    """Whether a record is as it was printed: nobody has looked anything up."""
    if isinstance(data, Mapping):
        return all(map(_is_blank, data.values()))
    return data is None or data == ""


def _said(house: HouseReader, stated: Any, key: str, path: str) -> str:
    problem, expected, example = ABOUT[key]
    text = _text(stated)
    if text.lower() in NOBODY or (key == "on" and day_of(text) is None):
        house.refuse(path, f"it is not said {problem}", expected, example)
        return ""
    ahead = still_to_come(text, house.day) if key == "on" else ""
    if ahead:
        house.refuse(f"{path}.on", ahead, "the day on which somebody looked", example)
        return ""
    return text


def _take(
    house: HouseReader,
    entry: Entry,
    key: str,
    data: Any,
    path: str,
    said: Mapping[str, str],
) -> None:
    check = house.checks.get(entry.name, entry.check)
    known = _known(check, key)
    if known is None:
        house.refuse(path, f"{entry.name} has no limit {key}", _names(check), FOUND)
        return
    stated = _stated(house, data, path)
    if stated is None:
        return
    found, clause = stated
    value = _value(house, entry.name, check, key, found, path)
    if value is None:
        return
    record = f"looked up by {said['by']} on {said['on']}"
    text = f"{said['text']}, {clause}"
    where = f"{Path(house.file).name}, line {house.place(path).line}"
    changed = _with(check, key, value, Source(f"{text}, {record}", where, "looked up"))
    if not _computes(changed):
        problem = f"with {key} of {found} {entry.name} cannot be computed"
        house.refuse(f"{path}.found", problem, f"a value such as {known}", FOUND)
        return
    looser = value != known and _eases(check, changed, key)
    least = "yes" if is_yes_or_no(check, key) else known
    why = _fixed(entry.check, key)
    if looser and why:
        problem = f"{key} of {entry.name} cannot be looser than {least}: {why}"
        house.refuse(path, problem, "a change of the catalogue, with its source", "")
        return
    for fault in faults(
        replace(entry, check=changed), house.catalogue.derived, house.catalogue.schema
    ):
        house.refuse(path, fault, "critical furthest out, then major, then minor", FOUND)
        return
    house.checks[entry.name] = changed
    than = f", {'looser' if looser else 'tighter'} than {least} of the catalogue"
    told = f"{key} {found}{than if value != known else ''}; {text}"
    house.changed("looked up", entry.name, told, record, path, looser and check.stake == "safety")


def _fixed(check: Check, key: str) -> str:
    """Why no record may loosen a limit or constant, empty where one may.

    A constant of a check that can find destruction may where nobody has seen its source.
    """
    item = check.inputs.get(key)
    if not isinstance(item, Constant):
        return fixed(check, key)
    return untouchable(check) if item.basis.kind in UNSEEN else kept_on(check)


def _value(
    house: HouseReader, name: str, check: Check, key: str, found: str, path: str
) -> str | None:
    """What was found as the catalogue writes it, the known text where both are the same."""
    known = _known(check, key)
    assert known is not None
    if is_yes_or_no(check, key):
        if found not in ("yes", "no"):
            house.refuse(f"{path}.found", f"{key} of {name} is yes or no", "yes, no", EITHER)
            return None
        return known if found == "yes" else "0"
    try:
        same = to_si(found, _unit(check, key)) == to_si(known, _unit(check, key))
    except QuantityError as error:
        house.refuse(f"{path}.found", error.problem, error.expected, error.example)
        return None
    return known if same else found


def _stated(house: HouseReader, data: Any, path: str) -> tuple[str, str] | None:
    """The value found and its clause."""
    items = data if isinstance(data, Mapping) else {}
    for name in (*items, "found", "clause"):
        if name not in ("found", "clause"):
            house.refuse(f"{path}.{name}", f"{name} is not known here", "found, clause", FOUND)
            return None
        if _text(items.get(name)).lower() in NOBODY:
            house.refuse(path, f"{name} is not stated", "the value found and its clause", FOUND)
            return None
    return _text(items["found"]), _text(items["clause"])


def _text(stated: Any) -> str:
    """What is written, on one line; a list or a section says nobody and nothing."""
    return "" if isinstance(stated, (Mapping, list)) else " ".join(str(stated or "").split())


def _severities() -> tuple[str, ...]:
    return tuple(item.value for item in Severity)


def _names(check: Check) -> str:
    limits = [x for x in _severities() if getattr(check.limits, x) is not None]
    return ", ".join([*limits, *(x for x, y in check.inputs.items() if isinstance(y, Constant))])


def _known(check: Check, key: str) -> str | None:
    if key in _severities():
        text: str | None = getattr(check.limits, key)
        return text
    item = check.inputs.get(key)
    return item.value if isinstance(item, Constant) else None


def _unit(check: Check, key: str) -> str:
    item = check.inputs.get(key)
    return (item.value.partition(" ")[2] or "1") if isinstance(item, Constant) else check.unit


def _with(check: Check, key: str, value: str, source: Source) -> Check:
    item = check.inputs.get(key)
    if isinstance(item, Constant):
        inputs = {**check.inputs, key: replace(item, value=value, basis=source)}
        return replace(check, inputs=inputs)
    basis = {**check.limits.basis, key: source}
    return replace(check, limits=replace(check.limits, basis=basis, **{key: value}))


def _computes(check: Check) -> bool:
    """Whether every worked case has a figure: a constant of zero or below may leave none."""
    try:
        for case in check.cases:
            _figure(check, case)
    except (ArithmeticError, TypeError, ValueError):
        return False
    return True


def _eases(old: Check, new: Check, key: str) -> bool:
    """Whether a value lets pass what the other would not: by the limit, or in a worked case."""
    rising = isinstance(old.limits, AtLeast)
    if key in _severities():
        was = to_si(getattr(old.limits, key), old.unit)
        now = to_si(getattr(new.limits, key), old.unit)
        return now < was if rising else now > was
    pairs = [(_figure(old, case), _figure(new, case)) for case in old.cases]
    return any(now > was if rising else now < was for was, now in pairs)


def _figure(check: Check, case: Case) -> float:
    """The figure of a worked case with the constants of the check."""
    arguments = {
        name: _number(case.inputs[name], item.unit)
        if isinstance(item, Input)
        else to_si(item.value)
        for name, item in check.inputs.items()
    }
    return float(check.figure(**arguments))


def _number(value: Any, unit: str) -> Any:
    if isinstance(value, tuple):
        return tuple(_number(item, unit) for item in value)
    if unit == "word":
        return value
    return float(value) if isinstance(value, int | float) else to_si(value, unit)

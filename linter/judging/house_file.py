"""The house file read: every section checked against the catalogue, refused with places."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import lru_cache
from pathlib import Path
from typing import Any

from pydantic_core import PydanticCustomError

from ..check import Assumption, Check, Source
from ..declare.accept import PLAIN
from ..evaluation.catalogue import Catalogue, CatalogueError, Entry, extended, faults, load
from ..finding import Place, Severity
from ..quantities.quantity import QuantityError, to_si
from ..reading.format import HOUSE_KEY
from ..reading.plain_text import content_of
from ..reading.refusal import Refusal, in_order, shown
from ..reading.side_file import first_key, read_side_file, refuse_key, unknown_keys
from ..reading.source import Document
from .house import (
    GROUP,
    House,
    HouseChange,
    HouseEffect,
    basis_of,
    compared,
    fixed,
    instead,
    kept_on,
    only_installed,
    order_of,
    package_of,
)
from .nearest import near
from .verified import RECORD, take_record

KIND = "a house file"
SECTIONS = (HOUSE_KEY, "verified", "limits", "checks_off", "defaults", "rules")
SEVERITIES = tuple(severity.value for severity in Severity)
LIMIT = "name-of-the-check: {major: 85 %, reason: two field returns}"
OFF = "name-of-the-check: our boxes are closed"
DEFAULT = "- {path: section.field, value: 12 dB, reason: speech only}"
RULES = "- our_rules"


def read_house(path: Path, day: date | None = None) -> House | tuple[Refusal, ...]:
    """Read a house file, load the rules that it names, and apply it to the catalogue.

    day: that of the review, None for today; what is said to be done by then must be.
    """
    content = content_of(path, KIND)
    return (
        (content,)
        if isinstance(content, Refusal)
        else house_of(str(path), content, day or date.today())
    )


@lru_cache(maxsize=16)
def house_of(file: str, content: bytes, day: date) -> House | tuple[Refusal, ...]:
    """The house behind the text of a file, or why it cannot be."""
    document = read_side_file(content, file, HOUSE_KEY, KIND)
    early = (*document.refusals, *first_key(document, file, HOUSE_KEY))
    if early:
        return early
    reading = HouseReader(document, file, day)
    reading.refusals += unknown_keys(document, "", SECTIONS, f"limits: {{{LIMIT}}}")
    reading.take()
    if reading.refusals:
        return in_order(reading.refusals)
    catalogue = reading.changed_catalogue()
    return House(file, document.text, catalogue, tuple(reading.changes), reading.defaults)


@dataclass(slots=True)
class HouseReader:
    """Takes the sections of one house file in turn."""

    document: Document
    file: str
    day: date
    catalogue: Catalogue = field(default_factory=load)
    checks: dict[str, Check] = field(default_factory=dict)
    off: set[str] = field(default_factory=set)
    defaults: dict[str, Assumption] = field(default_factory=dict)
    changes: list[HouseChange] = field(default_factory=list)
    refusals: list[Refusal] = field(default_factory=list)

    def take(self) -> None:
        """All sections; the rules first, since limits may speak of their checks."""
        for number, name in enumerate(self.items("rules", RULES)):
            self._rules(name, f"rules[{number}]")
        for number, record in enumerate(self.items("verified", RECORD)):
            take_record(self, record, f"verified[{number}]")
        for name, limit in self._section("limits", LIMIT).items():
            self._limits(name, limit, f"limits.{name}")
        for name, reason in self._section("checks_off", OFF).items():
            self._check_off(name, reason, f"checks_off.{name}")
        for number, item in enumerate(self.items("defaults", DEFAULT)):
            self._default(item, f"defaults[{number}]")

    def changed_catalogue(self) -> Catalogue:
        """The catalogue with the limits changed, without the checks that are off."""
        entries = tuple(
            replace(entry, check=self.checks.get(entry.name, entry.check))
            for entry in self.catalogue.entries
            if entry.name not in self.off
        )
        return replace(self.catalogue, entries=entries)

    def _rules(self, data: Any, path: str) -> None:
        before = {entry.name for entry in self.catalogue.entries}
        try:
            package = package_of(str(data))
            with only_installed():
                self.catalogue = extended(self.catalogue, package)
        except LookupError as error:
            self.refuse(path, str(error), f"the name of an entry point in {GROUP}", RULES)
        except CatalogueError as error:
            self.refuse(path, f"a rule of {data} cannot be taken: {error}", "sound rule files")
        except Exception as error:  # foreign code may raise anything at import
            problem = f"{data} cannot be loaded: {type(error).__name__}: {error}"
            self.refuse(path, problem, "a package with a folder of rule files for each domain")
        else:
            added = [item.name for item in self.catalogue.entries if item.name not in before]
            self.changed("checks added", package, ", ".join(added), "house rules", path)

    def _limits(self, name: str, data: Any, path: str) -> None:
        entry = self.entry(name, path)
        if entry is None:
            return
        if not isinstance(data, Mapping):
            self.refuse(path, "this is not a section", "limits and a reason", LIMIT)
            return
        self.refusals += unknown_keys(self.document, path, (*SEVERITIES, "reason"), LIMIT)
        reason = self._reason(data.get("reason"), path, LIMIT)
        stated = {key: str(data[key]) for key in SEVERITIES if data.get(key) is not None}
        if not stated:
            self.refuse(path, "no limit is stated", "critical, major or minor", LIMIT)
        numbers = {key: self._figure(text, entry, f"{path}.{key}") for key, text in stated.items()}
        if reason and numbers and None not in numbers.values():
            self._limit(entry, stated, reason, path)

    def _figure(self, text: str, entry: Entry, path: str) -> float | None:
        try:
            return to_si(text, entry.check.unit)
        except QuantityError as error:
            self.refuse(path, error.problem, error.expected, error.example)
            return None

    def _limit(self, entry: Entry, stated: Mapping[str, str], reason: str, path: str) -> None:
        check = self.checks.get(entry.name, entry.check)
        thresholds = {key: getattr(check.limits, key) for key in SEVERITIES}
        basis = dict(check.limits.basis)
        changes = []
        for key, text in stated.items():
            change = compared(entry, key, text, reason, self.place(f"{path}.{key}"))
            if change is None:
                continue
            if change.effect == "looser limit" and fixed(check, key):
                self._refuse_looser(entry, key, f"{path}.{key}")
                return
            changes.append(change)
            thresholds[key] = text
            basis[key] = basis_of(change, check.limits.basis.get(key))
        limits = type(check.limits)(**thresholds, basis=basis)
        changed = replace(check, limits=limits)
        schema = self.catalogue.schema
        for fault in faults(replace(entry, check=changed), self.catalogue.derived, schema):
            self.refuse(path, fault, order_of(limits), LIMIT)
            return
        self.checks[entry.name] = changed
        self.changes += changes

    def _refuse_looser(self, entry: Entry, key: str, path: str) -> None:
        known = getattr(entry.check.limits, key)
        problem = f"the {key} limit of {entry.name} cannot be looser: {fixed(entry.check, key)}"
        tighter = f"{entry.name}: {{{key}: {known}, reason: as in the catalogue}}"
        self.refuse(path, problem, f"{known} or tighter{instead(entry.check)}", tighter)

    def _check_off(self, name: str, data: Any, path: str) -> None:
        entry = self.entry(name, path)
        reason = self._reason(data, path, OFF)
        if entry is None or not reason:
            return
        why = kept_on(entry.check)
        if why:
            problem = f"{name} cannot be switched off: {why}"
            self.refuse(path, problem, f"a check without critical limit{instead(entry.check)}", OFF)
            return
        self.off.add(name)
        safety = entry.check.stake == "safety"
        self.changed("check off", name, entry.check.title, reason, path, safety)

    def _default(self, data: Any, path: str) -> None:
        if not isinstance(data, Mapping):
            self.refuse(path, "this is not a section", "path, value and reason", DEFAULT)
            return
        keys = ("path", "value", "reason")
        for key in data:
            if key not in keys:
                place = self.document.key_places[f"{path}.{key}"]
                self.refusals.append(refuse_key(place, key, list(keys), DEFAULT))
        target = str(data.get("path") or "")
        reason = self._reason(data.get("reason"), path, DEFAULT)
        value = data.get("value")
        if not self._may_have_default(target, f"{path}.path") or not reason:
            return
        known = self.catalogue.schema.fields[target]
        try:
            PLAIN[known.kind](known)(value)
        except PydanticCustomError as error:
            context = error.context or {}
            texts = (str(context.get(name, "")) for name in ("problem", "expected", "example"))
            self.refuse(f"{path}.value", *texts)
            return
        if not isinstance(value, str):
            self.refuse(f"{path}.value", "this is not one value", known.expected, known.example)
            return
        source = Source(f"house default: {reason}", self._where(path), "common practice")
        self.defaults[target] = Assumption(value, "neutral", source)
        self.changed("default", target, f"{value} where the spec gives none", reason, path)

    def _may_have_default(self, target: str, path: str) -> bool:
        fields = self.catalogue.schema.fields
        known = fields.get(target)
        derived = self.catalogue.derived.items()
        computed = {item.stated_at: name for name, item in derived if item.ways}
        expected = "the path of a value, channel paths without the channel's name"
        if known is None:
            hint = near(target, list(fields))
            problem = f"there is no field {shown(target)}{hint}"
        elif "[]" in target or known.kind not in ("quantity", "count", "word", "flag"):
            problem = f"{target} is not a single value"
        elif target in computed:
            problem = f"{target} follows from other values ({computed[target]})"
        elif target in self.defaults:
            problem = f"{target} has a default further up"
        else:
            return True
        self.refuse(path, problem, expected, DEFAULT)
        return False

    def entry(self, name: str, path: str) -> Entry | None:
        """The check of a name, refused where there is none."""
        entry = self.catalogue.entry(name)
        if entry is None:
            names = [item.name for item in self.catalogue.entries]
            place = self.document.key_places.get(path) or self.place(path)
            problem = f"there is no check named {shown(name)}{near(name, names)}"
            expected = "a name of the catalogue (`ampreview catalogue` lists them)"
            self.refusals.append(Refusal(place, problem, expected))
        return entry

    def _reason(self, data: Any, path: str, example: str) -> str:
        if isinstance(data, str) and data.strip():
            return " ".join(data.split())
        self.refuse(path, "no reason is given", "a reason in words", example)
        return ""

    def _section(self, name: str, example: str) -> Mapping[str, Any]:
        data = (self.document.data or {}).get(name)
        if data is None or isinstance(data, Mapping):
            return data or {}
        self.refuse(name, "this is not a section", "names of checks, each with its entry", example)
        return {}

    def items(self, name: str, example: str) -> list[Any]:
        """A section that is a list."""
        data = (self.document.data or {}).get(name)
        if data is None or isinstance(data, list):
            return data or []
        self.refuse(name, "this is not a list", "a list, each item after a dash", example)
        return []

    def changed(
        self,
        effect: HouseEffect,
        about: str,
        text: str,
        reason: str,
        path: str,
        safety: bool = False,
    ) -> None:
        """Put one change on record."""
        self.changes.append(HouseChange(effect, about, text, reason, self.place(path), safety))

    def _where(self, path: str) -> str:
        return f"{Path(self.file).name}, line {self.place(path).line}"

    def place(self, path: str) -> Place:
        """Where a path stands in the file."""
        found = self.document.places.get(path)
        return found[0] if found else Place(self.file, 1, 1)

    def refuse(self, path: str, problem: str, expected: str, example: str = "") -> None:
        """Refuse what stands at a path."""
        self.refusals.append(Refusal(self.place(path), problem, expected, example))

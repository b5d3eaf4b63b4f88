"""A spec file to a ``Spec``, or to refusals with places; all of a file in one go.

The spec is flattened: full path to value.  Engine and reports never see the models.  A
key without a value is silent.  A file without channels is accepted: at the concept
what all share can be assessed alone.
"""

import os
import re
import stat
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, cast

from ..check import Assumption, Milestone
from ..declare import Schema, load_schema
from ..finding import Place
from ..quantities.value import Value
from .format import SPEC_KEY
from .plain_text import MAX_BYTES
from .refusal import Refusal, in_order
from .source import Document, read
from .validation import Leaf, accepted, place_of, validate


@dataclass(frozen=True, slots=True)
class Deviation:
    """A permission, given beforehand, to depart from a limit.

    check: name of the check; place: channel or ``product``; until: a day or a milestone;
    at: where it stands; up_to: figure up to which it is permitted, empty for any.
    """

    check: str
    place: str
    permitted_by: str
    reason: str
    until: str
    at: Place
    up_to: str = ""


@dataclass(frozen=True, slots=True)
class Measurement:
    """A figure read on a board.

    figure: name of what was measured; place: channel or ``product``, empty where not said;
    value: as written, in the unit of the figure; conditions: what else was read, by name;
    at: where it stands.
    """

    figure: str
    place: str
    value: str
    board: str
    date: str
    instrument: str
    conditions: Mapping[str, Value]
    at: Place


@dataclass(frozen=True, slots=True, eq=False)
class Spec:
    """A spec that can be assessed: values only, by full path.

    values: ``channels.main.stage.coil.l`` to Value (quantities and counts), word,
        text, flag (``yes``, ``no``) or list.
    none: sections stated ``none``; sections: sections stated with content.
    lists: ``channels.main.stage.rungs`` to the number of its items, which
        stand in ``values`` as ``...rungs[0].r``.
    places: where each path stands in the file, and what refers to it there.
    data: the plain data behind it all.  text: the file, for its hash.
    schema: the fields that such a file may have.
    defaults: what silence of a field means to this team, by path without channel.
    stood_in: the paths where what was measured stands in, not in the file.
    """

    file: str
    channels: tuple[str, ...]
    values: Mapping[str, Leaf]
    none: frozenset[str]
    sections: frozenset[str]
    places: Mapping[str, tuple[Place, ...]]
    data: Mapping[str, Any]
    lists: Mapping[str, int]
    text: str
    schema: Schema
    defaults: Mapping[str, Assumption] = field(default_factory=dict)
    stood_in: frozenset[str] = frozenset()

    def place(self, path: str) -> Place | None:
        """Where a path stands in the file, or the nearest section above it that does."""
        return place_of(self.places, path)

    @property
    def title(self) -> str:
        """What the product is, as the file says."""
        return str(self.values.get("title", ""))

    @property
    def revision(self) -> str:
        """The revision of the design, as the file says."""
        return str(self.values.get("revision", ""))

    @property
    def milestone(self) -> Milestone:
        """What the verdict is wanted for; a silent file is a concept."""
        return cast(Milestone, self.values.get("milestone", "concept"))

    @property
    def deviations(self) -> tuple[Deviation, ...]:
        """The deviations on record, in the order of the file."""
        return tuple(self._deviation(number) for number in range(self.lists.get("deviations", 0)))

    def _deviation(self, number: int) -> Deviation:
        item = f"deviations[{number}]"
        names = ("check", "place", "permitted_by", "reason", "until", "up_to")
        texts = {name: str(self.values.get(f"{item}.{name}", "")) for name in names}
        return Deviation(**texts, at=self.place(item) or Place(self.file, 1, 1))

    @property
    def measurements(self) -> tuple[Measurement, ...]:
        """What was measured, in the order of the file."""
        return tuple(self._measurement(number) for number in range(self.lists.get("measured", 0)))

    def _measurement(self, number: int) -> Measurement:
        item = f"measured[{number}]"
        stated = {
            path.removeprefix(f"{item}."): value
            for path, value in self.values.items()
            if path.startswith(f"{item}.")
        }
        names = ("figure", "place", "value", "board", "date", "instrument")
        texts = {name: str(stated.get(name, "")) for name in names}
        conditions = {name: value for name, value in stated.items() if isinstance(value, Value)}
        at = self.place(item) or Place(self.file, 1, 1)
        return Measurement(**texts, conditions=conditions, at=at)

    def with_values(self, changes: Mapping[str, Any]) -> "Loaded":
        """The same spec with some values changed or added, validated anew.

        changes: full path to plain data, mostly text such as ``33 uH``; the sections on
        the way are fitted where the spec is silent or says ``none``.
        """
        data: Any = self.data
        for path, value in changes.items():
            data = _replaced(data, steps_of(path), value)
        document = Document(data, self.places, {}, (), self.text)
        if SPEC_KEY not in changes and all(self._has_other(*item) for item in changes.items()):
            return self._with_leaves(changes, document)
        loaded = spec_of(document, self.file, self.schema).with_defaults(self.defaults)
        return loaded.with_stood_in(self.stood_in)

    def _has_other(self, path: str, value: Any) -> bool:
        """Whether a value takes the place of a stated one, and no section comes or goes."""
        return path in self.values and value is not None

    def _with_leaves(self, changes: Mapping[str, Any], document: Document) -> "Loaded":
        """The same with other values where it has some: nothing else need be read again."""
        values, refusals = dict(self.values), []
        for path, value in changes.items():
            found = accepted(self.schema, document, self.file, path, value)
            if isinstance(found, Refusal):
                refusals.append(found)
            else:
                values[path] = found
        if refusals:
            return Loaded(None, in_order(refusals))
        return Loaded(replace(self, values=values, data=document.data or {}))


@dataclass(frozen=True, slots=True)
class Loaded:
    """A spec, or the refusals for want of one."""

    spec: Spec | None
    refusals: tuple[Refusal, ...] = ()

    def with_defaults(self, defaults: Mapping[str, Assumption]) -> "Loaded":
        """The same with a team's own defaults."""
        if self.spec is None or not defaults:
            return self
        return Loaded(replace(self.spec, defaults=defaults))

    def with_stood_in(self, paths: frozenset[str]) -> "Loaded":
        """The same with a note of where what was measured stands in."""
        if self.spec is None or not paths:
            return self
        return Loaded(replace(self.spec, stood_in=paths))


def load_file(path: str | Path, schema: Schema | None = None) -> Loaded:
    """Load a file; one that cannot be opened is refused like one that cannot be read.

    schema: what such a file may hold; without one, that of the program's own rules.
    """
    content = content_of(path, "a spec file")
    if isinstance(content, Refusal):
        return Loaded(None, (content,))
    return load_text(content, str(path), schema)


def content_of(path: str | Path, expected: str) -> bytes | Refusal:
    """The bytes of a file, one more than a spec may have at most, or why there are none.

    A pipe or the like may never end, and is not waited for.
    """
    try:
        with open(path, "rb", opener=_without_waiting) as stream:
            if stat.S_ISREG(os.fstat(stream.fileno()).st_mode):
                return stream.read(MAX_BYTES + 1)
            reason = "it is a pipe or the like, no file"
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "not a file name"
    return Refusal(Place(str(path), 1, 1), f"the file cannot be opened: {reason}", expected)


def _without_waiting(path: str, flags: int) -> int:
    return os.open(path, flags | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_NOCTTY", 0))


def load_text(text: str | bytes, name: str, schema: Schema | None = None) -> Loaded:
    """Load the text of a spec; ``name`` stands for the file in places."""
    return spec_of(read(text, name), name, schema or load_schema())


def spec_of(document: Document, file: str, schema: Schema) -> Loaded:
    """The spec behind plain data that has been read, or refusals."""
    flat, refusals = validate(document, file, schema)
    if flat is None:
        return Loaded(None, refusals)
    spec = Spec(
        file=file,
        channels=tuple(flat.names),
        values=flat.values,
        none=frozenset(flat.none),
        sections=frozenset(flat.sections),
        places=document.places,
        data=document.data or {},
        lists=flat.lists,
        text=document.text,
        schema=schema,
    )
    return Loaded(spec)


def steps_of(path: str) -> list[str | int]:
    """``rungs[0].r`` to ``["rungs", 0, "r"]``."""
    found = re.findall(r"\[(\d+)\]|([^.\[\]]+)", path)
    return [int(number) if number else name for number, name in found]


def _replaced(data: Any, steps: list[str | int], value: Any) -> Any:
    """A copy of the data with one value replaced; what is not on the way is shared."""
    if not steps:
        return value
    step, rest = steps[0], steps[1:]
    if isinstance(step, int) and isinstance(data, list):
        inner = data[step] if step < len(data) else None
        return [*data[:step], _replaced(inner, rest, value), *data[step + 1 :]]
    copy = dict(data) if isinstance(data, Mapping) else {}
    copy[str(step)] = _replaced(copy.get(str(step)), rest, value)
    return copy

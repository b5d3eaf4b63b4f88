"""A spec file to a ``Spec``, or to refusals with places; all of a file in one go.

The spec is flattened: full path to value.  Engine and reports never see the models.  A
key without a value is silent.  A file without channels is accepted: at the concept
what all share can be assessed alone.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, cast

from ..check import Assumption, Milestone
from ..declare import Schema, load_schema
from ..finding import Place
from ..quantities.value import Value
from .by_path import overridden, replaced, steps_of
from .format import SPEC_KEY
from .parts_file import PartsFile, PartsSource, no_parts, parts_beside
from .plain_text import content_of
from .refusal import Refusal, in_order
from .source import Document, read
from .unfold import References, unfold
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
    written: the data as the file has it, where parts of a parts file are named in it.
    parts: the parts file, if the spec uses it.  references: the designators of its parts.
    stood_in: the paths where what was measured stands in, with the data of the file there.
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
    written: Mapping[str, Any] | None = None
    parts: PartsFile | None = None
    references: References = ()
    stood_in: Mapping[str, Any] = field(default_factory=dict)

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
        written: Any = self.written
        for path, value in changes.items():
            data = replaced(data, steps_of(path), value)
            if written is not None:
                written = overridden(written, data, steps_of(path))
        document = Document(data, self.places, {}, (), self.text)
        if SPEC_KEY not in changes and all(self._has_other(*item) for item in changes.items()):
            return self._with_leaves(changes, document, written)
        loaded = spec_of(document, self.file, self.schema).with_defaults(self.defaults)
        loaded = loaded.with_stood_in(self.stood_in)
        return loaded.with_parts(written, self.parts, self.references)

    def as_stated(self) -> "Spec":
        """The spec as its file has it: nothing that was measured stands in."""
        stated = self.with_values(self.stood_in).spec if self.stood_in else None
        return replace(stated, stood_in={}) if stated else self

    def _has_other(self, path: str, value: Any) -> bool:
        """Whether a value takes the place of a stated one, and no section comes or goes."""
        return path in self.values and value is not None

    def _with_leaves(
        self, changes: Mapping[str, Any], document: Document, written: Mapping[str, Any] | None
    ) -> "Loaded":
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
        return Loaded(replace(self, values=values, data=document.data or {}, written=written))


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

    def with_parts(
        self, written: Mapping[str, Any] | None, parts: PartsFile | None, references: References
    ) -> "Loaded":
        """The same with what it takes from a parts file, and its designators."""
        if self.spec is None or (written is None and not references):
            return self
        spec = replace(self.spec, written=written, parts=parts, references=references)
        return Loaded(spec)

    def with_stood_in(self, stood_in: Mapping[str, Any]) -> "Loaded":
        """The same with a note of where what was measured stands in."""
        if self.spec is None or not stood_in:
            return self
        return Loaded(replace(self.spec, stood_in=stood_in))


def load_file(path: str | Path, schema: Schema | None = None, parts: Path | None = None) -> Loaded:
    """Load a file; one that cannot be opened is refused like one that cannot be read.

    schema: what such a file may hold; without one, that of the program's own rules.
    parts: a parts file; without one, the nearest in the folder of the spec or above.
    """
    content = content_of(path, "a spec file")
    if isinstance(content, Refusal):
        return Loaded(None, (content,))
    source = parts_beside(Path(path), parts)
    named = source() if parts is not None else None
    if isinstance(named, tuple):
        return Loaded(None, named)
    return load_text(content, str(path), schema, source)


def load_text(
    text: str | bytes, name: str, schema: Schema | None = None, parts: PartsSource = no_parts
) -> Loaded:
    """Load the text of a spec; ``name`` stands for the file in places.

    parts: asked for the parts file when the spec names a part.
    """
    schema, document = schema or load_schema(), read(text, name)
    unfolded = unfold(document, schema, parts)
    loaded = spec_of(unfolded.document, name, schema)
    written = None if unfolded.document is document else document.data
    return loaded.with_parts(written, unfolded.parts, unfolded.references)


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

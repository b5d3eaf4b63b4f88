"""Plain data against the models: refusals with places, or what the file states, flattened.

Unknown keys are found here rather than by the models, so that each can be told what it
may have been; everything else the models refuse, and the place table finds the place.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import islice
from typing import Any

from pydantic_core import ErrorDetails, PydanticCustomError, ValidationError

from ..declare import Field, Schema, Section, sections_above
from ..declare.accept import PLAIN, refuse_name
from ..finding import Place
from ..quantities.quantity import Value
from ..quantities.unreadable import cut_at_comma
from .format import SPEC_KEY, SPEC_LINE, VERSION
from .refusal import Refusal, in_order, shown
from .side_file import other_kind
from .source import Document
from .unknown_key import glued_pair, known_field, unknown_key

MAX_REFUSALS = 100
MAX_NAMED = 64

Leaf = Value | str | tuple[str, ...]


@dataclass(slots=True)
class Flattened:
    """What a file states, by full path; a section counts if it says something.

    names: the channels.  lists: number of items of each list of sections.
    """

    names: list[str] = field(default_factory=list)
    values: dict[str, Leaf] = field(default_factory=dict)
    none: set[str] = field(default_factory=set)
    sections: set[str] = field(default_factory=set)
    lists: dict[str, int] = field(default_factory=dict)


def validate(
    document: Document, file: str, schema: Schema
) -> tuple[Flattened | None, tuple[Refusal, ...]]:
    """What a document states, or None; and every refusal of it, its own included."""
    reading = _Validator(document, file, schema)
    flat = reading.flattened() if document.data is not None else None
    refusals = _once((*document.refusals, *reading.refusals))
    return (None if refusals else flat), refusals


def accepted(schema: Schema, document: Document, file: str, path: str, data: Any) -> Leaf | Refusal:
    """One value as ``validate`` finds it in a document, or its refusal.

    No field looks at another, so that a value can be judged alone.
    """
    known = schema.field_of(path)
    try:
        leaf: Leaf = PLAIN[known.kind](known)(data)
    except PydanticCustomError as error:
        texts = (_context(error, name) for name in ("problem", "expected", "example"))
        return Refusal(place_of(document.places, path) or Place(file, 1, 1, path), *texts)
    return leaf


def place_of(places: Mapping[str, tuple[Place, ...]], path: str) -> Place | None:
    """The place of a path, or of the nearest ancestor that has one."""
    while path not in places:
        if not path:
            return None
        path = path[: max(path.rfind("."), path.rfind("["), 0)]
    return places[path][0]


def _once(refusals: tuple[Refusal, ...]) -> tuple[Refusal, ...]:
    """In order, and one for each text: a shared section is refused once, not per channel."""
    known: dict[tuple[int, int, str], Refusal] = {}
    for item in refusals:
        known.setdefault((item.place.line, item.place.column, item.problem), item)
    ordered = in_order(known.values())
    if len(ordered) <= MAX_REFUSALS:
        return ordered
    more = Refusal(
        ordered[MAX_REFUSALS].place, "more problems from here on", "those above fixed first"
    )
    return (*ordered[:MAX_REFUSALS], more)


class _Validator:
    """Checks the plain data of one document against the models, and flattens it."""

    def __init__(self, document: Document, file: str, schema: Schema) -> None:
        self.document = document
        self.file = file
        self.schema = schema
        self.refusals: list[Refusal] = []

    def flattened(self) -> Flattened | None:
        """What the file states, or None after a refusal."""
        data = self.document.data or {}
        if not self._format_known(data):
            return None
        stated = {SPEC_KEY: VERSION, **self._stated(data, self.schema.root, "")}
        try:
            model = self.schema.root.model_validate(stated)
        except ValidationError as error:
            for detail in error.errors(include_url=False, include_input=False):
                self.refusals.append(self._from_model(detail))
            return None
        return _flattened(model)

    def _format_known(self, data: Mapping[str, Any]) -> bool:
        """Whether the rest of the file can be read by this program."""
        other = other_kind(self.document, self.file, SPEC_KEY)
        if other:
            self.refusals.append(other)
            return False
        version = data.get(SPEC_KEY)
        if version == VERSION:
            return True
        expected = f"the format version {VERSION}, as the first key"
        if version is None:
            place = self._place("")
            self.refusals.append(
                Refusal(place, "the format version is not stated", expected, SPEC_LINE)
            )
            return any(key in self.schema.root.fields for key in data)
        problem = f"the format version {shown(str(version))} is not known here"
        self.refusals.append(Refusal(self._place(SPEC_KEY), problem, expected, SPEC_LINE))
        return False

    def _stated(self, data: Mapping[str, Any], model: type[Section], path: str) -> dict[str, Any]:
        """The keys that the section knows and that have a value; the others are refused."""
        fields = model.fields
        stated: dict[str, Any] = {}
        cut = cut_at_comma(data)
        if cut is not None:
            self._refuse_comma(*cut, path)
        for key, value in data.items():
            if cut is not None and key in (cut[0], cut[2]):
                continue
            inner = f"{path}.{key}" if path else key
            if key not in fields:
                if len(self.refusals) < MAX_REFUSALS:
                    place = self._key_place(inner)
                    self.refusals.append(unknown_key(self.schema, key, path, fields, place))
            elif value is not None:
                stated[key] = self._value(value, fields[key], inner)
        return stated

    def _refuse_comma(self, key: str, whole: str, rest: str, path: str) -> None:
        """Two pieces of one number, each of which would be told off for itself."""
        problem = f"{shown(f'{key}: {whole},{rest}')} has a comma, which ends a value inside braces"
        expected = "a decimal point and no thousands separator"
        place = self._place(f"{path}.{key}" if path else key)
        thousands = re.match(r"[0-9]{3}(?![0-9])", rest)
        self.refusals.append(
            Refusal(place, problem, expected, "" if thousands else f"{key}: {whole}.{rest}")
        )

    def _value(self, value: Any, known: Field, path: str) -> Any:
        if known.model is None:
            return value
        if isinstance(value, list) and known.kind == "sections":
            return [self._section(item, known, f"{path}[{n}]") for n, item in enumerate(value)]
        if isinstance(value, Mapping) and known.kind == "named sections":
            return dict(self._named(value, known, path))
        return self._section(value, known, path) if known.kind == "section" else value

    def _section(self, value: Any, known: Field, path: str) -> Any:
        assert known.model is not None
        if isinstance(value, Mapping):
            if not value and known.can_be_none:
                self.refusals.append(_empty(path, self._place(path)))
            return self._stated(value, known.model, path)
        glued = glued_pair(value, known.model.fields) if isinstance(value, str) else None
        if glued is None:
            return value
        problem = f"no space after the colon in {shown(value)}"
        self.refusals.append(Refusal(self._place(path), problem, *glued))
        return {}

    def _named(
        self, value: Mapping[str, Any], known: Field, path: str
    ) -> Iterator[tuple[str, Any]]:
        names = list(value)
        if len(names) > MAX_NAMED:
            problem = f"{len(names)} {path}"
            expected = f"{MAX_NAMED} {path} at most; review a larger product in parts"
            place = self._key_place(f"{path}.{names[MAX_NAMED]}")
            self.refusals.append(Refusal(place, problem, expected))
        for name, section in islice(value.items(), MAX_NAMED):
            inner = f"{path}.{name}"
            try:
                refuse_name(known, name)
            except PydanticCustomError as error:
                place = self._key_place(inner)
                problem = f"{shown(name)}: {_context(error, 'problem')}"
                self.refusals.append(Refusal(place, problem, _context(error, "expected")))
                continue
            yield name, self._section({} if section is None else section, known, inner)

    def _from_model(self, detail: ErrorDetails) -> Refusal:
        """A model's error at the nearest place that the file has for it."""
        path = _path_of(detail["loc"])
        context = detail.get("ctx", {})
        if "problem" in context:
            texts = (str(context[name]) for name in ("problem", "expected", "example"))
            return Refusal(self._place(path), *texts)
        known = known_field(self.schema, path)
        example = f"{path.rpartition('.')[2]}: {known.example}" if known else ""
        if detail["type"] == "missing":
            meaning = known.meaning if known else "a value"
            return Refusal(self._place(path), f"`{path}` is not stated", meaning, example)
        return Refusal(self._place(path), detail["msg"], "another value", example)

    def _key_place(self, path: str) -> Place:
        return self.document.key_places.get(path) or self._place(path)

    def _place(self, path: str) -> Place:
        return place_of(self.document.places, path) or Place(self.file, 1, 1, path)


def _empty(path: str, place: Place) -> Refusal:
    """Of a part that may be absent, nothing between two braces says neither yes nor no."""
    name = path.rpartition(".")[2]
    problem = f"`{name}` is empty, which says neither that there is one nor that there is none"
    expected = "what is known of it, or `none`; leave the key out where nothing is known yet"
    return Refusal(place, problem, expected, f"{name}: none")


def _flattened(model: Section) -> Flattened:
    flat = Flattened()
    for path, known, item in _entries(model, ""):
        if known.kind == "named sections":
            flat.names += item
        elif known.kind == "sections":
            flat.lists[path] = len(item)
        elif known.kind != "section":
            flat.values[path] = item
        elif item == "none":
            flat.none.add(path)
    for path in (*flat.values, *flat.none):
        flat.sections.update(sections_above(path))
    return flat


def _entries(model: Section, prefix: str) -> Iterator[tuple[str, Field, Any]]:
    """Every path that a model states, with its field and what stands there."""
    for name, known in model.fields.items():
        item = getattr(model, name)
        if item is None:
            continue
        path = prefix + name
        yield path, known, item
        if isinstance(item, Section):
            yield from _entries(item, f"{path}.")
        elif known.kind == "sections":
            for number, inner in enumerate(item):
                yield from _entries(inner, f"{path}[{number}].")
        elif known.kind == "named sections":
            for key, inner in item.items():
                yield from _entries(inner, f"{path}.{key}.")


def _context(error: PydanticCustomError, name: str) -> str:
    return str((error.context or {}).get(name, ""))


def _path_of(loc: tuple[int | str, ...]) -> str:
    """``("rungs", 0, "r")`` to ``rungs[0].r``."""
    path = ""
    for step in loc:
        path += f"[{step}]" if isinstance(step, int) else f".{step}" if path else step
    return path

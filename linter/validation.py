"""Plain data against the models: refusals with places, or what the file states, flattened.

Unknown keys are found here rather than by the models, so that each can be told what it
may have been; everything else the models refuse, and the place table finds the place.
"""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails, PydanticCustomError

from .finding import Place
from .quantity import Value
from .refusal import Refusal, in_order, shown
from .source import Document
from .spec import FIELDS, Amplifier
from .spec.accept import refuse_name
from .spec.field import Field, declared
from .unknown_key import glued_pair, in_channel, unknown_key

FORMAT = "1"
MAX_REFUSALS = 100

Leaf = Value | str | tuple[str, ...]


def validate(document: Document, file: str) -> "tuple[Flattened | None, tuple[Refusal, ...]]":
    """What a document states, or None; and every refusal of it, its own included."""
    reading = _Reading(document, file)
    flat = reading.flattened() if document.data is not None else None
    refusals = _once((*document.refusals, *reading.refusals))
    return (None if refusals else flat), refusals


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
    return in_order(known.values())[:MAX_REFUSALS]


class _Reading:
    """Checks the plain data of one document against the models, and flattens it."""

    def __init__(self, document: Document, file: str) -> None:
        self.document = document
        self.file = file
        self.refusals: list[Refusal] = []

    def flattened(self) -> "Flattened | None":
        """What the file states, or None after a refusal."""
        data = self.document.data or {}
        if not self._format_known(data):
            return None
        stated = self._stated(data, Amplifier, "")
        try:
            model = Amplifier.model_validate(stated)
        except ValidationError as error:
            for detail in error.errors(include_url=False, include_input=False):
                self.refusals.append(self._from_model(detail))
            return None
        flat = Flattened()
        flat.section(model, "")
        return flat

    def _format_known(self, data: Mapping[str, Any]) -> bool:
        """Whether the rest of the file can be read by this program."""
        version = data.get("amplifier_spec")
        if version == FORMAT:
            return True
        example = f"amplifier_spec: {FORMAT}"
        expected = f"the format version {FORMAT}, as the first key"
        if version is None:
            place = self._place("")
            self.refusals.append(
                Refusal(place, "the format version is not stated", expected, example)
            )
            return any(key in Amplifier.model_fields for key in data)
        problem = f"the format version {shown(str(version))} is not known here"
        self.refusals.append(Refusal(self._place("amplifier_spec"), problem, expected, example))
        return False

    def _stated(self, data: Mapping[str, Any], model: type[BaseModel], path: str) -> dict[str, Any]:
        """The keys that the section knows and that have a value; the others are refused."""
        fields = _fields_of(model)
        stated: dict[str, Any] = {}
        for key, value in data.items():
            inner = f"{path}.{key}" if path else key
            if key not in fields:
                place = self.document.key_places.get(inner) or self._place(inner)
                self.refusals.append(unknown_key(key, path, fields, place))
            elif value is not None:
                stated[key] = self._value(value, fields[key], inner)
        return stated

    def _value(self, value: Any, field: Field, path: str) -> Any:
        if field.model is None:
            return value
        if isinstance(value, list) and field.kind == "sections":
            return [self._section(item, field, f"{path}[{n}]") for n, item in enumerate(value)]
        if isinstance(value, Mapping) and field.kind == "named sections":
            return dict(self._named(value, field, path))
        return self._section(value, field, path) if field.kind == "section" else value

    def _section(self, value: Any, field: Field, path: str) -> Any:
        assert field.model is not None
        if isinstance(value, Mapping):
            return self._stated(value, field.model, path)
        glued = glued_pair(value, _fields_of(field.model)) if isinstance(value, str) else None
        if glued is None:
            return value
        problem = f"no space behind the colon in {shown(value)}"
        self.refusals.append(Refusal(self._place(path), problem, *glued))
        return {}

    def _named(
        self, value: Mapping[str, Any], field: Field, path: str
    ) -> Iterator[tuple[str, Any]]:
        for name, section in value.items():
            inner = f"{path}.{name}"
            try:
                refuse_name(field, name)
            except PydanticCustomError as error:
                place = self.document.key_places.get(inner) or self._place(inner)
                problem = f"{shown(name)}: {_context(error, 'problem')}"
                self.refusals.append(Refusal(place, problem, _context(error, "expected")))
                continue
            yield name, self._section({} if section is None else section, field, inner)

    def _from_model(self, detail: ErrorDetails) -> Refusal:
        """A model's error at the nearest place that the file has for it."""
        path = _path_of(detail["loc"])
        context = detail.get("ctx", {})
        if "problem" in context:
            texts = (str(context[name]) for name in ("problem", "expected", "example"))
            return Refusal(self._place(path), *texts)
        field = FIELDS.get(in_channel(path))
        example = f"{path.rpartition('.')[2]}: {field.example}" if field else ""
        if detail["type"] == "missing":
            meaning = field.meaning if field else "a value"
            return Refusal(self._place(path), f"`{path}` is not stated", meaning, example)
        return Refusal(self._place(path), detail["msg"], "another value", example)

    def _place(self, path: str) -> Place:
        return place_of(self.document.places, path) or Place(self.file, 1, 1, path)


class Flattened:
    """Collects what a model states, by full path."""

    def __init__(self) -> None:
        self.names: list[str] = []
        self.values: dict[str, Leaf] = {}
        self.none: set[str] = set()
        self.sections: set[str] = set()
        self.lists: dict[str, int] = {}

    def section(self, model: BaseModel, path: str) -> None:
        """Take in a section; only one that says something counts as stated."""
        for name, field in _fields_of(type(model)).items():
            value = getattr(model, name)
            if value is None:
                continue
            self._field(value, field, f"{path}.{name}" if path else name)
            if path:
                self.sections.add(path)

    def _field(self, value: Any, field: Field, path: str) -> None:
        if field.kind == "named sections":
            self.names += value
            for name, inner in value.items():
                self.section(inner, f"{path}.{name}")
        elif field.kind == "sections":
            self.lists[path] = len(value)
            self.sections |= {path} if value else set()
            for number, inner in enumerate(value):
                self.section(inner, f"{path}[{number}]")
        elif field.kind == "section" and value != "none":
            self.section(value, path)
        elif field.kind == "section":
            self.none.add(path)
        else:
            self.values[path] = value


@cache
def _fields_of(model: type[BaseModel]) -> dict[str, Field]:
    return {name: declared(info) for name, info in model.model_fields.items()}


def _context(error: PydanticCustomError, name: str) -> str:
    return str((error.context or {}).get(name, ""))


def _path_of(loc: tuple[int | str, ...]) -> str:
    """``("foster", 0, "r")`` to ``foster[0].r``."""
    path = ""
    for step in loc:
        path += f"[{step}]" if isinstance(step, int) else f".{step}" if path else step
    return path

"""Parts put in where a spec names them, and reference designators taken out.

``section: {part: name, voltage: 60 V}`` becomes the values of that part in the parts file, with
what stands beside the name in place of the part's own.  To everything that follows these
are stated values whose place is in the parts file.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from difflib import get_close_matches
from typing import Any

from ..declare import Field, Schema, Section, field_path
from ..declare.parts import PART_KEY, REF_KEY, is_part, may_have_designators, part_kinds, same_kinds
from ..finding import Place
from .designators import EXAMPLE, EXPECTED, Group, designators
from .flatten import MAX_VALUES
from .parts_file import NAME, PartPlaces, PartsFile, PartsSource
from .refusal import Refusal, shown
from .source import Document

ALIKE = 0.75


@dataclass(frozen=True, slots=True)
class Reference:
    """The designators of a section, or of one value in it, and where they stand."""

    section: str
    value: str
    groups: tuple[Group, ...]
    place: Place


References = tuple[Reference, ...]


@dataclass(frozen=True, slots=True)
class Unfolded:
    """A document with its parts put in; what it takes from elsewhere, and its designators."""

    document: Document
    parts: PartsFile | None = None
    references: References = ()


def unfold(document: Document, schema: Schema, source: PartsSource) -> Unfolded:
    """The document as if it stated all values itself; refusals are added to its own."""
    keys = document.key_places
    if document.data is None or not any(
        path.endswith((f".{PART_KEY}", f".{REF_KEY}")) for path in keys
    ):
        return Unfolded(document)
    work = _Unfolding(document, schema, source)
    data = work.inside(document.data, schema.root, "")
    changed = replace(
        document,
        data=data,
        places=work.places,
        key_places=work.key_places,
        refusals=(*document.refusals, *work.refusals),
    )
    return Unfolded(changed, work.used, tuple(work.references))


class _Unfolding:
    """Walks the sections of one document."""

    def __init__(self, document: Document, schema: Schema, source: PartsSource) -> None:
        self.schema = schema
        self.source = source
        self.read = False
        self.parts: PartsFile | None = None
        self.used: PartsFile | None = None
        self.places = dict(document.places)
        self.key_places = dict(document.key_places)
        self.references: list[Reference] = []
        self.refusals: list[Refusal] = []
        self.count = 0
        self.named = 0

    def inside(self, data: Mapping[str, Any], model: type[Section], path: str) -> dict[str, Any]:
        """The keys of a section, each section below it unfolded."""
        known = model.fields
        return {
            key: self._below(value, known[key], f"{path}.{key}" if path else key)
            if key in known
            else value
            for key, value in data.items()
        }

    def _below(self, value: Any, known: Field, path: str) -> Any:
        model = known.model
        if model is None:
            return value
        if known.kind == "section" and isinstance(value, Mapping):
            return self._section(value, model, path)
        if known.kind == "named sections" and isinstance(value, Mapping):
            return {
                name: self.inside(item, model, f"{path}.{name}")
                if isinstance(item, Mapping)
                else item
                for name, item in value.items()
            }
        return value

    def _section(
        self, value: Mapping[str, Any], model: type[Section], path: str
    ) -> dict[str, Any] | None:
        """A section with its part put in and its designators taken out."""
        data = dict(value)
        if REF_KEY in data and may_have_designators(model):
            self._refuse_cut(data, path)
            self._refer(data.pop(REF_KEY), model, f"{path}.{REF_KEY}", path)
        if data.get(PART_KEY) is not None and is_part(model):
            data = self._with_part(data, model, path)
            if not data:
                return None  # refused already
        return self.inside(data, model, path)

    def _refuse_cut(self, data: dict[str, Any], path: str) -> None:
        """Designators behind a comma in braces, which are keys of their own to YAML."""
        for name in [key for key, value in data.items() if value is None and designators(key)]:
            del data[name]
            expected = f"the designators in brackets: {REF_KEY}: [{data[REF_KEY]}, {name}]"
            problem = "a comma inside braces ends the list of designators"
            self.refusals.append(Refusal(self._key(f"{path}.{name}"), problem, expected))

    def _refer(self, data: Any, model: type[Section], at: str, path: str) -> None:
        """Note the designators of a section, or of the values that a mapping names."""
        named = data if isinstance(data, Mapping) else {"": data}
        for name, text in named.items():
            if text is None:
                continue
            inner = f"{at}.{name}" if name else at
            found = designators(text)
            if name and name not in model.fields:
                near = get_close_matches(name, list(model.fields), 1, 0.6)
                expected = f"`{near[0]}`, if that is meant" if near else "a value of this section"
                problem = f"there is no {shown(name)} here that a designator could belong to"
                self.refusals.append(Refusal(self._key(inner), problem, expected))
            elif found is None:
                problem = f"{shown(str(text))} names no parts of the board"
                place = self.places.get(inner, (self._key(inner),))[0]
                self.refusals.append(Refusal(place, problem, EXPECTED, f"{REF_KEY}: {EXAMPLE}"))
            elif self.named <= MAX_VALUES:
                self.named += sum(map(len, found))
                place = self.places.get(inner, (self._key(inner),))[0]
                self.references.append(Reference(path, name, found, place))
                if self.named > MAX_VALUES:
                    problem = f"more than {MAX_VALUES} designators in all sections"
                    self.refusals.append(Refusal(place, problem, "those of one board"))

    def _with_part(self, data: dict[str, Any], model: type[Section], path: str) -> dict[str, Any]:
        """The values of the part that is named, those beside the name in their place."""
        own_text = PART_KEY in model.fields
        name, parts = data[PART_KEY], self._file()
        rest = {key: value for key, value in data.items() if key != PART_KEY}
        kinds = same_kinds(self.schema, field_path(path))
        kind = next((x for x in kinds if parts and name in parts.names(x)), None)
        if kind is None and own_text and _is_type_number(name, rest, parts, kinds):
            return data
        if parts is None or kind is None:
            self._refuse_part(str(name), parts, kinds, path)
            return rest
        self.used = parts
        self._count(len(parts.places(kind, name)), path)
        if self.count > MAX_VALUES:
            return rest
        self._place(parts.places(kind, name), path)
        base = {PART_KEY: name} if own_text else {}
        return merged({**base, **parts.values(kind, name)}, rest, model)

    def _file(self) -> PartsFile | None:
        """The parts file, read when the first part is named."""
        if not self.read:
            self.read = True
            found = self.source()
            if isinstance(found, tuple):
                self.refusals += found
            else:
                self.parts = found
        return self.parts

    def _refuse_part(
        self, name: str, parts: PartsFile | None, kinds: tuple[str, ...], path: str
    ) -> None:
        at = self.places[f"{path}.{PART_KEY}"][0]
        if parts is None:
            if not any(item.place.file != at.file for item in self.refusals):
                problem = f"the part {shown(name)} is named, but there is no parts file"
                expected = f"{NAME} in the folder of the spec or above, or --parts FILE"
                self.refusals.append(Refusal(at, problem, expected))
            return
        known = [item for kind in kinds for item in parts.names(kind)]
        near = get_close_matches(name, known, 3, 0.5)
        others = [kind for kind in part_kinds(self.schema) if name in parts.names(kind)]
        problem = f"{parts.file} has no {kinds[0]} named {shown(name)}"
        if others:
            problem += f"; there it is a {others[0]}"
        expected = f"one of {', '.join(known[:12])}" if known else f"a part below `{kinds[0]}:`"
        if near:
            expected = f"{' or '.join(f'`{item}`' for item in near)}, if that is meant"
        self.refusals.append(Refusal(at, problem, expected))

    def _place(self, found: PartPlaces, path: str) -> None:
        """Give the values of a part their places: in its file, and where it is named."""
        named = self.places[f"{path}.{PART_KEY}"]
        places, keys = placed(found, path, named)
        own_name = f"{path}.{PART_KEY}"
        for full, stands in places.items():
            if full not in self.places or full == own_name:
                self.places[full] = stands
                self.key_places[full] = keys[full]

    def _count(self, number: int, path: str) -> None:
        self.count += number
        if self.count - number <= MAX_VALUES < self.count:
            at = self.places[f"{path}.{PART_KEY}"][0]
            problem = f"more than {MAX_VALUES} values with all parts put in"
            self.refusals.append(Refusal(at, problem, "fewer"))

    def _key(self, path: str) -> Place:
        return self.key_places[path]


def placed(
    found: PartPlaces, path: str, named: tuple[Place, ...]
) -> tuple[dict[str, tuple[Place, ...]], dict[str, Place]]:
    """The places of a part's values and keys as those of a section, then where it is named."""
    keys = {path + inner: replace(place, path=path + inner) for inner, place in found}
    return {full: (place, *named) for full, place in keys.items()}, keys


def _is_type_number(
    name: Any, beside: Mapping[str, Any], parts: PartsFile | None, kinds: tuple[str, ...]
) -> bool:
    """Whether a name in a section with a type number of its own is that, not a slip of a name."""
    known = [item for kind in kinds for item in parts.names(kind)] if parts else []
    if not known or not isinstance(name, str):
        return True
    return bool(beside) and not get_close_matches(name, known, 1, ALIKE)


def merged(
    base: Mapping[str, Any], over: Mapping[str, Any], model: type[Section]
) -> dict[str, Any]:
    """What a part states, with other values in place of its own; a blank overrides nothing."""
    data = dict(base)
    for key, value in over.items():
        below = data.get(key)
        known = model.fields.get(key)
        if (
            known is not None
            and known.kind == "section"
            and known.model is not None
            and isinstance(below, Mapping)
            and isinstance(value, Mapping)
        ):
            data[key] = merged(below, value, known.model)
        elif value is not None or key not in data:
            data[key] = value
    return data

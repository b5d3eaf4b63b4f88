"""The spec file as a JSON Schema (draft 2020-12), so that an editor can help with it.

Everything comes from the models.  A schema judges form, not meaning: of a quantity the unit,
the sign and whether it may be zero; size and order of values are judged by the program.
"""

from collections.abc import Mapping
from typing import Any

from ..declare import Field, Schema, Section
from ..declare.accept import NAME_LENGTH
from ..declare.parts import PART_KEY, REF_KEY, is_part, part_kinds
from ..declare.usual import bounds, limits
from ..quantities.value import PROVENANCES, SIDES
from ..reading.format import PARTS_KEY
from .text_patterns import any_quantity, count_pattern, quantity_pattern

DRAFT = "https://json-schema.org/draft/2020-12/schema"
# A YAML reader may hand a text on as number, yes or no: the program takes all as text.
ANY_TEXT = {"type": ["string", "number", "boolean", "null"]}
NULL = {"type": "null"}
ANY = "any-quantity"
YES_NO = ["yes", "no", True, False, "true", "false", None]


def json_schema(known: Schema) -> dict[str, Any]:
    """The schema of a whole spec file."""
    definitions: dict[str, Any] = {}
    schema = _section(known.root, definitions)
    head = {"$schema": DRAFT, "title": f"{known.title[0].upper()}{known.title[1:]} (*.amp.yaml)"}
    return {**head, **schema, "$defs": definitions}


def list_schema(known: Schema, key: str, name: str) -> dict[str, Any]:
    """The schema of a file that holds one list of a spec alone, under a first key of its own."""
    definitions: dict[str, Any] = {}
    whole = _section(known.root, definitions)
    version, model = _count(1, 1), known.fields[name].model
    assert model is not None
    fields = definitions[model.__name__]["properties"].values()
    used = sorted({ANY, *(x["$ref"].rpartition("/")[2] for x in fields if "$ref" in x)})
    return {
        "$schema": DRAFT,
        "title": f"{name.capitalize()}, beside a spec",
        "type": "object",
        "properties": {key: version, name: whole["properties"][name]},
        "required": [key],
        "additionalProperties": False,
        "$defs": {kind: definitions[kind] for kind in (model.__name__, *used)},
    }


def parts_schema(known: Schema) -> dict[str, Any]:
    """The schema of a parts file: kinds of parts, each with names and what is printed of them."""
    definitions: dict[str, Any] = {}
    own = {"not": {"required": [REF_KEY]}}  # a designator belongs to one board
    kinds: dict[str, Any] = {}
    for kind, path in part_kinds(known).items():
        field = known.fields[path]
        assert field.model is not None
        _group(field, field.model, definitions)
        part = {"allOf": [_reference(field.model.__name__), own]}
        kinds[kind] = {"type": ["object", "null"], "additionalProperties": part}
        kinds[kind]["description"] = described(field)
    return {
        "$schema": DRAFT,
        "title": "Parts file",
        "type": "object",
        "properties": {PARTS_KEY: _count(1, 1), **kinds},
        "required": [PARTS_KEY],
        "additionalProperties": False,
        "$defs": definitions,
    }


def _quantity(field: Field, definitions: dict[str, Any]) -> dict[str, Any]:
    """A text with a unit, a data-sheet line, or a value with its provenance; defined once."""
    pattern = quantity_pattern(field)
    text: dict[str, Any] = {"type": "string", "pattern": pattern}
    if not field.called:
        definitions.setdefault(ANY, {"pattern": any_quantity()})
        text["allOf"] = [_reference(ANY)]
    inner: dict[str, Any] = text
    if field.unit == "1":  # which YAML hands on as number or text
        least = {"minimum": 0} if field.zero else {"exclusiveMinimum": 0}
        inner = {"anyOf": [text, {"type": "number", **least}]}
    names = (name for name, known in definitions.items() if known.get("$comment") == pattern)
    name = next(names, f"quantity-{len(definitions) + 1}")
    definitions[name] = {"$comment": pattern, **_written(inner, {"anyOf": [inner, NULL]})}
    return _reference(name)


def _count(least: int, most: int) -> dict[str, Any]:
    """A whole number, as number or as text."""
    if least == most:
        return {"enum": [least, str(least)]}
    number = {"type": "integer", "minimum": least, "maximum": most}
    return {"anyOf": [number, {"type": "string", "pattern": count_pattern(least == 0)}]}


def _written(inner: dict[str, Any], plain: dict[str, Any]) -> dict[str, Any]:
    source = {"from": {"enum": list(PROVENANCES), "description": "where the value comes from"}}
    line = {
        "type": "object",
        "description": "data-sheet line: any of min, typ and max",
        "properties": {**dict.fromkeys(SIDES, inner), **source},
        "anyOf": [{"required": [side]} for side in SIDES],
        "additionalProperties": False,
    }
    sourced = {
        "type": "object",
        "description": "value with its provenance",
        "properties": {"value": inner, **source},
        "required": ["value"],
        "additionalProperties": False,
    }
    return {"anyOf": [plain, line, sourced]}


def _section(model: type[Section], definitions: dict[str, Any]) -> dict[str, Any]:
    fields = model.fields
    schema: dict[str, Any] = {
        "type": "object",
        "description": (model.__doc__ or "").split("\n", 1)[0],
        "properties": {name: _field(field, definitions) for name, field in fields.items()},
        "additionalProperties": False,
    }
    required = [name for name, field in fields.items() if field.required]
    return {**schema, "required": required} if required else schema


def _field(field: Field, definitions: dict[str, Any]) -> dict[str, Any]:
    schema = {"description": described(field), **_shape(field, definitions)}
    if field.example and field.kind not in ("word", "flag", "list"):
        schema["examples"] = [field.example]
    default = field.default.value if field.default is not None else None
    if isinstance(default, str):
        schema["default"] = default
    return schema


def described(field: Field) -> str:
    """Meaning, unit and usual range of a field, as an editor shows it."""
    unit = f" [{field.unit}]" if field.unit not in ("1", "word") else ""
    usual = f"; usually {field.usual}" if field.usual else ""
    high = f", its upper end {field.usual_high}" if field.usual_high else ""
    concerns = f"; for {field.concerns.text}" if field.concerns else ""
    return f"{field.meaning.rstrip('.')}{unit}{usual}{high}{concerns}"


def _shape(field: Field, definitions: dict[str, Any]) -> dict[str, Any]:
    if field.kind == "count":
        ends = bounds(field.usual, field.unit)
        if ends[0] < ends[1]:
            ends = limits(field.usual, field.usual_high, field.possible, field.unit)
        least, most = ends
        number = _count(round(least), round(most))
        return number if field.required else {"anyOf": [number, NULL]}
    if field.kind == "quantity":
        return _quantity(field, definitions)
    if field.kind == "word":
        return {"enum": [*field.words, *field.called, None]}
    if field.kind == "flag":
        return {"enum": YES_NO}
    if field.kind == "list":
        member = (
            {"enum": [*field.words, *field.called]}
            if field.words
            else {"type": ["string", "number"]}
        )
        return {"anyOf": [{"type": ["array", "null"], "items": member}, member]}
    if field.model is None:
        return ANY_TEXT if not field.required else {"type": ["string", "number", "boolean"]}
    return _group(field, field.model, definitions)


def _group(field: Field, model: type[Section], definitions: dict[str, Any]) -> dict[str, Any]:
    name = model.__name__
    if name not in definitions:
        definitions[name] = {}
        definitions[name] = _section(model, definitions)
        if field.kind == "section" and is_part(model):
            _add_reserved(definitions[name]["properties"])
    inside: dict[str, Any] = _reference(name)
    if field.kind == "sections":
        return {"type": ["array", "null"], "items": inside}
    if field.kind == "named sections":
        names: Mapping[str, Any] = {
            "minLength": 1,
            "maxLength": NAME_LENGTH,
            "not": {"const": "product"},
        }
        members = {"anyOf": [inside, {"type": "null"}]}
        return {
            "type": ["object", "null"],
            "propertyNames": names,
            "additionalProperties": members,
        }
    others: list[dict[str, Any]] = [{"type": "null"}]
    if field.can_be_none:
        others.append({"const": "none", "description": "not in the product"})
        inside["minProperties"] = 1  # empty says neither that there is one nor that there is none
    return {"anyOf": [inside, *others]}


def _add_reserved(properties: dict[str, Any]) -> None:
    """The keys that every part may have: its name in the parts file, its designators."""
    texts = {"type": ["string", "array", "object", "null"]}
    told = "reference designators, or those of each value: C3, C5-C8"
    properties.setdefault(PART_KEY, {"description": "name in the parts file", **ANY_TEXT})
    properties.setdefault(REF_KEY, {"description": told, **texts})


def _reference(name: str) -> dict[str, Any]:
    return {"$ref": f"#/$defs/{name}"}

"""What a path of a spec leads to: the fields of a section, a field, how it is written."""

from collections.abc import Mapping
from dataclasses import dataclass

from ..declare import CHANNELS, Field, Schema, field_path
from ..declare.parts import part_kinds
from ..quantities.value import PROVENANCES, SIDES

WRITTEN = ("value", *SIDES)
SOURCE = "from"


@dataclass(frozen=True, slots=True)
class Found:
    """A field, and whether a path leads to the source of its value and not to the value."""

    field: Field
    path: str
    is_source: bool = False


def field_at(schema: Schema, path: str) -> Found | None:
    """The field behind a path; ``r.typ`` and ``r.from`` are written forms of ``r``."""
    plain = field_path(path).removesuffix("[]")
    if plain in schema.fields:
        return Found(schema.fields[plain], plain)
    above, _, last = plain.rpartition(".")
    field = schema.fields.get(above)
    if field is None or field.kind not in ("quantity", "count"):
        return None
    return Found(field, above, last == SOURCE) if last in (*WRITTEN, SOURCE) else None


def section_at(schema: Schema, path: str) -> Mapping[str, Field]:
    """The fields of the section behind a path; none where there is no such section."""
    if not path:
        return schema.root.fields
    steps = path.split(".")
    if steps[0] == CHANNELS and len(steps) < 3:
        return schema.channel.fields if len(steps) == 2 else {}
    field = schema.fields.get(field_path(path).removesuffix("[]"))
    return field.model.fields if field is not None and field.model is not None else {}


def as_in_spec(schema: Schema, path: str) -> str | None:
    """A path of a parts file as it would be in a spec; None above the values of a part."""
    kind, _, rest = path.partition(".")
    name, _, inner = rest.partition(".")
    section = part_kinds(schema).get(kind)
    return f"{section}.{inner}".rstrip(".") if section and name else None


def words_at(found: Found) -> tuple[str, ...]:
    """The words that may stand there."""
    if found.is_source:
        return PROVENANCES
    field = found.field
    words = (*field.words, *field.called) if field.kind in ("word", "list") else ()
    flags = ("yes", "no") if field.kind == "flag" else ()
    return (*words, *flags, *(("none",) if field.can_be_none else ()))

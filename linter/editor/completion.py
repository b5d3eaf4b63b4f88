"""What may be written at a position: names of fields, words, units, parts."""

import re
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Literal

from ..asking.json_schema import described
from ..declare import Field, Schema
from ..declare.field import usual_bounds
from ..declare.parts import PART_KEY, is_part, part_kinds, same_kinds
from ..quantities.units import known_symbols, same_kind, unit_of
from ..reading.parts_file import PartsFile
from .lookup import SOURCE, WRITTEN, Found, as_in_spec, field_at, section_at, words_at
from .spot import Spot

_NUMBER = re.compile(r"(?P<number>[+-]?[\d.]+(?:[eE][+-]?\d+)?)\s*[^\d\s.]*")
GROUPED = ("section", "sections", "named sections")
SMALLEST = 1e-3
"""A unit of which the usual least value is less than so many is no help."""


@dataclass(frozen=True, slots=True)
class Offer:
    """A text that may stand at a position in place of what is typed there, and what it means."""

    text: str
    told: str
    what: Literal["field", "word", "unit", "part"]
    label: str = ""


def offers(
    schema: Schema, spot: Spot, parts: PartsFile | None, stated: Collection[str] = ()
) -> list[Offer]:
    """What may be written at a position, the likeliest first.

    stated: the paths of the keys that are there already.
    """
    if spot.what == "key":
        ahead = f"{spot.path}." if spot.path else ""
        return [x for x in _keys(schema, spot.path) if ahead + x.label not in stated]
    section, _, last = spot.path.rpartition(".")
    if last == PART_KEY and parts is not None and section:
        names = dict.fromkeys(names_for(schema, section, parts))
        return [Offer(name, kind, "part") for name, kind in names]
    found = field_at(schema, spot.path)
    if found is None:
        return []
    words = [Offer(word, found.field.meaning, "word") for word in words_at(found)]
    return words or list(_with_units(found, spot.typed))


def offers_in_parts(schema: Schema, spot: Spot) -> list[Offer]:
    """The same in a parts file: kinds of parts, and what a part states."""
    if not spot.path and spot.what == "key":
        kinds = part_kinds(schema).items()
        return [Offer(f"{kind}:", schema.part_of(at) or at, "field", kind) for kind, at in kinds]
    path = as_in_spec(schema, spot.path)
    return offers(schema, replace(spot, path=path), None) if path else []


def names_for(schema: Schema, section: str, parts: PartsFile) -> Iterator[tuple[str, str]]:
    """The names of the parts that fit a section, each with its kind."""
    found = field_at(schema, section)
    if found is not None and is_part(found.field.model):
        for kind in same_kinds(schema, found.path):
            yield from ((name, kind) for name in parts.names(kind))


def _keys(schema: Schema, path: str) -> Iterator[Offer]:
    """The names of the fields of a section; those of a value in braces are its forms."""
    found = field_at(schema, path) if path else None
    if found is not None and found.field.kind in ("quantity", "count"):
        for name in (*WRITTEN, SOURCE):
            yield Offer(f"{name}: ", found.field.meaning, "field", name)
        return
    for name, field in section_at(schema, path).items():
        end = ":" if field.kind in GROUPED else ": "
        yield Offer(name + end, described(field), "field", name)


def _with_units(found: Found, typed: str) -> Iterator[Offer]:
    """A number that is typed with the units that fit; without one an example."""
    field = found.field
    match = _NUMBER.fullmatch(typed)
    if field.kind == "quantity" and field.unit != "1" and match:
        for unit in units_of(field):
            yield Offer(f"{match['number']} {unit}", field.meaning, "unit")
    elif field.example and not typed:
        yield Offer(field.example, f"an example: {field.meaning}", "unit")


def units_of(field: Field) -> list[str]:
    """The units in which a field is usually written; where none is, all that fit."""
    own, ends = unit_of(field.unit), usual_bounds(field)
    found = [x for x in known_symbols() if same_kind(unit_of(x), own)] or [field.unit]
    usual = _usual(found, ends) if ends else []
    return usual or found


def _usual(symbols: Iterable[str], ends: tuple[float, float]) -> list[str]:
    """Those of which a usual value is neither a tiny part nor thousands."""
    factors = {symbol: float(unit_of(symbol).factor) for symbol in symbols}
    low, high = ends[0] or ends[1] * SMALLEST, ends[1]
    return [x for x, factor in factors.items() if low * SMALLEST < factor <= high]

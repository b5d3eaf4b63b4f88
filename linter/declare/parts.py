"""Sections that describe a part, which may stand in a parts file and on a bill of materials.

A part has a kind: the name of its section, with that of the section above where two sections
bear the same one.
"""

from collections import Counter
from collections.abc import Mapping
from functools import cache

from .field import Section
from .schema import Schema

PART_KEY, REF_KEY = "part", "ref"


_NATURES = ("part", "setting", "topology")


def is_part(model: type[Section] | None) -> bool:
    """Whether a section describes something that is bought or made."""
    return getattr(model, "nature", "") in _NATURES


def may_have_designators(model: type[Section] | None) -> bool:
    """Whether parts of a section can stand on a board."""
    return getattr(model, "nature", "") in (*_NATURES, "use")


@cache
def part_kinds(schema: Schema) -> Mapping[str, str]:
    """The kinds of parts, and the path of the section of each."""
    paths = [p for p, field in schema.fields.items() if field.kind == "section"]
    paths = [path for path in paths if "[]" not in path and is_part(schema.fields[path].model)]
    names = Counter(_last(path) for path in paths)
    return {_last(path) if names[_last(path)] == 1 else _two(path): path for path in paths}


def same_kinds(schema: Schema, path: str) -> tuple[str, ...]:
    """The kinds whose parts fit a section: its own first, then those of the same model."""
    model = schema.fields[path].model
    fitting = [
        (x != path, kind)
        for kind, x in part_kinds(schema).items()
        if schema.fields[x].model is model
    ]
    return tuple(kind for _, kind in sorted(fitting))


def _last(path: str) -> str:
    return path.rpartition(".")[2]


def _two(path: str) -> str:
    return "_".join(path.split(".")[-2:])

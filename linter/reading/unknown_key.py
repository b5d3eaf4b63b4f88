"""What to say of a key that its section does not know."""

import difflib
import re
from collections.abc import Iterable
from functools import cache

from ..declare import Field, Schema
from ..finding import Place
from .refusal import Refusal, shown

MAX_NAMED = 12
MAX_KEY = 60

_GLUED = re.compile(r"([A-Za-z_]\w*):(\S.*)", re.DOTALL)


def unknown_key(
    schema: Schema, key: str, section: str, known: Iterable[str], place: Place
) -> Refusal:
    """Refuse ``key``: say what it may have been, or where it belongs, or what is known here."""
    where = f"in {section}" if section else "at the top of the file"
    problem = f"{shown(key)} is not known {where}"
    names = sorted(known)
    glued = glued_pair(key, names)
    if glued:
        return Refusal(place, f"no space behind the colon in {shown(key)}", *glued)
    near = _nearest(schema, key, names)
    if near:
        return Refusal(
            place, problem, f"`{near}`, if that is meant", _example(schema, section, near)
        )
    elsewhere = _elsewhere(schema, key)
    if elsewhere:
        return Refusal(place, problem, f"its place is {' or '.join(elsewhere)}")
    more = ", ..." if len(names) > MAX_NAMED else ""
    return Refusal(place, problem, f"one of {', '.join(names[:MAX_NAMED])}{more}")


def glued_pair(text: str, names: Iterable[str]) -> tuple[str, str] | None:
    """What was expected, and an example, where ``text`` is ``key:value`` with a known key."""
    match = _GLUED.fullmatch(text)
    if match is None or match.group(1) not in names:
        return None
    return "a colon and a space", f"{match.group(1)}: {match.group(2)[:40]}"


def known_field(schema: Schema, path: str) -> Field | None:
    """The field at a path of a spec, if there is one."""
    try:
        return schema.field_of(path)
    except KeyError:
        return None


def _nearest(schema: Schema, key: str, names: list[str]) -> str | None:
    if len(key) > MAX_KEY or key in _last_names(schema):
        return None
    plain = key.strip().lower().replace("-", "_").replace(" ", "_")
    close = difflib.get_close_matches(plain, names, n=1, cutoff=0.7)
    return close[0] if close else None


@cache
def _last_names(schema: Schema) -> frozenset[str]:
    return frozenset(path.rpartition(".")[2] for path in schema.fields)


def _elsewhere(schema: Schema, key: str) -> list[str]:
    """The paths that end in this key, the shortest first, two at most."""
    found = [path for path in schema.fields if path.rpartition(".")[2] == key]
    return sorted(found, key=lambda path: (path.count("."), path))[:2]


def _example(schema: Schema, section: str, name: str) -> str:
    field = known_field(schema, f"{section}.{name}" if section else name)
    return f"{name}: {field.example}" if field is not None and field.example else ""

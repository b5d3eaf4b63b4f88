"""What to say of a key that its section does not know."""

import difflib
import re
from collections.abc import Iterable
from functools import cache
from textwrap import shorten

from ..declare import Field, Schema, spelled
from ..finding import Place
from .refusal import Refusal, shown

MAX_NAMED = 12
MAX_KEY = 60
LONGEST_SYMBOL = 8

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
        return Refusal(place, f"no space after the colon in {shown(key)}", *glued)
    called = schema.trade_words.get(spelled(key).replace("(", "").replace(")", ""))
    if called and key not in _last_names(schema):
        return Refusal(place, problem, f"this spec has {' or '.join(_placed(schema, called))}")
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


def _placed(schema: Schema, called: Iterable[str]) -> list[str]:
    """Where words of the trade lead: each path with what it is, or with what to write there."""
    found = []
    for path in called:
        field = known_field(schema, path.partition(":")[0])
        meaning = field.meaning.partition(";")[0].rstrip(".") if field and ":" not in path else ""
        told = shorten(meaning, MAX_KEY, placeholder=" ...")
        found.append(f"{path} ({told})" if meaning else path)
    return found


def _nearest(schema: Schema, key: str, names: list[str]) -> str | None:
    """The name that may have been meant; no guess from one letter symbol to another."""
    if len(key) > MAX_KEY or key in _last_names(schema):
        return None
    plain = key.strip().lower().replace("-", "_").replace(" ", "_")
    close = difflib.get_close_matches(plain, names, n=1, cutoff=0.7)
    return close[0] if close and not _is_another_symbol(plain, close[0]) else None


def _is_another_symbol(key: str, name: str) -> bool:
    """Whether two short names differ in a letter rather than in a slip of the fingers.

    >>> _is_another_symbol("a_bcc", "a_dcc"), _is_another_symbol("a_bc", "a_bcc")
    (True, False)
    """
    shorter, longer = sorted((key, name), key=len)
    if len(longer) > LONGEST_SYMBOL or sorted(key) == sorted(name):
        return False
    letters = iter(longer)
    return not all(letter in letters for letter in shorter)


@cache
def _last_names(schema: Schema) -> frozenset[str]:
    """The names of fields; those inside of lists are not meant elsewhere."""
    return frozenset(path.rpartition(".")[2] for path in schema.fields if "[" not in path)


def _elsewhere(schema: Schema, key: str) -> list[str]:
    """The paths that end in this key, the shortest first, two at most."""
    found = [path for path in schema.fields if path.rpartition(".")[2] == key]
    return sorted(found, key=lambda path: (path.count("."), path))[:2]


def _example(schema: Schema, section: str, name: str) -> str:
    field = known_field(schema, f"{section}.{name}" if section else name)
    return f"{name}: {field.example}" if field is not None and field.example else ""

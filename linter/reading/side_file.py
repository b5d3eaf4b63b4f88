"""Files that stand beside a spec: the house file, the parts file, a list of deviations.

They are read by the reader of specs, with the same limits, and refused the same way:
with place, what was expected and an example.
"""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from difflib import get_close_matches
from typing import Any

from ..finding import Place
from .format import KINDS, SPEC_LINE, VERSION
from .refusal import Refusal, shown
from .source import Document, read


def read_side_file(content: bytes, file: str, key: str, kind: str) -> Document:
    """The plain data of a file whose first key is ``key``; refusals speak of its ``kind``."""
    document = read(content, file)
    return replace(document, refusals=tuple(_about(item, key, kind) for item in document.refusals))


def first_key(document: Document, file: str, key: str) -> tuple[Refusal, ...]:
    """A refusal where the file does not begin with its format version."""
    if document.data is None:
        return ()
    other = other_kind(document, file, key)
    if other:
        return (other,)
    version = document.data.get(key)
    if version == VERSION and next(iter(document.data)) == key:
        return ()
    expected, example = f"{key}: {VERSION} as the first key", f"{key}: {VERSION}"
    if version is None:
        problem = "the format version is not stated"
    elif version == VERSION:
        problem = "the format version does not come first"
    else:
        problem = f"the format version {shown(str(version))} is not known here"
    place = document.key_places.get(key, Place(file, 1, 1))
    return (Refusal(place, problem, expected, example),)


def other_kind(document: Document, file: str, key: str) -> Refusal | None:
    """A refusal where the file begins like one of another kind, with how that one is read."""
    first = next(iter(document.data or {}), key)
    if first == key or first not in KINDS:
        return None
    (name, use), place = KINDS[first], document.key_places.get(first, Place(file, 1, 1))
    return Refusal(place, f"this is {name}, not {KINDS[key][0]}", use, f"{key}: {VERSION}")


def unknown_keys(
    document: Document, section: str, known: Iterable[str], example: str
) -> tuple[Refusal, ...]:
    """A refusal for each key of a section that it does not know."""
    names = list(known)
    data: Any = document.data or {}
    for step in section.split(".") if section else ():
        data = data.get(step)
    if not isinstance(data, Mapping):
        return ()
    return tuple(
        refuse_key(document.key_places[f"{section}.{key}" if section else key], key, names, example)
        for key in data
        if key not in names
    )


def refuse_key(place: Place, key: str, names: list[str], example: str) -> Refusal:
    """A key that is not known, with the nearest known one."""
    close = get_close_matches(key, names, 1, 0.6)
    expected = f"`{close[0]}`, if that is meant" if close else f"one of {', '.join(names)}"
    return Refusal(place, f"{shown(key)} is not known here", expected, example)


def _about(item: Refusal, key: str, kind: str) -> Refusal:
    """A refusal of the reader of specs in the words of another kind of file."""
    example = f"{key}: {VERSION}" if item.example == SPEC_LINE else item.example
    words = (item.problem.replace("a spec", kind), item.expected.replace("a spec", kind))
    return Refusal(item.place, *words, example)

"""Files that stand beside a spec: the team's house file, a list of deviations.

They are read by the reader of specs, with the same limits, and refused the same way:
with place, what was expected and an example.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from ..declare import load_schema
from ..finding import Place
from .format import DEVIATIONS_KEY, MEASURED_KEY, SPEC_KEY, SPEC_LINE, VERSION
from .loading import Deviation, Measurement, Spec, content_of, spec_of
from .refusal import Refusal, shown
from .source import Document, read


@dataclass(frozen=True, slots=True)
class Permissions:
    """The deviations of a file of their own, and its text for the hash."""

    file: str
    text: str
    deviations: tuple[Deviation, ...]


@dataclass(frozen=True, slots=True)
class Measured:
    """The measurements of a file of their own, and its text for the hash."""

    file: str
    text: str
    measurements: tuple[Measurement, ...]


def read_deviations(path: Path) -> Permissions | tuple[Refusal, ...]:
    """A file of deviations: the same list as a spec may hold, under its own first key."""
    found = _read_list(path, DEVIATIONS_KEY, "deviations", "a list of deviations")
    if isinstance(found, tuple):
        return found
    return Permissions(str(path), found.text, found.deviations)


def read_measured(path: Path) -> Measured | tuple[Refusal, ...]:
    """A file of measurements: the same list as a spec may hold, under its own first key."""
    found = _read_list(path, MEASURED_KEY, "measured", "a list of measurements")
    if isinstance(found, tuple):
        return found
    return Measured(str(path), found.text, found.measurements)


def _read_list(path: Path, key: str, name: str, kind: str) -> Spec | tuple[Refusal, ...]:
    """A file that holds one list of a spec alone, as a spec that states nothing else."""
    content = content_of(path, kind)
    if isinstance(content, Refusal):
        return (content,)
    document = read_side_file(content, str(path), key, kind)
    refusals = [*document.refusals, *first_key(document, str(path), key)]
    refusals += unknown_keys(document, "", (key, name), f"{name}:")
    if refusals or document.data is None:
        return tuple(refusals)
    items = document.data.get(name) or []
    data = {SPEC_KEY: VERSION, name: items}
    loaded = spec_of(replace(document, data=data), str(path), load_schema())
    if not isinstance(loaded.spec, Spec):
        return loaded.refusals
    return loaded.spec


def read_side_file(content: bytes, file: str, key: str, kind: str) -> Document:
    """The plain data of a file whose first key is ``key``; refusals speak of its ``kind``."""
    document = read(content, file)
    return replace(document, refusals=tuple(_about(item, key, kind) for item in document.refusals))


def first_key(document: Document, file: str, key: str) -> tuple[Refusal, ...]:
    """A refusal where the file does not begin with its format version."""
    if document.data is None:
        return ()
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

"""The parts file: data-sheet values of parts, each once, under a name of one's own.

It is found in the folder of the spec or in one above, or named on the command line; a spec
names a part and never a file.  Like a spec it is data, read by the same reader.
"""

import os
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from functools import lru_cache
from pathlib import Path
from typing import Any

from ..declare import Schema, load_schema
from ..declare.parts import part_kinds
from ..finding import Place
from .format import PARTS_KEY
from .plain_text import content_of
from .refusal import Refusal, in_order, shown
from .side_file import first_key, read_side_file
from .source import Document

NAME = "parts.ampreview.yaml"
KIND = "a parts file"
EXAMPLE = "KIND: {name-of-yours: {its values as printed}}"
SPEC_ENDING = ".amp.yaml"


PartPlaces = tuple[tuple[str, Place], ...]


@dataclass(frozen=True, slots=True, eq=False)
class PartsFile:
    """The parts of a file by kind and name, as plain data that no model has seen yet."""

    file: str
    document: Document
    found: dict[tuple[str, str], PartPlaces] = field(default_factory=dict)

    @property
    def text(self) -> str:
        """The text of the file, for its hash."""
        return self.document.text

    def names(self, kind: str) -> tuple[str, ...]:
        """The names of the parts of a kind."""
        group = (self.document.data or {}).get(kind)
        return tuple(group) if isinstance(group, Mapping) else ()

    def values(self, kind: str, name: str) -> Mapping[str, Any]:
        """What the file says of a part."""
        data: Mapping[str, Any] = (self.document.data or {})[kind][name]
        return data

    def places(self, kind: str, name: str) -> PartPlaces:
        """Where each value of a part stands, by its path as seen from the part."""
        if (kind, name) not in self.found:
            ahead = f"{kind}.{name}"
            self.found[kind, name] = tuple(
                (path[len(ahead) :], places[0])
                for path, places in self.document.places.items()
                if path.startswith((f"{ahead}.", f"{ahead}["))
            )
        return self.found[kind, name]


PartsSource = Callable[[], PartsFile | tuple[Refusal, ...] | None]
"""Gives the parts file of a spec, its refusals, or nothing where there is none."""


def no_parts() -> None:
    """The source of a text that belongs to no folder."""


def parts_beside(spec: Path, named: Path | None = None) -> PartsSource:
    """The source for a spec in a folder: the file that is named, or the nearest above."""

    def source() -> PartsFile | tuple[Refusal, ...] | None:
        path = named or find_upward(spec, NAME)
        return read_parts(path) if path else None

    return source


def folder_of(file: Path) -> Path:
    """The folder of a file, whole and without ``..``: what lies above it lies above the file.

    >>> folder_of(Path("/boards/bench/../plinth/plinth.amp.yaml")).as_posix()
    '/boards/plinth'
    """
    return Path(os.path.normpath(file.absolute())).parent


def find_upward(spec: Path, name: str) -> Path | None:
    """The file of a name nearest to a spec: in its folder, or in one above.

    It is named from the spec's folder, so that a report does not depend on the machine.
    """
    folder = folder_of(spec)
    for steps, above in enumerate((folder, *folder.parents)):
        if (above / name).is_file():
            return Path(os.path.normpath(spec.parent.joinpath(*[".."] * steps, name)))
    return None


def read_parts(path: Path, schema: Schema | None = None) -> PartsFile | tuple[Refusal, ...]:
    """Read a parts file; its values are judged where a spec uses them."""
    content = content_of(path, KIND)
    if isinstance(content, Refusal):
        return (content,)
    return parts_of(content, str(path), schema or load_schema())


@lru_cache(maxsize=16)
def parts_of(content: bytes, file: str, schema: Schema) -> PartsFile | tuple[Refusal, ...]:
    """The parts in the text of a file, or why they cannot be read."""
    document = read_side_file(content, file, PARTS_KEY, KIND)
    refusals = [*document.refusals, *first_key(document, file, PARTS_KEY)]
    if document.data is not None and not refusals:
        refusals += _misplaced(document, list(part_kinds(schema)))
    return in_order(refusals) if refusals else PartsFile(file, document)


def _misplaced(document: Document, kinds: list[str]) -> Iterator[Refusal]:
    """A refusal for each key that is no kind of part, and for what is no section."""
    for kind, group in (document.data or {}).items():
        if kind == PARTS_KEY or group is None:
            continue
        place = document.key_places[kind]
        if kind not in kinds:
            near = get_close_matches(kind, kinds, 1, 0.6)
            expected = f"`{near[0]}`, if that is meant" if near else f"one of {', '.join(kinds)}"
            yield Refusal(place, f"{shown(kind)} is no kind of part", expected, EXAMPLE)
        elif not isinstance(group, Mapping):
            expected = "names of parts, each with its values below it"
            yield Refusal(place, f"{shown(kind)} holds no parts", expected, EXAMPLE)
        else:
            for name, values in group.items():
                if not isinstance(values, Mapping):
                    at = document.key_places[f"{kind}.{name}"]
                    problem = f"the part {shown(name)} has no values"
                    yield Refusal(at, problem, "its values, indented below its name", EXAMPLE)


def is_parts_file(path: Path) -> bool:
    """Whether a file begins like a parts file."""
    if path.name.endswith(SPEC_ENDING):
        return False
    content = content_of(path, KIND)
    lines = (
        [] if isinstance(content, Refusal) else content.removeprefix(b"\xef\xbb\xbf").split(b"\n")
    )
    says = (line for line in lines if line.strip() and not line.lstrip().startswith((b"#", b"---")))
    return next(says, b"").startswith(PARTS_KEY.encode())

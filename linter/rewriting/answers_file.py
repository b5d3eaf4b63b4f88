"""A file of answers merged into a spec: what is new is taken, what disagrees is refused.

Answers are a spec of their own with only what was asked for.  A value that the spec states
already is left alone when it is the same, and is a conflict when it is not: two readings
of one part are for a person to settle.  An estimate gives way, and a line of a data sheet takes
the sides that it lacks.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import PurePath
from typing import Any

from ..evaluation.wording import in_words
from ..finding import Place
from ..quantities.quantity import Value
from ..reading.by_path import steps_of
from ..reading.format import SPEC_KEY
from ..reading.loading import Spec
from ..reading.refusal import Refusal, in_order
from .rewrite import Change

SIDES = {"min": "lo", "typ": "nominal", "max": "hi"}


@dataclass(frozen=True, slots=True)
class Merger:
    """What the answers add to a spec, by full path, and where they contradict it."""

    changes: Mapping[str, Change]
    conflicts: tuple[Refusal, ...]


def merger(spec: Spec, answers: Spec) -> Merger:
    """Compare a file of answers with the spec that it answers for."""
    changes: dict[str, Change] = {}
    conflicts: list[Refusal] = []
    for path in _stated(answers):
        clash = _clash(spec, answers, path)
        if clash is not None:
            conflicts.append(clash)
        elif not _known(spec, answers, path):
            place = answers.place(path)
            line = f", line {place.line}" if place else ""
            why = f"from {PurePath(answers.file).name}{line}"
            changes[path] = Change(_data(answers.data, path), why)
    return Merger(changes, in_order(conflicts))


def _stated(answers: Spec) -> Iterator[str]:
    """Every leaf, whole list of sections and section called ``none`` in the answers."""
    yield from (path for path in answers.values if path != SPEC_KEY and "[" not in path)
    yield from (path for path in answers.lists if "[" not in path)
    yield from answers.none


def _clash(spec: Spec, answers: Spec, path: str) -> Refusal | None:
    """The conflict of one answer with the spec, if there is one."""
    channel = re.match(r"channels\.([^.]+)\.", path)
    if channel and channel.group(1) not in spec.channels:
        known = ", ".join(spec.channels) or "there are none"
        problem = f"the spec has no channel named {channel.group(1)}"
        return Refusal(_place(answers, path), problem, f"a channel of the spec ({known})")
    above = next((item for item in _with_parents(path) if item in spec.none), None)
    if above is not None and path != above:
        return _disagreement(spec, answers, path, above, "none")
    if path in answers.none:
        fitted = path in spec.sections
        return _disagreement(spec, answers, path, path, "a section") if fitted else None
    if path in answers.lists:
        same = _data(spec.data, path) in (None, _data(answers.data, path))
        return None if same else _disagreement(spec, answers, path, path, "another list")
    stated = spec.values.get(path)
    given = answers.values[path]
    if above is None and (stated is None or stated == given or _gives_way(stated, given)):
        return None
    found = "none" if above else str(getattr(stated, "text", None) or in_words(stated, "word"))
    return _disagreement(spec, answers, path, path, found)


def _gives_way(stated: object, given: object) -> bool:
    """Whether a stated value is an estimate, or a line of which the answer has another side too."""
    if not isinstance(stated, Value) or not isinstance(given, Value):
        return False
    if stated.provenance == "estimate":
        return True
    same = all(getattr(stated, SIDES[x]) == getattr(given, SIDES[x]) for x in stated.sides)
    return bool(stated.sides) and stated.sides < given.sides and same


def _disagreement(spec: Spec, answers: Spec, path: str, where: str, found: str) -> Refusal:
    place = spec.place(where)
    line = f"{spec.file}, line {place.line}" if place else spec.file
    problem = f"{path} differs in the spec: {found} ({line})"
    return Refusal(_place(answers, path), problem, "the same in both files, or only in one")


def _known(spec: Spec, answers: Spec, path: str) -> bool:
    """Whether the spec says the same already."""
    if path in answers.none:
        return path in spec.none
    if path in answers.lists:
        return path in spec.lists
    return path in spec.values and spec.values[path] == answers.values[path]


def _with_parents(path: str) -> Iterator[str]:
    parts = path.split(".")
    return (".".join(parts[:end]) for end in range(1, len(parts) + 1))


def _place(answers: Spec, path: str) -> Place:
    return answers.place(path) or Place(answers.file, 1, 1, path)


def _data(data: Any, path: str) -> Any:
    for step in steps_of(path):
        data = data.get(step) if isinstance(data, Mapping) else None
    return data

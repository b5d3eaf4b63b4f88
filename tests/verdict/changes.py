"""Changes of a spec that say less, or less exactly: left out, ``none``, wider."""

import random
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import chain
from typing import Literal

from ampreview.linter.declare import load_schema, local_path
from ampreview.linter.quantities.quantity import Value
from ampreview.linter.reading.loading import Spec

from ..test_metamorphic import wider, windows

SCHEMA = load_schema()

Kind = Literal["field left out", "section left out", "fields left out", "none", "none added"]
Wider = Literal["wider"]

# Permissions and readings are no statements on the design; without its version no file is read.
NOT_OF_THE_DESIGN = ("amplifier_spec", "deviations", "measured")


@dataclass(frozen=True)
class Change:
    """path: without the channel's name; values: full path to new value, None to leave out."""

    kind: Kind | Wider
    path: str
    values: Mapping[str, object]


def silences(spec: Spec, one_channel: bool = False) -> Iterator[Change]:
    """Every field and section left out, and ``none`` for every section that allows it.

    In all channels at once, as of channels that are written once and referred to;
    one_channel: in the first channel only.
    """
    yield from fields_left_out(spec, one_channel)
    names = (path for path in (*spec.sections, *spec.none) if "[" not in path)
    for path, full in sorted(_by_local_path(names, spec, one_channel).items()):
        yield Change("section left out", path, dict.fromkeys(full))
    yield from _made_none(spec, one_channel)


def fields_left_out(spec: Spec, one_channel: bool = False) -> Iterator[Change]:
    for path, full in _by_local_path(spec.values, spec, one_channel).items():
        yield Change("field left out", path, dict.fromkeys(full))


def several_left_out(spec: Spec, dice: random.Random, count: int) -> Iterator[Change]:
    """Two to five fields at once: what is silent seldom is so alone."""
    fields = sorted(_by_local_path(spec.values, spec, False).items())
    for _ in range(count):
        chosen = dice.sample(fields, min(len(fields), dice.randint(2, 5)))
        full = chain.from_iterable(paths for _, paths in chosen)
        yield Change("fields left out", " ".join(path for path, _ in chosen), dict.fromkeys(full))


def _made_none(spec: Spec, one_channel: bool) -> Iterator[Change]:
    """``none`` for sections that are stated, or silent in a section that is not ``none``."""
    channels = spec.channels[:1] if one_channel else spec.channels
    for path, field in SCHEMA.fields.items():
        if not field.can_be_none:
            continue
        full = (
            [f"channels.{name}.{path}" for name in channels]
            if SCHEMA.is_channel_path(path)
            else [path]
        )
        full = [x for x in full if x.rpartition(".")[0] in {"", *spec.sections}]
        full = [x for x in full if x not in spec.none]
        if full:
            stated = not spec.sections.isdisjoint(full)
            yield Change("none" if stated else "none added", path, dict.fromkeys(full, "none"))


def _by_local_path(paths: Iterable[str], spec: Spec, one_channel: bool) -> dict[str, list[str]]:
    found: dict[str, list[str]] = defaultdict(list)
    others = tuple(f"channels.{name}." for name in spec.channels[1:]) if one_channel else ()
    for path in paths:
        if not path.startswith((*NOT_OF_THE_DESIGN, *others)):
            found[local_path(path)].append(path)
    return found


def widenings(spec: Spec) -> Iterator[Change]:
    """Every number with a tolerance or a spread, and a little more of it."""
    numbers = [
        path
        for path, value in spec.values.items()
        if isinstance(value, Value)
        and SCHEMA.field_of(path).kind == "quantity"
        and value.nominal != 0.0
        and local_path(path) not in windows()
    ]
    for path, full in _by_local_path(numbers, spec, False).items():
        texts = {name: _wider(spec, name) for name in full}
        yield Change("wider", path, {name: text for name, text in texts.items() if text})


def _wider(spec: Spec, path: str) -> object:
    value = spec.values[path]
    assert isinstance(value, Value)
    return wider(value, SCHEMA.field_of(path).unit)

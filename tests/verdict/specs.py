"""The specs on which silence is tried: samples, published, failing fragments, generated."""

import json
import random
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.dependence import Dependences
from ampreview.linter.quantities.quantity import Value, spell
from ampreview.linter.reading.loading import Spec, load_file, load_text

from .reruns import House

SCHEMA = load_schema()
ROOT = Path(__file__).parents[2]
SHARED = ("environment", "supply", "battery", "thermal", "wiring", "protection", "safety",
          "signal", "claims")  # fmt: skip
PARTS = ("output_stage", "gate_drive", "modulator", "filter", "loudspeaker")
TIGHTENED = (0.3, 0.5, 0.7, 1.5, 2.0, 4.0)


@cache
def house() -> House:
    catalogue = load()
    return House(catalogue, Dependences(catalogue))


def files(folder: str) -> tuple[str, ...]:
    """The spec files of a folder, by their path in the project."""
    return tuple(str(path.relative_to(ROOT)) for path in sorted((ROOT / folder).glob("*.amp.yaml")))


@cache
def spec_of_file(name: str) -> Spec:
    loaded = load_file(ROOT / name)
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


def fragments() -> tuple[str, ...]:
    """The checks, each of which has a fragment that it must find."""
    return tuple(entry.name for entry in house().catalogue.entries)


@cache
def fragment(check: str) -> Spec:
    entry = house().catalogue.entry(check)
    assert entry is not None
    loaded = load_text("amplifier_spec: 1\n" + entry.check.fails, check)
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


@cache
def generated(seed: int) -> Spec:
    """Sections of several samples in one product, a few of its numbers far worse."""
    dice = random.Random(f"silence {seed}")
    donors = [spec_of_file(name).data for name in files("sample_specs")]
    data: dict[str, Any] = {"amplifier_spec": "1", "title": f"generated {seed}"}
    for name in SHARED:
        _take(name, dice.choice(donors), data)
    channels = [channel for donor in donors for channel in donor["channels"].values()]
    main = dict(dice.choice(channels))
    for name in PARTS:
        if dice.random() < 0.5:
            _take(name, dice.choice(channels), main)
    data["channels"] = {"main": main}
    loaded = load_text(json.dumps(data, ensure_ascii=False), f"generated {seed}")
    assert loaded.spec is not None, loaded.refusals
    return tightened(loaded.spec, dice)


def _take(name: str, donor: Mapping[str, Any], into: dict[str, Any]) -> None:
    if name in donor:
        into[name] = donor[name]


def tightened(spec: Spec, dice: random.Random) -> Spec:
    """The same with eight numbers multiplied, each where the spec still can be read."""
    for path in dice.sample(sorted(_numbers(spec)), 8):
        value = spec.values[path]
        assert isinstance(value, Value)
        factor = dice.choice(TIGHTENED)
        scaled = Value(value.lo * factor, value.nominal * factor, value.hi * factor,
                       value.form, sides=value.sides)  # fmt: skip
        changed = spec.with_values({path: spell(scaled, SCHEMA.field_of(path).unit)}).spec
        spec = changed or spec
    return spec


def _numbers(spec: Spec) -> Iterator[str]:
    return (path for path, value in spec.values.items() if _can_be_scaled(path, value))


def _can_be_scaled(path: str, value: object) -> bool:
    if not isinstance(value, Value) or "[" in path:
        return False
    field = SCHEMA.field_of(path)
    return field.kind == "quantity" and field.unit not in ("degC", "dB", "%")

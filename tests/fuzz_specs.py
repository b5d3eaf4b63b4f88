"""How specs are made that are accepted and absurd.

A mutant is a sample, a published design or the few lines in which a check fails or meets, with
values replaced (by zero, the ends of what is accepted, ranges, one-sided lines), sections called
``none``, and often most of the rest left out.
"""

import json
import math
import random
from functools import cache
from pathlib import Path
from typing import Any

from ampreview.linter.declare import Field, load_schema
from ampreview.linter.declare.usual import bounds, limits
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.quantities.quantity import Value, spell
from ampreview.linter.reading.loading import Spec, load_text

ROOT = Path(__file__).parents[1]
SAMPLES = sorted((ROOT / "sample_specs").glob("*.amp.yaml"))
DESIGNS = sorted((ROOT / "tests" / "published" / "designs").glob("*.amp.yaml"))
SCHEMA = load_schema()
FITTING = [
    path
    for path, known in SCHEMA.fields.items()
    if "[]" not in path
    and not path.startswith(("deviations", "measured", "amplifier_spec"))
    and (known.kind in ("quantity", "count", "word", "flag") or known.can_be_none)
]


@cache
def sample(path: Path) -> Spec:
    """A spec file of the project."""
    return known_spec(path.read_bytes(), path.name)


def known_spec(text: str | bytes, name: str) -> Spec:
    """A spec that must be accepted."""
    loaded = load_text(text, name)
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


@cache
def seeds() -> tuple[Spec, ...]:
    """What the mutants are made of: whole designs, and the few lines that a check needs."""
    whole = [sample(path) for path in (*SAMPLES, *DESIGNS)]
    few = (
        known_spec(f"amplifier_spec: 1\n{text}", f"{entry.name}.amp.yaml")
        for entry in load().entries
        for text in (entry.check.fails, entry.check.passes)
        if text
    )
    return (*whole, *few)


def spoilt(spec: Spec, dice: random.Random, changes: int) -> dict[str, Any]:
    """The data of a spec with some values replaced, added or taken away."""
    data: dict[str, Any] = json.loads(json.dumps(spec.data))
    for _ in range(changes):
        local = dice.choice(FITTING)
        path = local
        if SCHEMA.is_channel_path(local):
            path = f"channels.{dice.choice(spec.channels or ('main',))}.{local}"
        *above, name = path.split(".")
        below = data
        for step in above:
            if not isinstance(below.get(step), dict):
                below[step] = {}
            below = below[step]
        if dice.random() < 0.15:
            below.pop(name, None)
        else:
            below[name] = absurd(SCHEMA.fields[local], dice)
    return data


def thinned(data: Any, dice: random.Random, share: float) -> Any:
    """The same with a share of its values left out."""
    if not isinstance(data, dict):
        return data
    kept = {
        name: thinned(item, dice, share)
        for name, item in data.items()
        if isinstance(item, dict) or dice.random() >= share
    }
    return {"amplifier_spec": "1", **kept} if "amplifier_spec" in data else kept


def worsened(spec: Spec, dice: random.Random, data: dict[str, Any]) -> dict[str, Any]:
    """The same with stated numbers replaced, so that what is computed meets absurd values."""
    stated = [path for path, value in spec.values.items() if isinstance(value, Value)]
    for path in dice.sample(stated, min(len(stated), dice.randrange(6))):
        below: Any = data
        *above, name = path.split(".")
        for step in above:
            below = below.get(step) if isinstance(below, dict) else None
        if isinstance(below, dict) and name in below:
            below[name] = absurd(SCHEMA.field_of(path), dice)
    return data


def absurd(known: Field, dice: random.Random) -> Any:
    """A value that the field accepts, mostly far from what is usual."""
    if known.model is not None:
        return "none"
    if known.words:
        return dice.choice(known.words)
    if known.kind == "count":
        return str(max(round(number(known, dice)), 0 if known.zero else 1))
    kind = dice.randrange(8)
    if kind == 0:
        low, high = sorted((number(known, dice), number(known, dice)))
        return f"{plain(low, known)} .. {plain(high, known)}"
    if kind == 1:
        sides = sorted(
            dice.sample(("min", "typ", "max"), dice.randint(1, 3)), key=("min", "typ", "max").index
        )
        texts = (plain(x, known) for x in sorted(number(known, dice) for _ in sides))
        return dict(zip(sides, texts, strict=True))
    x = number(known, dice)
    if kind == 2 and x > 0 and known.unit not in ("degC", "dB", "%"):
        return f"{plain(x, known)} ± {dice.choice(('1', '50', '99', '99.9999999'))} %"
    return plain(x, known)


def plain(x: float, known: Field) -> Any:
    """A number as the field is written."""
    return spell(Value(x, x, x), known.unit)


def number(known: Field, dice: random.Random) -> float:
    """A number between the ends of what is possible: small, usual, large, or zero."""
    low, high = limits(known.usual, known.usual_high, known.possible, known.unit)
    if known.zero and dice.random() < 0.2:
        return 0.0
    if known.unit in ("degC", "dB"):
        return dice.choice((low, high, 0.0 if low < 0 else low, dice.uniform(low, high)))
    if known.usual:
        usual_low, usual_high = bounds(known.usual, known.unit)
        low = max(low, usual_low / 1e9)
    else:
        usual_low, usual_high = low, high = max(low, high / 1e18), high
    first, last = dice.choice(((low, low), (high, high), (usual_low, usual_high), (low, high)))
    x = math.exp(dice.uniform(math.log(first), math.log(last)))
    return min(max(x, low * 1.001), high * 0.999)


def mutant(dice: random.Random) -> dict[str, Any]:
    """One mutant as plain data."""
    seed = dice.choice(seeds())
    data = worsened(seed, dice, spoilt(seed, dice, dice.randint(0, 8)))
    return thinned(data, dice, dice.choice((0.0, 0.0, 0.1, 0.4, 0.8)))

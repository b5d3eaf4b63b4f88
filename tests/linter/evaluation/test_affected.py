"""What a change can alter: everything else may be taken over without judging it again.

The expectation comes from the long way round: the changed spec loaded and judged from
nothing.  Every answer must be the same, to its last word.
"""

import random
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from ampreview.linter.check import Derived, Input, Way
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import Catalogue, load
from ampreview.linter.evaluation.dependence import Dependence, Dependences
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.evaluation.node import Node
from ampreview.linter.finding import Finding
from ampreview.linter.quantities.quantity import Value, spell
from ampreview.linter.reading.loading import Spec, load_file, load_text

from ...sampling import tries

SCHEMA = load_schema()
FIELDS = SCHEMA.fields
field_of = SCHEMA.field_of
is_channel_path = SCHEMA.is_channel_path

FOLDER = Path(__file__).parents[3] / "sample_specs"
NAMES = ("bird-call-pocket-faulty", "classroom-sketch", "foyer-proposal", "playhouse-subwoofer")
SAMPLES = [FOLDER / f"{name}.amp.yaml" for name in NAMES]
EACH_KIND = tries(1, swept=3)
Kind = Callable[[Spec, random.Random], list[dict[str, object]]]


def judged(spec: Spec) -> tuple[Assessment, dict[tuple[str, str], Finding]]:
    """A run with everything resolved and judged, and its answers."""
    run = Assessment(spec, load(), spec.milestone)
    return run, {(item.check, item.subject): item for item in run.findings()}


@cache
def sample(path: Path) -> tuple[Assessment, dict[tuple[str, str], Finding]]:
    loaded = load_file(path)
    assert loaded.spec is not None
    return judged(loaded.spec)


def afterwards(
    run: Assessment, answers: dict[tuple[str, str], Finding], changes: dict[str, object]
) -> dict[tuple[str, str], Finding]:
    """The answers after a change: judged anew where it alters them, else taken over."""
    revised = run.revised(changes)
    assert revised is not None, changes
    after, change = revised
    found = {}
    for entry, subject in after.questions():
        before = answers.get((entry.name, subject))
        altered = before is None or change.alters(entry.name, before.evidence.leaves)
        found[entry.name, subject] = after.judge(entry, subject) if altered else before
    return found


def fresh(run: Assessment, changes: dict[str, object]) -> dict[tuple[str, str], Finding]:
    loaded = run.spec.with_values(changes)
    assert loaded.spec is not None, changes
    return judged(loaded.spec)[1]


def other_words(spec: Spec, dice: random.Random) -> list[dict[str, object]]:
    stated = [
        path
        for path in spec.values
        if field_of(path).kind in ("word", "flag") and path != "milestone"
    ]
    chosen = some(stated, EACH_KIND, dice)
    return [
        {path: dice.choice([w for w in field_of(path).words if w != spec.values[path]])}
        for path in chosen
        if len(field_of(path).words) > 1
    ]


def other_numbers(spec: Spec, dice: random.Random) -> list[dict[str, object]]:
    numbers = [
        path
        for path, x in spec.values.items()
        if isinstance(x, Value) and field_of(path).kind == "quantity" and x.lo > 0.0
    ]
    changes: list[dict[str, object]] = []
    for path in some(numbers, 2 * EACH_KIND, dice):
        value = spec.values[path]
        assert isinstance(value, Value)
        ratio = dice.choice((0.4, 0.8, 1.3, 2.5))
        unit = field_of(path).unit
        ratio = 1.02 if unit in ("degC", "%", "1") else ratio
        lo, nominal, hi = (x * ratio for x in (value.lo, value.nominal, value.hi))
        changes.append({path: spell(Value(lo, nominal, hi, value.form, sides=value.sides), unit)})
    return [x for x in changes if spec.with_values(x).spec is not None]  # none that is refused


def new_leaves(spec: Spec, dice: random.Random) -> list[dict[str, object]]:
    """Leaves that the spec is silent about, in sections that it has and in others."""
    paths = [
        f"channels.{dice.choice(spec.channels)}.{name}" if is_channel_path(name) else name
        for name, field in FIELDS.items()
        if field.kind in ("quantity", "count", "word", "flag") and "[]" not in name
    ]
    silent = [path for path in paths if path not in spec.values]
    examples = {path: field_of(path).example for path in some(silent, 2 * EACH_KIND, dice)}
    return [{path: as_data(text)} for path, text in examples.items() if text]


def no_parts(spec: Spec, dice: random.Random) -> list[dict[str, object]]:
    """Parts that are stated, or that the spec is silent about, stated as none."""
    parts = [name for name, field in FIELDS.items() if field.can_be_none and "[]" not in name]
    paths = [
        f"channels.{dice.choice(spec.channels)}.{name}" if is_channel_path(name) else name
        for name in some(parts, 2 * EACH_KIND, dice)
    ]
    return [{path: "none"} for path in paths]


def some(paths: list[str], most: int, dice: random.Random) -> list[str]:
    return dice.sample(sorted(paths), min(most, len(paths)))


def as_data(example: str) -> object:
    """``{min: 40 ns, typ: 45 ns}`` is a mapping."""
    if not example.startswith("{"):
        return example
    return dict(part.strip().split(": ") for part in example.strip("{}").split(","))


@pytest.mark.slow
@pytest.mark.parametrize("kind", [other_words, other_numbers, new_leaves, no_parts])
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.name.removesuffix(".amp.yaml"))
def test_what_is_taken_over_is_what_a_fresh_run_finds(path: Path, kind: Kind) -> None:
    run, before = sample(path)
    tries = (
        kind(run.spec, random.Random(f"{path.name} {kind.__name__}")) if run.spec.channels else []
    )
    for changes in tries:
        assert afterwards(run, before, changes) == fresh(run, changes), changes


LAMP = """
amplifier_spec: 1
milestone: prototype
supply: {source: dc-source, rails: single, v_rail: 70 V}
channels:
  main: {rated_power: 50 W, output_stage: {topology: half-bridge}, filter: {inductor: {l: 22 uH}}}
"""


def lamp() -> Assessment:
    loaded = load_text(LAMP, "lamp.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return Assessment(loaded.spec, load(), loaded.spec.milestone)


def test_another_word_leads_another_way() -> None:
    """A half bridge has one leg, a full bridge two."""
    run = lamp()
    assert value(run, "n_legs", "main") == 1.0
    after = revised_by(run, {"channels.main.output_stage.topology": "full-bridge"})
    assert value(after, "n_legs", "main") == 2.0


def test_a_number_that_decides_on_a_word_leads_another_way() -> None:
    """A rail is harmless well below 60 V of DC (IEC 62368-1, limit of class 1)."""
    run = lamp()
    assert value(run, "rail_harmless", None) == "no"
    assert value(revised_by(run, {"supply.v_rail": "40 V"}), "rail_harmless", None) == "yes"


def test_a_number_leaves_the_other_quantities_as_they_are() -> None:
    run = lamp()
    swing = run.graph.resolve("v_swing", "main")
    after = revised_by(run, {"channels.main.rated_power": "60 W"})
    assert after.graph.resolve("v_swing", "main") is swing


def test_a_new_section_alters_what_can_reach_any_of_its_fields() -> None:
    run = lamp()
    revised = run.revised({"channels.main.gate_drive.dead_time": "20 ns"})
    assert revised is not None
    assert revised[1].alters("gate-drive-level")
    assert not revised[1].alters("v_swing")


def test_a_change_that_cannot_be_loaded_is_no_run() -> None:
    assert lamp().revised({"supply.v_rail": "70 H"}) is None


def test_a_reach_tells_what_is_taken_from_what_decides() -> None:
    reach = Dependences(load())["l_total"]
    assert {"filter.inductor.l", "output_stage.topology"} <= reach.fields
    assert "output_stage.topology" in reach.deciding
    assert "filter.inductor.l" not in reach.deciding


def test_ways_that_lead_in_a_circle_have_a_reach() -> None:
    """Each of two may follow from the other; which one does is decided by a word."""

    def way(path: str, when: dict[str, str]) -> Way:
        return Way(float, {"x": Input(path, "V", "other")}, "x", when=when)

    ways = {
        "v_a": (way("v_b", {"supply.rails": "single"}), way("supply.v_rail", {})),
        "v_b": (way("v_a", {"supply.rails": "split"}), way("supply.v_source", {})),
    }
    derived = {name: Derived(name, "V", "product", name, found) for name, found in ways.items()}
    both = {"supply.v_rail", "supply.v_source", "supply.rails"}
    assert Dependences(Catalogue((), derived, {}, load_schema()))["v_a"] == Dependence(
        frozenset(both), frozenset({"supply.rails"})
    )


def revised_by(run: Assessment, changes: dict[str, object]) -> Assessment:
    revised = run.revised(changes)
    assert revised is not None
    return revised[0]


def value(run: Assessment, name: str, channel: str | None) -> object:
    found = run.graph.resolve(name, channel)
    assert isinstance(found, Node)
    return found.value()

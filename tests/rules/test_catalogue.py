"""What every rule file must fulfil, checked for the whole catalogue.

The numbers of the cases come from outside (each names its origin); here they are run on
floats and on pint quantities, through the engine, at the edges of the limits and at random
points inside the tolerances.
"""

import dataclasses
import math
import random
from typing import Any

import pytest

from ampreview.linter.check import AtLeast, Case, Check, Constant, Input
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.bringup_steps import amounts, steps_of
from ampreview.linter.evaluation.catalogue import Catalogue, Entry, load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.evaluation.node import Computed
from ampreview.linter.evaluation.threshold import missed
from ampreview.linter.evaluation.tolerance import worst_case
from ampreview.linter.finding import Finding, Status
from ampreview.linter.judging.measured import measurable_in
from ampreview.linter.quantities.quantity import Value, quantity, to_si
from ampreview.linter.reading.loading import Spec, load_text

SCHEMA = load_schema()
FIELDS = SCHEMA.fields

CATALOGUE: Catalogue = load()
BY_NAME = {entry.name: entry for entry in CATALOGUE.entries}
EACH = [pytest.param(entry, id=entry.name) for entry in CATALOGUE.entries]
SAMPLES = 60
WIDENED = 0.1


def _number(value: Any, unit: str) -> Any:
    if isinstance(value, tuple):
        return tuple(_number(item, unit) for item in value)
    if unit == "word":
        return value
    return float(value) if isinstance(value, (int, float)) else to_si(value, unit)


def _quantity(value: Any, unit: str) -> Any:
    if isinstance(value, tuple):
        return tuple(_quantity(item, unit) for item in value)
    if unit in ("word", "1", "dB") or isinstance(value, (int, float)):
        return _number(value, unit)
    return quantity(value, unit)


def _arguments(check: Check, case: Case, convert: Any) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for name, item in check.inputs.items():
        if isinstance(item, Input):
            found[name] = convert(case.inputs[name], item.unit)
        else:
            found[name] = convert(case.inputs.get(name, item.value), _unit_of(item))
    return found


def _unit_of(item: Constant) -> str:
    unit = item.value.split(" ", 1)[1:] or ["1"]
    return unit[0]


@pytest.mark.parametrize("entry", EACH)
def test_cases_on_floats(entry: Entry) -> None:
    for case in entry.check.cases:
        expected = to_si(case.gives, entry.check.unit)
        result = entry.check.figure(**_arguments(entry.check, case, _number))
        assert math.isclose(result, expected, rel_tol=case.tolerance, abs_tol=1e-15), case.origin


@pytest.mark.parametrize("entry", EACH)
def test_cases_on_quantities_have_the_dimension(entry: Entry) -> None:
    for case in entry.check.cases:
        has_the_dimension(entry, case)


def has_the_dimension(entry: Entry, case: Case) -> None:
    expected = to_si(case.gives, entry.check.unit)
    result = entry.check.figure(**_arguments(entry.check, case, _quantity))
    if hasattr(result, "magnitude"):
        reference = quantity(case.gives, entry.check.unit).to_base_units()
        result = result.to(reference.units).magnitude
    else:
        plain = ("1", "dB", "%", "V/V", "deg", "rad")
        assert entry.check.unit in plain, f"a pure number came out, not {entry.check.unit}"
    assert math.isclose(result, expected, rel_tol=case.tolerance, abs_tol=1e-15), case.origin


@pytest.mark.parametrize("entry", EACH)
def test_cases_limits_and_prose_are_complete(entry: Entry) -> None:
    check = entry.check
    assert len(check.cases) >= 2
    for case in check.cases:
        kind, _, what = case.origin.partition(": ")
        assert kind in ("published", "computed", "derived", "common practice", "from memory")
        assert len(what) > 10, "an origin says where the numbers come from"
    assert any(not case.origin.startswith("derived") for case in check.cases)
    assert len(entry.prose.split()) >= 50, "the prose teaches"
    for source in (*check.sources, *check.limits.basis.values()):
        assert len(source.title) >= 8
    for name in check.inputs:
        assert name in check.formula, f"{name} is missing in the formula"
    for item in check.inputs.values():
        assert len(item.meaning) >= 8


@pytest.mark.parametrize("entry", EACH)
def test_limits_have_edges(entry: Entry) -> None:
    check = entry.check
    outward = -1 if isinstance(check.limits, AtLeast) else 1
    for severity in ("critical", "major", "minor"):
        text = getattr(check.limits, severity)
        if text is None:
            continue
        limit = to_si(text, check.unit)
        step = max(abs(limit) * 1e-6, 1e-18)
        assert missed(check, limit) != severity
        assert missed(check, limit + outward * step) == severity


def _findings(entry: Entry, fragment: str) -> list[Finding]:
    loaded = load_text("amplifier_spec: 1\n" + fragment, "fragment")
    assert loaded.spec is not None, loaded.refusals
    run = Assessment(loaded.spec, CATALOGUE, loaded.spec.milestone)
    return [run.judge(entry, subject) for subject in run.subjects(entry.check)]


@pytest.mark.parametrize("entry", EACH)
def test_failing_fragment_fails(entry: Entry) -> None:
    found = _findings(entry, entry.check.fails)
    assert any(item.status is Status.FINDING for item in found), [
        (item.status, item.message, item.advice.missing) for item in found
    ]
    assert not any("the check itself failed" in item.message for item in found), found


@pytest.mark.parametrize("entry", EACH)
def test_passing_fragment_meets(entry: Entry) -> None:
    found = _findings(entry, entry.check.passes)
    assert found
    for item in found:
        assert item.status is Status.MEETS, (item.status, item.message, item.advice.missing)


def _widened(spec: Spec) -> Spec:
    """Every plain number of the spec with a tolerance of its own."""
    values: dict[str, Any] = {}
    for path, value in spec.values.items():
        if isinstance(value, Value) and value.form == "plain" and _can_spread(path):
            spread = WIDENED * abs(value.nominal)
            value = dataclasses.replace(
                value, lo=value.nominal - spread, hi=value.nominal + spread, form="tolerance"
            )
        values[path] = value
    return dataclasses.replace(spec, values=values)


def _can_spread(path: str) -> bool:
    name = path.split(".", 2)[2] if path.startswith("channels.") else path
    field = FIELDS.get(name)
    return field is not None and field.kind == "quantity" and field.unit not in ("degC", "dB")


@pytest.mark.parametrize("entry", EACH)
def test_no_interior_point_is_worse_than_the_worst_case(entry: Entry) -> None:
    for which in ("fails", "passes"):
        corner_is_the_worst(entry, which)


def corner_is_the_worst(entry: Entry, which: str) -> None:
    loaded = load_text("amplifier_spec: 1\n" + getattr(entry.check, which), "fragment")
    assert loaded.spec is not None
    run = Assessment(_widened(loaded.spec), CATALOGUE, "concept")
    adverse = -1 if isinstance(entry.check.limits, AtLeast) else 1
    dice = random.Random(f"{entry.name} {which}")
    tried = 0
    for subject in run.subjects(entry.check):
        node = run.prepare(entry, subject, run.graph)
        if not isinstance(node, Computed):
            continue
        extreme = worst_case(node, adverse, entry.check.peaks_inside)
        for _ in range(SAMPLES):
            point = {p: dice.uniform(v.lo, v.hi) for p, v in node.leaves.items()}
            sampled = adverse * float(node.value(point))
            slack = 1e-6 * max(abs(extreme.figure), abs(sampled)) + 1e-15
            assert sampled <= adverse * extreme.figure + slack, point
        tried += 1
    assert tried


def test_every_derived_quantity_is_used() -> None:
    used: set[str] = set()
    for entry in CATALOGUE.entries:
        used |= set(entry.check.applies) | _names(entry.check.inputs)
    for item in CATALOGUE.derived.values():
        for way in item.ways:
            used |= set(way.when) | _names(way.inputs)
        if item.bounds_from_above or item.bounds_from_below:
            used.add(item.name)
    for named in steps_of(CATALOGUE):
        used |= set().union(*(_names(amount.inputs) for amount in amounts(named.step)))
    for change in CATALOGUE.changes:
        used |= set().union(*(_names(follow.inputs) for follow in change.follows))
    used |= set(measurable_in(CATALOGUE.packages))
    assert set(CATALOGUE.derived) <= used


def _names(inputs: Any) -> set[str]:
    paths = (item.path for item in inputs.values() if isinstance(item, Input))
    return {path.removeprefix("all ").partition(":")[0] for path in paths}


COUNTS = {
    *("output_stage.parallel", "n_legs", "all n_legs", "rail_count", "channel_count"),
    *("loudspeaker.series", "loudspeaker.parallel", "battery.series", "battery.parallel"),
    *("battery.packs", "wiring.connector.contacts"),
}


@pytest.mark.parametrize("entry", EACH)
def test_a_count_is_not_one_in_every_case(entry: Entry) -> None:
    """A factor that is 1 in every case could be left out, or divide, unnoticed."""
    for name, item in entry.check.inputs.items():
        if isinstance(item, Input) and item.path in COUNTS:
            tried = {case.inputs[name] for case in entry.check.cases}
            assert tried - {1, (1,), (1, 1)}, f'{entry.name}: add a Case with "{name}": 2'

"""A requirement is a true bound: within it the check is not failed, a little beyond it is."""

from pathlib import Path

import pytest

from ampreview.linter.asking.requirements import Requirement, requirements_of
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.finding import Finding, Status
from ampreview.linter.judging.review import review
from ampreview.linter.quantities.quantity import Value, spell
from ampreview.linter.reading.loading import Spec, load_file

ROOT = Path(__file__).parents[2]
SPECS = [*(ROOT / "sample_specs").glob("*.yaml"), *(ROOT / "tests/published").glob("*/*.yaml")]
BEYOND = 0.02


def required() -> list[tuple[Spec, Requirement]]:
    """The bounds that every third spec leads to."""
    found = []
    for path in sorted(SPECS)[::3]:
        spec = load_file(path).spec
        assert spec is not None
        parts = requirements_of(review(spec, "prototype"))
        found += [(spec, item) for part in parts for item in part.bounds]
    return found


CASES = required()


@pytest.mark.parametrize(
    ("spec", "item"),
    CASES,
    ids=[f"{Path(s.file).stem} {x.paths[0]} {x.border} {x.check}" for s, x in CASES],
)
def test_beyond_the_bound_the_check_fails_and_within_it_does_not(
    spec: Spec, item: Requirement
) -> None:
    inside, step = item.border.value, BEYOND * abs(item.border.value)
    if item.border.unit == "degC":
        step = 1.0
    beyond = inside - step if item.border.at_least else inside + step
    assert answer(spec, item, beyond).status is not Status.MEETS
    within = answer(spec, item, inside)
    assert within.severity is None, within.message


def answer(spec: Spec, item: Requirement, x: float) -> Finding:
    """What the check that sets the bound says of the spec with a value for it."""
    own = next((p for p in item.paths if p.startswith(f"channels.{item.subject}.")), item.paths[0])
    changed = spec.with_values({own: spell(Value(x, x, x), item.border.unit)}).spec
    assert changed is not None
    entry = load().entry(item.check)
    assert entry is not None
    return Assessment(changed, load(), "prototype").judge(entry, item.subject)


def test_there_are_bounds_to_look_at() -> None:
    assert len(CASES) > 200

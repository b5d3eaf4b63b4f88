"""A requirement is a true bound: within it the check is not failed, a little beyond it is."""

from pathlib import Path

import pytest

from ampreview.linter.asking.requirements import Requirement, requirements_of
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.finding import Finding, Severity, Status
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
    if item.hard is not None and item.hard.beyond is not None:
        less = answer(spec, item, item.hard.value).severity
        assert less is None or less.rank > item.hard.beyond.rank, "worse within the outer bound"


def test_a_bound_says_what_happens_beyond_it() -> None:
    """A capacitor of less than 125 % of its voltage is minor, one of less than 100 % critical."""
    item = bounds_on("classroom-sketch", {}, "bulk.v_rated")[0]
    assert (str(item.border), item.border.beyond) == ("at least 28 V", Severity.MINOR)
    assert item.hard is not None
    assert (str(item.hard), item.hard.beyond) == ("at least 25.2 V", Severity.CRITICAL)


def test_bounds_that_no_value_can_keep_are_said_to_contradict_each_other() -> None:
    """Switches that take 34 ns to change over allow no 0.05 % of distortion from dead time."""
    silent = {f"channels.{name}.gate_drive.dead_time": None for name in ("left", "right")}
    low, high = bounds_on("choir-portable", {**silent, "claims.thd": "0.05 %"}, "dead_time")
    assert low.border.at_least
    assert not high.border.at_least
    assert (low.conflicts, high.conflicts) == (high.title, low.title)


def test_a_check_that_fails_with_any_value_is_named_beside_the_bound() -> None:
    """No plateau keeps a 30 V switch within its rating on 29.4 V with ringing."""
    item = bounds_on("foyer-proposal", {}, "device.v_gs_pl")[0]
    assert item.unmet == ("Switch voltage with ringing vs. rating",)


def bounds_on(name: str, changes: dict[str, str | None], path: str) -> list[Requirement]:
    """The bounds on one value that a sample leads to, with some of its values changed."""
    spec = load_file(ROOT / f"sample_specs/{name}.amp.yaml").spec
    assert spec is not None
    changed = spec.with_values(changes).spec if changes else spec
    assert changed is not None
    parts = requirements_of(review(changed, "prototype"))
    found = [x for part in parts for x in part.bounds if x.paths[0].endswith(path)]
    return sorted(found, key=lambda x: not x.border.at_least)


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

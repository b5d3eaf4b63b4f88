"""A requirement is a true bound: within it the check is not failed, a little beyond it is."""

from pathlib import Path

import pytest

from ampreview.linter.asking.requirements import Requirement, requirements_of
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.review import review
from ampreview.linter.quantities.quantity import Value, spell
from ampreview.linter.reading.loading import Spec

from ..reviews import FILES, SAMPLES, name_of, reviewed, spec_of
from ..sampling import few, some

BEYOND = 0.02


@pytest.mark.parametrize("path", some(FILES, 8), ids=name_of)
def test_beyond_the_bounds_the_checks_fail_and_within_them_they_do_not(path: Path) -> None:
    parts = requirements_of(reviewed(path, "prototype"))
    bounds = [item for part in parts for item in part.bounds]
    for item in few(bounds, 12, path.name):
        bound_is_true(spec_of(path), item)


def bound_is_true(spec: Spec, item: Requirement) -> None:
    told = f"{item.paths[0]} {item.border} {item.check}"
    inside, step = item.border.value, BEYOND * abs(item.border.value)
    if item.border.unit == "degC":
        step = 1.0
    beyond = inside - step if item.border.at_least else inside + step
    assert answer(spec, item, beyond).status is not Status.MEETS, told
    within = answer(spec, item, inside)
    assert within.severity is None, (told, within.message)
    if item.hard is not None and item.hard.beyond is not None:
        less = answer(spec, item, item.hard.value).severity
        assert less is None or less.rank > item.hard.beyond.rank, f"{told}: worse within"


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


def bounds_on(name: str, changes: dict[str, str | None], field: str) -> list[Requirement]:
    """The bounds on one value that a sample leads to, with some of its values changed."""
    path = SAMPLES / f"{name}.amp.yaml"
    changed = spec_of(path).with_values(changes).spec
    assert changed is not None
    found = review(changed, "prototype") if changes else reviewed(path, "prototype")
    parts = requirements_of(found)
    bounds = [x for part in parts for x in part.bounds if x.paths[0].endswith(field)]
    return sorted(bounds, key=lambda x: not x.border.at_least)


def answer(spec: Spec, item: Requirement, x: float) -> Finding:
    """What the check that sets the bound says of the spec with a value for it."""
    own = next((p for p in item.paths if p.startswith(f"channels.{item.subject}.")), item.paths[0])
    changed = spec.with_values({own: spell(Value(x, x, x), item.border.unit)}).spec
    assert changed is not None
    entry = load().entry(item.check)
    assert entry is not None
    return Assessment(changed, load(), "prototype").judge(entry, item.subject)


def test_there_are_bounds_to_look_at() -> None:
    found = requirements_of(reviewed(SAMPLES / "foyer-proposal.amp.yaml", "prototype"))
    assert sum(len(part.bounds) for part in found) > 10

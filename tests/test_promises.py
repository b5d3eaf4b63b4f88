"""Every remedy shown does what it promised, on randomly spoilt samples.

A sample is spoilt by scaling a few of its values; each remedy offered is then written into
the spec, the whole catalogue is run afresh, and its effects are counted again from scratch.
"""

import random
from pathlib import Path

import pytest

from ampreview.linter.changes.effect import answers_of, gravity
from ampreview.linter.changes.kinds import promises_in
from ampreview.linter.changes.plan import plan
from ampreview.linter.changes.remedy import Advisor
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.finding import CLEAR, Finding, Severity, Status
from ampreview.linter.judging.review import Review, review
from ampreview.linter.judging.weighing import rank
from ampreview.linter.quantities.quantity import Value, parse, spell
from ampreview.linter.reading.loading import Spec, load_file

from .sampling import few, some, tries

SCHEMA = load_schema()
field_of = SCHEMA.field_of
PROMISES = promises_in(load())

SAMPLES = Path(__file__).parents[1] / "sample_specs"
SOUND = ("choir-portable", "bird-call-pocket", "market-day-trolley", "playhouse-subwoofer")
SPOILT = 5
CHECKED = tries(6, swept=30)
pytestmark = pytest.mark.slow


def spoilt(name: str, seed: int) -> Spec:
    """A sample with a few numbers scaled by up to a factor of three."""
    dice = random.Random(f"{name} {seed}")
    loaded = load_file(SAMPLES / f"{name}.amp.yaml")
    assert loaded.spec is not None
    numbers = [
        path
        for path, value in loaded.spec.values.items()
        if isinstance(value, Value)
        and value.form == "plain"
        and value.nominal > 0.0
        and field_of(path).kind == "quantity"
        and field_of(path).unit not in ("degC", "%", "dB")
    ]
    changes = {}
    for path in dice.sample(sorted(numbers), SPOILT):
        value = loaded.spec.values[path]
        assert isinstance(value, Value)
        number = float(f"{value.nominal * 3 ** dice.uniform(-1, 1):.3g}")
        changes[path] = spell(Value(number, number, number), field_of(path).unit)
    done = loaded.spec.with_values(changes)
    assert done.spec is not None, done.refusals
    return done.spec


def is_worse(old: Finding | None, new: Finding) -> bool:
    """Whether a figure on the wrong side of its limit went further, by a fiftieth of its miss."""
    if old is None or old.severity is None:
        return False
    was, now = old.evidence, new.evidence
    if was.figure is None or now.figure is None or was.distance is None:
        return False
    miss = now.figure - was.figure if now.at_least else was.figure - now.figure
    return miss < -0.021 * abs(was.distance)


def severities(done: Review) -> dict[tuple[str, str], int]:
    return {key: rank(item) for key, item in answers_of(done.findings).items()}


@pytest.mark.parametrize("name", SOUND)
def test_remedies_keep_their_promises(name: str) -> None:
    start = review(spoilt(name, 1))
    advisor = Advisor(start)
    before = severities(start)
    old = answers_of(start.findings)
    for finding in few(start.failing(), CHECKED, name):
        remedy = advisor.best(finding)
        if remedy is not None:
            loaded = start.spec.with_values(dict(remedy.values))
            assert loaded.spec is not None
            after = review(loaded.spec)
            answers = answers_of(after.findings)
            key = (finding.check, finding.subject)
            still = answers.get(key)
            assert still is None or rank(still) > rank(finding), (key, remedy.changes)
            assert remedy.left == (still.severity if still else None) or remedy.kind == "slip"
            now = severities(after)
            keys = before.keys() | now.keys()
            appeared = {
                f"{c} ({s})"
                for c, s in keys
                if before.get((c, s), CLEAR) == CLEAR and now.get((c, s), CLEAR) < CLEAR
            }
            cured = {
                f"{c} ({s})"
                for c, s in keys
                if before.get((c, s), CLEAR) < CLEAR
                and now.get((c, s), CLEAR) == CLEAR
                and ((c, s) not in answers or answers[c, s].status is not Status.OPEN)
                and (c, s) != key
            }
            assert set(remedy.appeared) == appeared, (key, remedy.changes)
            assert set(remedy.cured) == cured, (key, remedy.changes)
            graver = [k for k in now if now[k] < before.get(k, CLEAR) and k[0] not in PROMISES]
            if remedy.kind not in ("slip", "promise"):
                assert all(gravity(answers[k]) > gravity(finding) for k in graver)
            worse = {k for k in now if now[k] < CLEAR and is_worse(old.get(k), answers[k])}
            assert {f"{c} ({s})" for c, s in worse} <= {*remedy.worsened, *remedy.appeared}
            assert all(outweighed(old[k], answers[k], finding) for k in worse if k in old)


@pytest.mark.parametrize("name", SOUND)
def test_the_plan_leads_where_it_says(name: str) -> None:
    start = review(spoilt(name, 3))
    done = plan(start)
    loaded = start.spec.with_values({p: v for s in done.steps for p, v in s.remedy.values})
    assert loaded.spec is not None
    after = review(loaded.spec)
    assert severities(after) == severities(done.after)
    assert after.verdict.released == done.after.verdict.released
    assert done.after.verdict.released or done.obstacles


def test_a_promise_that_comes_down_is_not_paid_for_in_strings_as_well() -> None:
    """Two strings would keep 38 h of the 48 h promised: the promise falls, the pack stays."""
    loaded = load_file(SAMPLES / "market-day-trolley-faulty.amp.yaml")
    assert loaded.spec is not None
    done = plan(review(loaded.spec))
    paths = [path for path in done.changes if "parallel" in path or "run_time" in path]
    assert paths == ["claims.run_time"]


def outweighed(old: Finding, new: Finding, finding: Finding) -> bool:
    """Whether what gets worse weighs less than what is cured, by little, or is promised only."""
    if old.check in PROMISES or rank(old) != rank(new) or old.evidence.distance is None:
        return True
    was, now = old.evidence.figure, new.evidence.figure
    assert was is not None
    assert now is not None
    little = abs(now - was) <= 0.05 * abs(old.evidence.distance)
    return little or gravity(new) > gravity(finding)


@pytest.mark.parametrize("name", some(["choir-portable-faulty", "playhouse-subwoofer-faulty"], 2))
def test_no_remedy_of_a_faulty_sample_makes_worse_what_fails_as_gravely(name: str) -> None:
    loaded = load_file(SAMPLES / f"{name}.amp.yaml")
    assert loaded.spec is not None
    start = review(loaded.spec)
    old, advisor = answers_of(start.findings), Advisor(start)
    tried: dict[object, dict[tuple[str, str], Finding]] = {}
    for finding in few(start.failing(), CHECKED, name):
        for remedy in advisor.first_hand(finding, 3):
            if remedy.changes not in tried:
                changed = start.spec.with_values(dict(remedy.values)).spec
                assert changed is not None
                tried[remedy.changes] = answers_of(review(changed).findings)
            now = tried[remedy.changes]
            worse = {
                key
                for key, item in now.items()
                if item.severity and key in old and is_worse(old[key], item)
            }
            assert {f"{c} ({s})" for c, s in worse} <= {*remedy.worsened}, remedy.changes
            assert all(outweighed(old[key], now[key], finding) for key in worse), remedy.changes


def test_the_distortion_of_the_foyer_is_not_cured_by_a_shorter_dead_time() -> None:
    """It is too short by more than 30 ns already: a miss of a limit of zero, told in seconds."""
    loaded = load_file(SAMPLES / "foyer-proposal.amp.yaml")
    assert loaded.spec is not None
    start = review(loaded.spec)
    margin = answers_of(start.findings)["dead-time-margin", "left"]
    assert (margin.severity, margin.evidence.margin) == (Severity.CRITICAL, None)
    assert margin.evidence.distance == margin.evidence.figure
    assert margin.evidence.distance is not None
    assert margin.evidence.distance < -30e-9
    remedy = Advisor(start).best(margin)
    assert remedy is not None
    dead_time = dict(remedy.changes)["channels.left.gate_drive.dead_time"]
    assert parse(dead_time, "s").nominal >= 70e-9

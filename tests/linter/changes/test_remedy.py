"""Remedies and plans on a small invented catalogue, where the right answer is known."""

from dataclasses import replace
from typing import Any

import pytest

from ampreview.linter.changes.plan import plan
from ampreview.linter.changes.rerun import Reruns
from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.check import (
    Assumption,
    AtLeast,
    AtMost,
    Check,
    Derived,
    Input,
    Lever,
    Source,
    Way,
)
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import Catalogue, Entry, load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.finding import Severity, Status
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import load_text
from ampreview.linter.reports.change_words import change_in_words

BOOK = Source("an invented handbook", "p. 1")
MAJOR = {"major": BOOK}
MAJOR_RATING = (Severity.MAJOR.rank, 1)


def check(figure: Any, inputs: dict[str, Input], limits: Any, *levers: Lever) -> Check:
    return Check(
        title="An invented question",
        figure=figure,
        unit="1",
        each="product",
        stake="rating",
        formula="",
        sentence="{figure}",
        inputs=inputs,
        limits=limits,
        sources=(BOOK,),
        cases=(),
        fails="",
        passes="",
        levers=levers,
    )


RAIL = Input("supply.v_rail", "V", "rail")
BULK = Input("supply.bulk.c", "F", "bulk capacitor")
RATING = Input("supply.bulk.v_rated", "V", "rating of the capacitor")


def hold_up(v: Any, c: Any) -> Any:
    """Stored energy in joule as a plain number."""
    return c * v * v / 2


def stress(v: Any, v_rated: Any) -> Any:
    return v / v_rated


HOLD_UP = check(
    hold_up,
    {"v": RAIL, "c": BULK},
    AtLeast(major="1", basis=MAJOR),
    Lever("supply.bulk.c", "E6"),
    Lever("supply.v_rail", "1 V"),
)
STRESS = check(
    stress,
    {"v": RAIL, "v_rated": RATING},
    AtMost(major="0.8", basis=MAJOR),
    Lever("supply.bulk.v_rated", ("25 V", "35 V", "50 V", "63 V")),
    Lever("supply.v_rail", "1 V"),
)
ROOM = check(
    lambda c, v_rated: c * v_rated,
    {"c": BULK, "v_rated": RATING},
    AtMost(major="0.2", basis=MAJOR),
    Lever("supply.bulk.c", "E6"),
)


def reviewed(supply: str, **checks: Check) -> Review:
    loaded = load_text(f"amplifier_spec: 1\nsupply: {supply}\n", "invented.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    entries = tuple(
        Entry(name.replace("_", "-"), "invented", "Prose.", item, "invented.py")
        for name, item in checks.items()
    )
    return review(loaded.spec, "prototype", catalogue=Catalogue(entries, {}, {}, load_schema()))


def changes(done: Review, name: str) -> list[tuple[tuple[str, str], ...]]:
    return [
        r.changes for item in done.failing() if item.check == name for r in item.advice.remedies
    ]


def test_a_lever_is_rounded_to_stock_on_the_safe_side() -> None:
    """1 J at 20 V takes 5000 uF; the next E6 value above is 6800 uF."""
    done = with_remedies(
        reviewed("{v_rail: 20 V, bulk: {c: 1000 uF, v_rated: 63 V}}", hold_up=HOLD_UP)
    )
    found = changes(done, "hold-up")
    assert (("supply.bulk.c", "6800 uF"),) in found
    assert (("supply.v_rail", "45 V"),) in found


def test_tolerance_goes_along_and_the_worst_end_counts() -> None:
    """With -20 % the nominal value must be 6250 uF, so 6800 uF still does; -30 %: 10 mF."""
    tight = reviewed("{v_rail: 20 V, bulk: {c: 1000 uF ± 20 %, v_rated: 63 V}}", hold_up=HOLD_UP)
    assert (("supply.bulk.c", "6800 uF ± 20 %"),) in changes(with_remedies(tight), "hold-up")
    wide = reviewed("{v_rail: 20 V, bulk: {c: 1000 uF ± 30 %, v_rated: 63 V}}", hold_up=HOLD_UP)
    (found,) = [x for x in changes(with_remedies(wide), "hold-up") if x[0][0] == "supply.bulk.c"]
    assert found[0][1] in ("10000 uF ± 30 %", "10 mF ± 30 %")


def test_a_rating_is_taken_from_its_ladder() -> None:
    done = with_remedies(reviewed("{v_rail: 30 V, bulk: {c: 1 mF, v_rated: 35 V}}", stress=STRESS))
    assert changes(done, "stress") == [(("supply.v_rail", "28 V"),)], "a setting comes first"
    rating = replace(STRESS, levers=STRESS.levers[:1])
    done = with_remedies(reviewed("{v_rail: 30 V, bulk: {c: 1 mF, v_rated: 35 V}}", stress=rating))
    assert changes(done, "stress") == [(("supply.bulk.v_rated", "50 V"),)]


def test_a_change_that_spoils_another_check_as_gravely_is_not_offered() -> None:
    """45 V would give the energy, but would overstress the 50 V capacitor."""
    start = reviewed(
        "{v_rail: 20 V, bulk: {c: 1 mF, v_rated: 50 V}}", hold_up=HOLD_UP, stress=STRESS
    )
    found = changes(with_remedies(start), "hold-up")
    assert found == [(("supply.bulk.c", "6800 uF"),)]


def test_a_new_value_milder_than_the_usual_middle_is_tried() -> None:
    """From 0.35 mF the energy is right, up to 1 mF there is room; the usual middle is 1.2 mF."""
    missing = {"c": Input("supply.bulk.c", "F", "bulk", Assumption("1 uF", "neutral", BOOK))}
    energy = check(lambda c: c, missing, AtLeast(major="0.35e-3", basis=MAJOR), HOLD_UP.levers[0])
    room = check(lambda c: c, missing, AtMost(major="1e-3", basis=MAJOR))
    done = with_remedies(reviewed("{v_rail: 20 V}", energy=energy, room=room))
    assert changes(done, "energy") == [(("supply.bulk.c", "470 uF"),)]


def test_effects_on_other_checks_are_told() -> None:
    """A lower rail cures the stress, and takes the stored energy further from its limit."""
    start = reviewed(
        "{v_rail: 45 V, bulk: {c: 0.1 mF, v_rated: 50 V}}",
        hold_up=replace(HOLD_UP, limits=AtLeast(minor="1", basis={"minor": BOOK})),
        stress=STRESS,
    )
    done = with_remedies(start)
    (finding,) = [item for item in done.failing() if item.check == "stress"]
    (rail,) = finding.advice.remedies
    assert rail.was == ("45 V",)
    assert rail.changes == (("supply.v_rail", "40 V"),)
    assert rail.worsened == ("hold-up (product)",)


def test_pairs_are_tried_when_no_single_change_works() -> None:
    """More capacitance needs a lower rating, or there is no room: both change together."""
    start = reviewed(
        "{v_rail: 20 V, bulk: {c: 1000 uF, v_rated: 50 V}}",
        hold_up=HOLD_UP,
        room=ROOM,
        stress=replace(STRESS, levers=()),
    )
    done = with_remedies(start)
    (finding,) = done.failing()
    assert finding.check == "hold-up"
    (pair,) = finding.advice.remedies
    assert {path for path, _ in pair.changes} == {"supply.bulk.c", "supply.v_rail"}
    assert "together" in finding.advice.remedy_note


def test_every_remedy_shown_does_what_it_says() -> None:
    start = reviewed(
        "{v_rail: 48 V, bulk: {c: 0.1 mF, v_rated: 50 V}}", hold_up=HOLD_UP, stress=STRESS
    )
    for item in with_remedies(start).failing():
        for remedy in item.advice.remedies:
            loaded = start.spec.with_values(dict(remedy.values))
            assert loaded.spec is not None
            again = review(loaded.spec, "prototype", catalogue=start.catalogue)
            answer = next(x for x in again.findings if x.check == item.check)
            assert answer.status is Status.MEETS


def test_a_trial_that_cures_one_finding_is_no_cure_of_another() -> None:
    """30 V is below 40 V and not below 20 V, in whichever order the two ask."""
    low, lower = (
        check(lambda v: v, {"v": RAIL}, AtMost(major=limit, basis=MAJOR)) for limit in ("40", "20")
    )
    start = reviewed("{v_rail: 50 V}", low=low, lower=lower)
    for keys in (("low", "lower"), ("lower", "low")):
        reruns = Reruns(start)
        found = {
            name: reruns.run_with({"supply.v_rail": "30 V"}, (name, "product"), MAJOR_RATING)
            for name in keys
        }
        assert found["low"] is not None
        assert found["lower"] is None


def test_the_plan_ends_in_a_release() -> None:
    start = reviewed(
        "{v_rail: 48 V, bulk: {c: 0.1 mF, v_rated: 50 V}}", hold_up=HOLD_UP, stress=STRESS
    )
    assert not start.verdict.released
    done = plan(start)
    assert done.after.verdict.released
    assert done.obstacles == ()
    loaded = start.spec.with_values({p: v for s in done.steps for p, v in s.remedy.values})
    assert loaded.spec is not None
    assert review(loaded.spec, "prototype", catalogue=start.catalogue).verdict.released


def test_the_plan_proves_what_stands_in_the_way() -> None:
    """The rail must be at most 20 V for one check and at least 40 V for the other."""
    lever = Lever("supply.v_rail", "1 V")
    low = check(lambda v: v, {"v": RAIL}, AtMost(major="20", basis=MAJOR), lever)
    high = check(lambda v: v, {"v": RAIL}, AtLeast(major="40", basis=MAJOR), lever)
    done = plan(reviewed("{v_rail: 10 V}", too_high=low, too_low=high))
    assert not done.after.verdict.released
    (text,) = done.obstacles
    assert text.startswith("too-low (product): no supply.v_rail in 2.5 V .. 200 V meets both")
    assert "too-low (from about 4" in text
    assert "too-high (up to about 1" in text or "too-high (up to about 2" in text


def of_a_lower_rail(**limit: Source) -> Review:
    """A rail of at most 20 V, and a run time of an hour for every three volts, as claimed."""
    high = check(lambda v: v, {"v": RAIL}, AtMost(**dict.fromkeys(limit, "20"), basis=limit))
    claim = check(
        lambda v, t: v * 3600 / 3 / t,
        {"v": RAIL, "t": Input("claims.run_time", "h", "run time")},
        AtLeast(major="1", basis=MAJOR),
        Lever("claims.run_time", "1 h"),
    )
    high = replace(high, levers=(Lever("supply.v_rail", "1 V"),))
    promised = replace(claim, stake="performance")
    return reviewed("{v_rail: 27 V}\nclaims: {run_time: 9 h}", high=high, promised=promised)


def test_the_plan_lowers_no_promise_for_what_its_own_change_brings_about() -> None:
    """A rail that destroys outweighs the run time; the claim is left for its owner to lower."""
    done = plan(of_a_lower_rail(critical=BOOK))
    assert dict(done.changes) == {"supply.v_rail": "20 V"}
    (text,) = done.obstacles
    assert text.startswith("promised (product): it takes a lowered promise")


def test_the_plan_makes_no_change_that_brings_about_as_much_as_it_ends() -> None:
    done = plan(of_a_lower_rail(major=BOOK))
    assert done.steps == ()
    (text,) = done.obstacles
    assert text.startswith("high (product): supply.v_rail to 20 V fixes it, but introduces prom")


def test_the_plan_is_the_same_every_time() -> None:
    start = reviewed(
        "{v_rail: 48 V, bulk: {c: 0.1 mF, v_rated: 50 V}}", hold_up=HOLD_UP, stress=STRESS
    )
    assert plan(start).changes == plan(start).changes


def test_the_plan_says_what_it_left_for_want_of_effort() -> None:
    """A bound that the first step uses up leaves the second finding untried, and named."""
    start = reviewed(
        "{v_rail: 48 V, bulk: {c: 0.1 mF, v_rated: 50 V}}", hold_up=HOLD_UP, stress=STRESS
    )
    assert len(plan(start).steps) == 2
    none, one = plan(start, most_computations=-1), plan(start, most_computations=0)
    assert (len(none.steps), len(one.steps)) == (0, 1)
    assert [text.partition(":")[0] for text in none.obstacles] == [
        f"{item.check} ({item.subject})" for item in start.failing()
    ]
    assert all("not looked into" in text for text in (*none.obstacles, *one.obstacles))
    assert none.after is start
    assert not one.after.verdict.released


def test_effort_is_alike_in_every_run() -> None:
    """A figure of two toleranced leaves: nominal, four ends alone, and the worst corner."""
    start = reviewed("{v_rail: 48 V ± 5 %, bulk: {c: 1 mF ± 20 %}}", hold_up=HOLD_UP)
    runs = [Assessment(start.spec, start.catalogue, "prototype") for _ in range(2)]
    assert [len(list(run.findings())) for run in runs] == [1, 1]
    assert runs[0].nodes.computations.number == runs[1].nodes.computations.number
    assert 6 <= runs[0].nodes.computations.number <= 10


NOTATIONS = {
    "an alias": "left: &side {SIDE}\n  right: *side",
    "a merge": "left: &side {SIDE}\n  right: {<<: *side}",
    "an alias below the channel": "left: {<<: &side {SIDE}}\n  right: *side",
    "sections by alias": (
        "left: {rated_power: &power 80 W, gate_drive: &drive {v_drv: 12 V}}\n"
        "  right: {rated_power: *power, gate_drive: *drive}"
    ),
    "written out": "left: {SIDE}\n  right: {SIDE}",
    "written out below each other": (
        "left:\n    rated_power: 80 W\n    gate_drive: {v_drv: 12 V}\n"
        "  right:\n    gate_drive: {v_drv: 12 V}\n    rated_power: 80 W"
    ),
}
SIDE = "rated_power: 80 W, gate_drive: {v_drv: 12 V}"


def of_sides(sides: str) -> Review:
    """Two channels that state the same, and a third that states less power."""
    inputs = {"p": Input("rated_power", "W", "power")}
    limits, lever = AtMost(major="50 W", basis=MAJOR), Lever("rated_power", "10 W")
    rated = replace(check(lambda p: p, inputs, limits, lever), each="channel", unit="W")
    text = f"amplifier_spec: 1\nchannels:\n  {sides}\n  rear: {{rated_power: 70 W}}\n"
    loaded = load_text(text, "invented.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    entries = (Entry("rated", "invented", "Prose.", rated, "invented.py"),)
    return review(loaded.spec, "prototype", catalogue=Catalogue(entries, {}, {}, load_schema()))


@pytest.mark.parametrize("notation", NOTATIONS)
def test_channels_that_state_the_same_change_together(notation: str) -> None:
    """However it is written: the remedy of one names both, cures both, and is found once."""
    done = with_remedies(of_sides(NOTATIONS[notation].replace("SIDE", SIDE)))
    remedies = {item.subject: item.advice.remedies[0] for item in done.failing()}
    both = (("channels.left.rated_power", "50 W"), ("channels.right.rated_power", "50 W"))
    assert remedies["left"].changes == remedies["right"].changes == both
    assert remedies["left"].cured == ("rated (right)",)
    assert remedies["right"].cured == ("rated (left)",)
    assert remedies["rear"].changes == (("channels.rear.rated_power", "50 W"),)
    new = [f"channels.{name}.loudspeaker.r_e" for name in ("left", "right")]
    assert Reruns(done).alike.paths(new[1]) == tuple(new)


def test_what_a_change_leaves_open_is_judged_when_it_is_asked_for() -> None:
    """Two checks can come out otherwise; each is computed at the first look, as if run afresh."""
    done = reviewed("{v_rail: 20 V, bulk: {c: 1 mF, v_rated: 22 V}}", stress=STRESS, room=ROOM)
    right = {"supply.bulk.v_rated": "35 V"}
    found = Reruns(done).whole(right)
    assert found is not None and set(found.answers.fresh) == set(found.answers)
    count = found.run.nodes.computations
    before = count.number
    stress = found.answers["stress", "product"]
    after_one = count.number
    assert after_one > before and found.answers["stress", "product"] is stress
    assert count.number == after_one
    changed = done.spec.with_values(right).spec
    assert changed is not None
    fresh = review(changed, "prototype", catalogue=done.catalogue)
    assert {(x.check, x.subject): x for x in fresh.findings} == dict(found.answers)


def test_remedies_of_holding_findings_alone_on_request() -> None:
    minor = replace(HOLD_UP, limits=AtLeast(minor="1", basis={"minor": BOOK}))
    start = reviewed(
        "{v_rail: 45 V, bulk: {c: 0.1 mF, v_rated: 50 V}}", hold_up=minor, stress=STRESS
    )
    done = {
        item.check: item.advice.remedies
        for item in with_remedies(start, only_holding=True).failing()
    }
    assert done["stress"]
    assert not done["hold-up"]


PACK = """
amplifier_spec: 1
milestone: prototype
supply: {{source: battery, rails: single{rail}}}
battery: {{chemistry: li-ion, series: 4}}
channels:
  main:
    rated_power: 10 W
    rated_load: 8 ohm
    output_stage:
      {{topology: full-bridge, devices: integrated, device: {{v_supply: 4.5 V .. 14.4 V}}}}
"""


def on_a_pack(rail: str) -> Review:
    loaded = load_text(PACK.format(rail=rail), "pack.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return review(loaded.spec)


def test_what_follows_from_the_pack_is_no_lever() -> None:
    """Four full cells give 16.8 V whatever a file says of the rail."""
    start = with_remedies(on_a_pack(""))
    item = next(x for x in start.failing() if x.check == "supply-above-recommended")
    for remedy in item.advice.remedies:
        changed = dict(remedy.changes)
        assert "supply.v_rail" not in changed or "supply.converter" in changed


@pytest.mark.parametrize(
    ("rail", "contradicts"),
    [(", v_rail: 13.5 V", True), (", v_rail: 16 V", False), (", v_rail: 12 V .. 16.8 V", False)],
)
def test_a_rail_that_the_pack_does_not_give_contradicts(rail: str, contradicts: bool) -> None:
    found = {item.check for item in on_a_pack(rail).failing()}
    assert ("stated-value-contradicts" in found) == contradicts


def test_a_change_that_only_opens_the_question_is_told_as_that() -> None:
    """50 V miss 40 V; 40 V meet it only while the second term is left out."""
    added = Input("supply.bulk.v_rated", "V", "added", Assumption("0 V", "floor", BOOK))
    total = check(
        lambda v, added: v + added,
        {"v": RAIL, "added": added},
        AtMost(major="40", basis=MAJOR),
        Lever("supply.v_rail", "1 V"),
    )
    (item,) = with_remedies(reviewed("{v_rail: 50 V}", total=total)).failing()
    (remedy,) = item.advice.remedies
    assert remedy.changes == (("supply.v_rail", "40 V"),)
    assert [missing.path for missing in remedy.lacks] == ["supply.bulk.v_rated"]


def test_a_change_is_joined_by_one_of_the_check_that_it_spoils() -> None:
    """48 V and 1 mF hold 1.15 J; 40 V hold 0.8 J, so the capacitor has to grow with it."""
    ceiling = check(
        lambda v: v, {"v": RAIL}, AtMost(major="40", basis=MAJOR), Lever("supply.v_rail", "1 V")
    )
    store = replace(HOLD_UP, levers=(Lever("supply.bulk.c", "E6"),))
    start = reviewed("{v_rail: 48 V, bulk: {c: 1 mF}}", ceiling=ceiling, store=store)
    (item,) = with_remedies(start).failing()
    (remedy,) = item.advice.remedies
    assert dict(remedy.changes) == {"supply.v_rail": "40 V", "supply.bulk.c": "1500 uF"}
    assert plan(start).after.verdict.released


def test_what_was_tried_in_vain_is_tried_again_after_the_last_step() -> None:
    """The rating is no way out for the gravest check until another one has raised it."""
    critical = {"critical": BOOK}
    first = check(
        lambda v, r: v / r,
        {"v": RAIL, "r": RATING},
        AtMost(critical="1", basis=critical),
        Lever("supply.v_rail", "1 V"),
    )
    floor = check(lambda v: v, {"v": RAIL}, AtLeast(critical="30", basis=critical))
    second = check(
        lambda r: r,
        {"r": RATING},
        AtLeast(major="35", basis=MAJOR),
        Lever("supply.bulk.v_rated", ("25 V", "35 V", "50 V")),
    )
    done = plan(
        reviewed("{v_rail: 36 V, bulk: {v_rated: 25 V}}", first=first, floor=floor, second=second)
    )
    assert [step.finding.check for step in done.steps] == ["second", "first"]
    assert done.after.verdict.released


def test_a_word_that_takes_the_question_away_is_a_remedy() -> None:
    split = replace(
        check(
            lambda v: v,
            {"v": RAIL},
            AtMost(major="20", basis=MAJOR),
            Lever("supply.rails", ("single",)),
        ),
        applies={"supply.rails": "split"},
    )
    (item,) = with_remedies(reviewed("{rails: split, v_rail: 30 V}", split=split)).failing()
    assert [remedy.changes for remedy in item.advice.remedies] == [(("supply.rails", "single"),)]


DEAD = Input("gate_drive.dead_time", "ns", "dead time")


def beside_a_dead_time(limit: str, severity: str, **more: Any) -> Review:
    """20 ns, 54.8 ns needed; a distortion that 8.4 ns would cure."""
    left = check(
        lambda t: t - 54.8e-9, {"t": DEAD}, AtLeast(**{severity: limit}, basis={severity: BOOK})
    )
    distortion = check(
        lambda t: t / 8.4e-9,
        {"t": DEAD},
        AtMost(major="1", basis=MAJOR),
        Lever("gate_drive.dead_time", "5 ns"),
    )
    checks = {"left": replace(left, unit="ns"), "distortion": replace(distortion, **more)}
    entries = tuple(
        Entry(name, "invented", "Prose.", replace(item, each="channel"), "invented.py")
        for name, item in checks.items()
    )
    text = "amplifier_spec: 1\nchannels: {main: {gate_drive: {dead_time: 20 ns}}}\n"
    loaded = load_text(text, "invented.amp.yaml")
    assert loaded.spec is not None
    return review(loaded.spec, "prototype", catalogue=Catalogue(entries, {}, {}, load_schema()))


@pytest.mark.parametrize("limit", ["0 ns", "1 ns"])
@pytest.mark.parametrize("severity", ["critical", "major"])
def test_no_change_makes_a_failing_check_worse(limit: str, severity: str) -> None:
    """5 ns would cure the distortion, and take -34.8 ns of dead time to -49.8 ns."""
    start = beside_a_dead_time(limit, severity)
    item = next(x for x in with_remedies(start).failing() if x.check == "distortion")
    assert item.advice.remedies == ()
    assert item.advice.remedy_note.startswith(
        "no gate_drive.dead_time in 1 ns .. 900 ns meets both"
    )


def test_a_milder_check_that_gets_worse_is_named() -> None:
    """A minor of dead time may yield to a major of distortion, but not unsaid."""
    start = beside_a_dead_time("0 ns", "minor")
    done = with_remedies(start)
    item = next(x for x in done.failing() if x.check == "distortion")
    (remedy,) = item.advice.remedies
    assert remedy.changes == (("channels.main.gate_drive.dead_time", "5 ns"),)
    assert remedy.worsened == ("left (main)",)
    left = next(x for x in done.findings if x.check == "left")
    assert change_in_words(done, (item,), remedy).endswith(f"; worsens {left.title}")


def test_a_failing_check_that_is_left_open_is_told_as_eased() -> None:
    """Without bulk capacitance the energy, 0.02 J where 1 J is due, could not be judged."""
    other = check(
        lambda v: v, {"v": RAIL}, AtMost(major="20", basis=MAJOR), Lever("supply.v_rail", "1 V")
    )
    start = reviewed("{v_rail: 48 V, bulk: {c: 0.1 mF}}", hold_up=HOLD_UP, other=other)
    reruns = Reruns(start)
    gone = {"supply.bulk.c": None, "supply.v_rail": "20 V"}
    key = ("other", "product")
    told = reruns.run_with(gone, key, MAJOR_RATING)
    assert told is not None
    effect = reruns.effects(told, key)
    assert (effect.cured, effect.eased) == ((), ("hold-up (product)",))


TOTAL = Derived(
    "total",
    "W",
    "product",
    "an invented power",
    (
        Way(lambda p: p, {"p": Input("supply.p_max", "W", "power")}, formula="p"),
        Way(
            lambda i, v: i * v,
            {"i": Input("supply.i_max", "A", "current"), "v": RAIL},
            formula="i v",
        ),
    ),
)


@pytest.mark.parametrize(
    ("supply", "offered"),
    [("{v_rail: 24 V, i_max: 5 A}", []), ("{v_rail: 24 V, p_max: 120 W}", ["200 W"])],
)
def test_a_second_statement_of_one_thing_is_no_change(supply: str, offered: list[str]) -> None:
    """5 A at 24 V are 120 W; 200 W stated beside them would win in silence."""
    power = check(
        lambda total: total,
        {"total": Input("total", "W", "power")},
        AtLeast(major="200 W", basis=MAJOR),
        Lever("supply.p_max", "10 W"),
    )
    loaded = load_text(f"amplifier_spec: 1\nsupply: {supply}\n", "invented.amp.yaml")
    assert loaded.spec is not None
    entries = (Entry("power", "invented", "Prose.", replace(power, unit="W"), "x.py"),)
    catalogue = Catalogue(entries, {"total": TOTAL}, {}, load_schema())
    done = with_remedies(review(loaded.spec, "prototype", catalogue=catalogue))
    assert [x[0][1] for x in changes(done, "power")] == offered


def test_a_change_contradicts_no_stated_value() -> None:
    """Seven cells give at most 29.4 V: no stated rail denies that; with twenty it goes along."""
    text = (
        "amplifier_spec: 1\nsupply: {source: battery, rails: single, v_rail: 29.4 V}\n"
        "battery: {chemistry: li-ion, series: 7}\n"
    )
    loaded = load_text(text, "pack.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    cells = {"v": RAIL, "n": Input("battery.series", "1", "cells")}
    either = check(lambda v, n: max(v / 4, n), cells, AtLeast(major="10", basis=MAJOR))
    entries = (Entry("either", "invented", "Prose.", either, "x.py"),)
    catalogue = replace(load(), entries=entries)
    reruns = Reruns(review(loaded.spec, "prototype", catalogue=catalogue))
    key, limit = ("either", "product"), Severity.MAJOR.rank
    assert reruns.run_with({"supply.v_rail": "40 V"}, key, limit) is None
    more = reruns.run_with({"battery.series": "20"}, key, limit)
    assert more is not None
    assert dict(more.changes) == {"battery.series": "20", "supply.v_rail": "84 V"}
    assert more.doubts == ()

"""Causes on a small invented catalogue, where the right answer is known by hand."""

from typing import Any

import pytest

from ampreview.linter.changes.causes import causes_of
from ampreview.linter.changes.faults import faults_of
from ampreview.linter.changes.stages import with_remedies
from ampreview.linter.changes.trial import GONE, Trials, share_lost
from ampreview.linter.check import AtLeast, AtMost, Check, Input, Lever, Limits, Source
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import Catalogue, Entry
from ampreview.linter.finding import Cause
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import load_text

BOOK = Source("an invented handbook", "p. 1")
RAIL = Input("supply.v_rail", "V", "rail")
BULK = Input("supply.bulk.c", "F", "bulk capacitor")
RATING = Input("supply.bulk.v_rated", "V", "rating of the capacitor")
LOCAL = Input("output_stage.v_c_local", "V", "rating of the local capacitor")
LADDER = ("25 V", "35 V", "50 V", "63 V", "100 V")
RAIL_LEVER = Lever("supply.v_rail", "1 V")


def most(major: str | None = None, critical: str | None = None) -> AtMost:
    return AtMost(critical, major, None, {"critical": BOOK, "major": BOOK})


def least(major: str) -> AtLeast:
    return AtLeast(None, major, None, {"major": BOOK})


def check(
    figure: Any, inputs: dict[str, Input], limits: Any, *levers: Lever, each: Any = "product"
) -> Check:
    assert isinstance(limits, Limits)
    return Check(
        title="An invented question",
        figure=figure,
        unit="1",
        each=each,
        stake="rating",
        formula="",
        sentence="{figure}",
        inputs=inputs,
        limits=limits,
        levers=levers,
        sources=(BOOK,),
        cases=(),
        fails="",
        passes="",
    )


def share(v: Any, v_rated: Any) -> Any:
    return v / v_rated


def energy(v: Any, c: Any) -> Any:
    return c * v * v / 2


def reviewed(spec: str, **checks: Check) -> Review:
    loaded = load_text(f"amplifier_spec: 1\n{spec}\n", "invented.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    entries = tuple(
        Entry(name.replace("_", "-"), "invented", "Prose.", item, "invented.py")
        for name, item in checks.items()
    )
    return review(loaded.spec, "prototype", catalogue=Catalogue(entries, {}, {}, load_schema()))


def told(spec: str, **checks: Check) -> tuple[Cause, ...]:
    return causes_of(with_remedies(reviewed(spec, **checks)))


def grouped(causes: tuple[Cause, ...]) -> list[list[str]]:
    return [list(dict.fromkeys(item.check for item in cause.findings)) for cause in causes]


STRESS = check(share, {"v": RAIL, "v_rated": RATING}, most(critical="1"),
               Lever("supply.bulk.v_rated", LADDER))  # fmt: skip


def test_a_slip_comes_first_with_all_that_is_gone_once_it_is_put_right() -> None:
    """2200 F for 2200 uF: the charge is right with the latter; the rating is another matter."""
    charge = check(lambda v, c: c * v, {"v": RAIL, "c": BULK}, most("1"))
    spec = "supply: {v_rail: 30 V, bulk: {c: 2200 F, v_rated: 25 V}}"
    causes = told(spec, stress=STRESS, charge=charge)
    assert grouped(causes) == [["value-outside-usual-range", "charge"], ["stress"]]
    slip, rating = causes
    assert (slip.kind, rating.kind) == ("suspect", "change")
    assert "2200 F; 2200 uF is likely" in slip.headline
    assert [dict(x.changes)["supply.bulk.c"] for x in slip.remedies] == [
        "{value: 2200 uF, from: estimate}"
    ]


def test_a_slip_that_explains_nothing_grave_waits_for_what_is_graver() -> None:
    spec = "supply: {v_rail: 30 V, bulk: {c: 2200 F, v_rated: 25 V}}"
    causes = told(spec, stress=STRESS)
    assert grouped(causes) == [["stress"], ["value-outside-usual-range"]]


def test_the_change_that_ends_most_is_the_cause() -> None:
    """At 30 V all three fail; 20 V ends them, and each rating would end but one."""
    limits = {
        f"low_{n}": check(lambda v: v, {"v": RAIL}, most(n), RAIL_LEVER) for n in ("24", "20")
    }
    both = check(share, {"v": RAIL, "v_rated": RATING}, most("0.8"), RAIL_LEVER,
                 Lever("supply.bulk.v_rated", LADDER))  # fmt: skip
    spec = "supply: {v_rail: 30 V, bulk: {c: 1 mF, v_rated: 35 V}}"
    (cause,) = told(spec, **limits, both=both)
    assert cause.kind == "change"
    assert sorted(x.check for x in cause.findings) == ["both", "low-20", "low-24"]
    assert cause.remedies[0].changes == (("supply.v_rail", "20 V"),)
    assert len(cause.remedies) == 1


def test_a_promise_that_would_be_lowered_is_not_told_before_the_part() -> None:
    """Either the source is raised from 40 W or 50 W are promised no more."""
    rated = {
        "p": Input("all rated_power", "W", "power"),
        "p_max": Input("supply.p_max", "W", "can"),
    }
    power = check(lambda p, p_max: sum(p) / p_max, rated, most("1"),
                  Lever("rated_power", "5 W"), Lever("supply.p_max", "10 W"))  # fmt: skip
    spec = "supply: {p_max: 40 W}\nchannels: {main: {rated_power: 50 W}}"
    (cause,) = told(spec, power=power)
    assert cause.remedies[0].changes == (("supply.p_max", "50 W"),)
    assert [dict(x.changes) for x in cause.alternatives] == [{"channels.main.rated_power": "40 W"}]


def test_parts_rated_below_the_same_voltage_are_one_cause() -> None:
    """30 V on 25 V and on 20 V; the third part sees 24 V of its 20 V, which is another story."""
    local = check(share, {"v": RAIL, "v_rated": LOCAL}, most(critical="1"),
                  Lever("output_stage.v_c_local", LADDER), each="channel")  # fmt: skip
    spec = (
        "supply: {v_rail: 30 V, bulk: {c: 1 mF, v_rated: 25 V}}\n"
        "channels: {main: {output_stage: {v_c_local: 20 V}}}"
    )
    (cause,) = told(spec, stress=STRESS, local=local)
    assert cause.headline.startswith("Rated too low for 30 V: ")
    assert "bulk capacitors (25 V)" in cause.headline and "20 V" in cause.headline
    other = check(lambda v, v_rated: 0.8 * v / v_rated, {"v": RAIL, "v_rated": LOCAL},
                  most(critical="1"), Lever("output_stage.v_c_local", LADDER),
                  each="channel")  # fmt: skip
    assert len(told(spec, stress=STRESS, other=other)) == 2


def test_equal_channels_are_one_fault() -> None:
    local = check(share, {"v": RAIL, "v_rated": LOCAL}, most(critical="1"), each="channel")
    spec = (
        "supply: {v_rail: 30 V}\n"
        "channels: {left: {output_stage: {v_c_local: 20 V}},"
        " right: {output_stage: {v_c_local: 20 V}}}"
    )
    done = reviewed(spec, local=local)
    assert len(done.failing()) == 2
    (fault,) = faults_of(done.failing())
    assert [item.subject for item in fault.findings] == ["left", "right"]
    twins = Trials(done).twins("channels.left.output_stage.v_c_local")
    assert twins == tuple(f"channels.{x}.output_stage.v_c_local" for x in ("left", "right"))
    (cause,) = causes_of(with_remedies(done))
    assert len(cause.findings) == 2


@pytest.mark.parametrize(
    ("rail", "share"),
    [("25 V", GONE), ("27.5 V", 0.5), ("30 V", 0.0), ("32.5 V", -0.5), ("20 V", GONE)],
)
def test_the_share_of_a_miss_that_a_change_takes_away(rail: str, share: float) -> None:
    """30 V miss 25 V by 5 V: at 27.5 V half of the miss is gone, at 32.5 V half is added."""
    low = check(lambda v: v, {"v": RAIL}, most("25"), RAIL_LEVER)
    before, after = (reviewed(f"supply: {{v_rail: {x}}}", low=low) for x in ("30 V", rail))
    old, new = (next(x for x in done.findings if x.check == "low") for done in (before, after))
    assert share_lost(old, new) == pytest.approx(share)
    outcome = Trials(before).outcome({"supply.v_rail": rail}, faults_of(before.failing()))
    assert sum(outcome.shares.values()) == pytest.approx(share)


def test_what_nothing_ends_is_tried_and_told_as_not_proven() -> None:
    """More capacitance ends the sag but bursts the room: tried on the sag alone, and said so."""
    sag = check(energy, {"v": RAIL, "c": BULK}, least("1"), Lever("supply.bulk.c", "E6"))
    room = check(lambda c: c, {"c": BULK}, most("2e-3"))
    spec = "supply: {v_rail: 20 V, bulk: {c: 1000 uF, v_rated: 63 V}}"
    (cause,) = told(spec, sag=sag, room=room)
    assert cause.remedies == ()
    assert "supply.bulk.c to 6800 uF clears it" in cause.note


def test_a_doubtful_value_that_explains_nothing_comes_after_what_is_grave() -> None:
    spec = "supply: {v_rail: 30 V, bulk: {c: 2200 F, v_rated: 25 V}}"
    checks = [[x.check for x in cause.findings] for cause in told(spec, stress=STRESS)]
    assert checks == [["stress"], ["value-outside-usual-range"]]


def test_a_spec_without_failures_has_no_cause() -> None:
    assert told("supply: {v_rail: 20 V, bulk: {c: 1 mF, v_rated: 25 V}}", stress=STRESS) == ()


def test_two_ends_of_one_range_are_one_change() -> None:
    """From -5 to 50 degC: from 0 and up to 45 are asked for, which is one window."""
    cold = check(lambda t: t - 273.15, {"t": Input("battery.charger.t_window:low", "degC", "low")},
                 least("0"), Lever("battery.charger.t_window", "5 K"))  # fmt: skip
    hot = check(lambda t: t - 273.15, {"t": Input("battery.charger.t_window:high", "degC", "high")},
                most("45"), Lever("battery.charger.t_window", "5 K"))  # fmt: skip
    (cause,) = told("battery: {charger: {t_window: -5 degC .. 50 degC}}", cold=cold, hot=hot)
    assert [dict(x.changes) for x in cause.remedies] == [
        {"battery.charger.t_window": "0 degC .. 45 degC"}
    ]


def test_a_value_that_is_merely_unusual_is_a_suspect_where_much_hangs_on_it() -> None:
    """790 V is beyond the usual rails by no prefix; five of its checks fail, or four."""
    spec = "supply: {v_rail: 790 V, bulk: {c: 1 mF, v_rated: 100 V}}"
    low = check(lambda v: v, {"v": RAIL}, most("100"))
    five, four = ({f"low_{n}": low for n in range(many)} for many in (5, 4))
    (cause,) = told(spec, **five)
    assert cause.kind == "suspect"
    assert len(cause.findings) == 6
    assert all(x.kind != "suspect" for x in told(spec, **four))

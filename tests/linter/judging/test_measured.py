"""Measurements against the model.  All readings here are invented; published ones stand in
``tests/published/test_measured.py``.

The board is the published one of that folder, of which the idle loss is known in part only.
"""

import math
from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType
from typing import Any

import pytest

from ampreview.linter.cli import main
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.graph import Graph
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.judging.boards import several
from ampreview.linter.judging.consistency import built_in_findings
from ampreview.linter.judging.measured import Compared, comparisons
from ampreview.linter.judging.review import Review, review
from ampreview.linter.judging.standing_in import with_stand_ins
from ampreview.linter.reading.loading import Spec, load_file, load_text
from ampreview.linter.reports.measured_words import in_words
from ampreview.rules.measurable import MEASURABLE

ROOT = Path(__file__).parents[3]
BOARD = ROOT / "tests/published/designs/split-half-bridge-35v.amp.yaml"
RATED = "place: left, supply: 35 V, load: 4 ohm, power: 120 W"
NO_CHANGE: Mapping[str, Any] = MappingProxyType({})
RIGHT = RATED.replace("left", "right")


def spec_of(*readings: str, old: str = "", new: str = "") -> Spec:
    text = BOARD.read_text(encoding="utf-8").replace(old, new) if old else BOARD.read_text("utf-8")
    items = "".join(f"\n  - {{{item}}}" for item in readings)
    loaded = load_text(f"{text}measured:{items}\n", "board.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return loaded.spec


def compared(reading: str, old: str = "", new: str = "") -> Compared:
    spec = spec_of(reading, old=old, new=new)
    (found,) = comparisons(spec, load(), spec.measurements)
    return found


def reviewed(*readings: str) -> Review:
    return review(spec_of(*readings), "production")


def answer(found: Review, check: str, subject: str = "left") -> Finding:
    return next(x for x in found.findings if (x.check, x.subject) == (check, subject))


def test_every_measurable_figure_and_condition_is_one_of_the_program() -> None:
    known = load()
    fields = load_schema().fields
    for item in MEASURABLE:
        names = {*known.derived, *fields, *(entry.name for entry in known.entries)}
        assert item.figure in names
        for name, paths in item.conditions.items():
            assert fields[f"measured[].{name}"].kind == "quantity"
            assert all(path in fields or path in known.derived for path in paths)
        if item.stands_in:
            quantity = known.derived.get(item.figure)
            assert (quantity.stated_at if quantity else item.figure) in fields


@pytest.mark.parametrize(
    ("reading", "why"),
    [
        ("figure: p_idel, place: left, value: 2 W", "did you mean p_idle"),
        ("figure: t_junction_rated, place: left, value: 90 degC", "none that is read off a board"),
        ("figure: p_idle, value: 2 W, supply: 35 V", "place is left or right"),
        ("figure: p_idle, place: left, value: 2 V, supply: 35 V", "value: "),
        ("figure: p_idle, place: left, value: 2, supply: 35 V", "value: "),
        ("figure: p_idle, place: left, value: 2 W, supply: 35 V, date: 9999-01-01", "to come"),
    ],
)
def test_a_reading_that_nobody_can_use_says_why_and_counts_for_nothing(
    reading: str, why: str
) -> None:
    found = compared(reading)
    assert found.answer == "unreadable"
    assert why in found.why
    assert not spec_after(reading).stood_in


def spec_after(*readings: str, old: str = "", new: str = "") -> Spec:
    spec = spec_of(*readings, old=old, new=new)
    return with_stand_ins(spec, load(), spec.measurements)


@pytest.mark.parametrize(
    ("conditions", "why"),
    [
        ("", "supply is not given"),
        (", supply: 50 V", "measured at supply 50 V; the model has 35 V"),
    ],
)
def test_other_conditions_are_not_compared_and_stand_in_for_nothing(
    conditions: str, why: str
) -> None:
    reading = f"figure: p_idle, place: left, value: 2.4 W{conditions}"
    found = compared(reading)
    assert found.answer == "not compared"
    assert why in found.why
    assert not spec_after(reading).stood_in


def test_the_model_is_computed_at_the_rail_that_was_measured() -> None:
    """The ripple of a half bridge at rest is V / (2 f L): V is ONE rail, 36 V of 28 .. 45 V."""
    rails = ("v_rail: 35 V", "v_rail: 28 V .. 45 V")
    reading = "figure: ripple_idle, place: left, supply: 36 V, value: "
    found = compared(f"{reading}2 A", *rails)
    assert found.nominal == pytest.approx(36 / (2 * 400e3 * 22e-6))
    assert found.answer == "agrees"
    assert compared(f"{reading}1.6 A", *rails).answer == "differs"  # that of the lowest rail


def test_each_explanation_makes_up_the_difference_by_itself() -> None:
    """Second method: a loss that adds to the sum is the difference; a ratio is the ratio."""
    loss = compared("figure: p_idle, place: left, value: 2.4 W, supply: 35 V")
    by = {x.path.rpartition(".")[2]: x for x in loss.explanations}
    assert loss.answer == "part only"
    assert loss.nominal is not None
    for name in ("p_core", "p_auxiliary"):
        assert by[name].needed == pytest.approx(2.4 - loss.nominal, rel=1e-6)
        assert by[name].kind == "left out"
    assert [x.kind for x in loss.explanations[:3]] == ["left out"] * 3
    assert "q_oss_swing" in by
    ripple = compared("figure: ripple_idle, place: left, value: 4 A, supply: 35 V")
    assert ripple.answer == "differs"
    needed = {x.path: x.needed for x in ripple.explanations}
    assert ripple.nominal is not None
    assert needed["channels.left.filter.inductor.l"] == pytest.approx(22e-6 * ripple.nominal / 4)
    distances = [x.distance for x in ripple.explanations]
    assert distances == sorted(distances)


def test_what_an_open_answer_only_assumed_is_closed_by_a_reading() -> None:
    readings = [f"figure: v_overshoot, {place}, value: 8 V ± 1 V" for place in (RATED, RIGHT)]
    assert answer(reviewed(), "device-voltage-ringing").status is Status.OPEN
    found = reviewed(*readings)
    assert answer(found, "device-voltage-ringing").status is Status.MEETS
    value = found.spec.values["channels.left.output_stage.v_overshoot"]
    assert (value.lo, value.hi, value.provenance) == (7.0, 9.0, "measured")  # type: ignore[union-attr]
    assert found.measured[0].band == pytest.approx((17.5, 17.5))  # as the model assumes it


def test_a_stand_in_breaks_a_limit_like_a_statement() -> None:
    found = answer(reviewed(f"figure: v_overshoot, {RATED}, value: 40 V"), "device-voltage-ringing")
    assert found.severity is Severity.CRITICAL  # 70 V and 40 V on a part of 100 V


def test_a_reading_in_the_middle_of_a_range_stands_in_for_nothing() -> None:
    rails = ("v_rail: 35 V", "v_rail: 28 V .. 45 V")
    middle = "figure: p_idle, place: left, value: 2.4 W, supply: 36 V"
    ends = [middle.replace("36 V", end) for end in ("28 V", "45 V")]
    assert not spec_after(middle, old=rails[0], new=rails[1]).stood_in
    assert not spec_after(ends[0], old=rails[0], new=rails[1]).stood_in
    assert spec_after(*ends, old=rails[0], new=rails[1]).stood_in


def test_a_loss_below_what_the_known_terms_add_up_to_stands_in_for_nothing() -> None:
    """The charge of two gates alone takes 0.3 W from the rail: 20 mW is a slip of the meter."""
    reading = "figure: p_idle, place: left, supply: 35 V, value: 20 mW"
    assert compared(reading).answer == "differs"
    assert not spec_after(reading).stood_in


def test_a_stated_value_is_not_replaced_but_an_estimate_is() -> None:
    reading = "figure: gate_drive.dead_time, place: left, value: 43 ns"
    line = "dead_time: {min: 40 ns, max: 45 ns}"
    assert not spec_after(reading).stood_in
    guess = "dead_time: {value: 60 ns, from: estimate}"
    assert spec_after(reading, old=line, new=guess).stood_in


# A bench with two loudspeakers, closed, in 10 to 32 degC of air; 24 V, 10 W into 8 ohm.
BENCH = ROOT / "sample_specs/museum-boards/bench/bench.amp.yaml"
AIR = "figure: t_air_inside, supply: 24 V, load: 8 ohm, crest_factor: 14 dB, other_loads: 3 W"
TRIP = "channels.left.output_stage.over_current.i_trip"


def bench(reading: str, changes: Mapping[str, Any] = NO_CHANGE) -> tuple[Spec, Compared]:
    """The bench with what a reading of it stands in for, and the reading beside its model."""
    spec = load_file(BENCH).spec
    assert spec is not None
    spec = spec.with_values(changes).spec
    assert spec is not None
    read = load_text(f"amplifier_spec: 1\nmeasured: [{{{reading}}}]\n", "bench.yaml").spec
    assert read is not None
    after = with_stand_ins(spec, load(), read.measurements)
    (found,) = comparisons(after, load(), read.measurements)
    return after, found


@pytest.mark.parametrize(
    ("conditions", "ambient", "stands"),
    [
        ("power: 10 W, ambient: 32 degC", "10 degC .. 32 degC", True),
        ("power: 10 W, ambient: 25 degC", "10 degC .. 32 degC", False),  # a cold room
        ("power: 10 W, ambient: 28 degC", "10 degC .. 32 degC", False),
        ("power: 10 W, ambient: 32 degC", None, False),  # the trade's default reaches 40 degC
        ("power: 5 W, ambient: 32 degC", "10 degC .. 32 degC", False),  # half of the heat
    ],
)
def test_air_that_was_read_cold_or_at_a_light_load_stands_in_for_nothing(
    conditions: str, ambient: str | None, stands: bool
) -> None:
    changes = {"environment.ambient": ambient}
    after, found = bench(f"{AIR}, {conditions}, value: 41 degC ± 2 K", changes)
    assert ("thermal.t_air_inside" in after.values) is stands
    if stands:
        assert found.band is not None
        assert found.band[1] < 273.15 + 39  # the model's own, which the reading does not change
        told = answer(review(after, "prototype"), "enclosure-air", "product")
        assert told.evidence.figure == pytest.approx(105 - 43, abs=0.2)  # of 105 degC capacitors


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ("", "read without sun and other loads"),
        (", sun: 900 W/m2", "read without other loads"),
        (", other_loads: 3 W", "read without sun"),
        (", sun: 900 W/m2, other_loads: 3 W", ""),
    ],
)
def test_air_that_was_read_without_the_sun_says_nothing_of_a_sunny_box(
    more: str, said: str
) -> None:
    """It is held against the box as it stood on the bench, and the model of the use stays."""
    changes = {"environment.ambient": "10 degC .. 32 degC", "environment.solar": "900 W/m2"}
    dark = AIR.replace(", other_loads: 3 W", "")
    reading = f"{dark}, power: 10 W, ambient: 32 degC, value: 50 degC{more}"
    after, found = bench(reading, changes)
    assert ("thermal.t_air_inside" in after.values) is (not said)
    assert in_words(found).endswith(f"not taken over: {said}" if said else "")
    assert found.band is not None
    assert (found.band[1] > 273.15 + 42) is ("sun:" in more)  # 39 degC at most in the shade


@pytest.mark.parametrize(("value", "stands"), [("86 % .. 88 %", True), ("98.5 % .. 99.5 %", False)])
def test_an_efficiency_above_what_the_known_losses_leave_stands_in_for_nothing(
    value: str, stands: bool
) -> None:
    """10 W into 8 ohm: a bridge of twice 0.09 ohm alone takes 10 W x 0.18 / 8, more than 2 %."""
    path = "channels.left.output_stage.efficiency"
    at = "place: left, supply: 24 V, load: 8 ohm, power: 10 W"
    after, found = bench(f"figure: efficiency_by_losses, {at}, value: {value}", {path: None})
    assert found.band is not None
    assert found.band[1] < 1 / (1 + 0.18 / 8)
    assert (path in after.values) is stands
    assert bool(found.doubt) is not stands


RINGING = "figure: v_overshoot, place: left, supply: 24 V, load: 8 ohm, power: 10 W, value: "
OVERSHOOT = "channels.left.output_stage.v_overshoot"
GUESS = {OVERSHOOT: {"value": "3 V", "from": "estimate"}}


@pytest.mark.parametrize("stated", [NO_CHANGE, GUESS])
@pytest.mark.parametrize(("value", "stands"), [("0.7 V", False), ("1 V", True), ("6 V", True)])
def test_a_ringing_far_below_what_the_loop_gives_is_doubted(
    stated: Mapping[str, Any], value: str, stands: bool
) -> None:
    """2 L I / t with 3 nH, 9 ns and the 2.34 to 2.46 A of the leg; an estimate is no measure."""
    after, found = bench(f"{RINGING}{value}", stated)
    assert found.band == pytest.approx((2 * 3 / 9 * 2.34, 2 * 3 / 9 * 2.46), rel=0.01)
    assert found.answer == "differs"
    assert bool(found.doubt) is not stands
    assert (OVERSHOOT in after.stood_in) is stands
    assert not any(x.path == OVERSHOOT for x in found.explanations)
    if stands:  # one board, with the spread of the series in its favour and against it
        read, band = after.values[OVERSHOOT], found.band
        assert read.hi / read.lo > 1.02 / 0.98 * band[1] / band[0] * 0.999  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("loop", "value", "is_told"),
    [
        ("3 nH", "0.7 V", True),  # at least 0.78 V of the 1.56 V of an undamped loop are left
        ("3 nH", "0.9 V", False),
        ({"value": "3 nH", "from": "estimate"}, "0.7 V", False),  # a reading is worth more
        (None, "0.7 V", False),  # a rule of thumb
    ],
)
def test_a_statement_far_below_what_firm_ones_give_contradicts_them(
    loop: object, value: str, is_told: bool
) -> None:
    spec = load_file(BENCH).spec
    assert spec is not None
    changes = {"l_loop": loop, "v_overshoot": {"value": value, "from": "measured"}}
    done = spec.with_values({f"channels.left.output_stage.{x}": y for x, y in changes.items()}).spec
    assert done is not None
    told = built_in_findings(done, Graph(done, load().derived))
    assert any("v_overshoot is stated" in x.message for x in told) is is_told


def test_a_rule_of_thumb_doubts_no_reading() -> None:
    """Without the inductance of the loop only a share of the swing is left to compare with."""
    after, found = bench(f"{RINGING}0.7 V", {"channels.left.output_stage.l_loop": None})
    assert found.answer == "differs"
    assert OVERSHOOT in after.stood_in


@pytest.mark.parametrize(
    "wide", ["supply: 5 V .. 24 V", "load: 8 ohm ± 50 %", "power: 1 W .. 10 W"]
)
def test_a_condition_that_is_a_range_is_that_of_no_reading(wide: str) -> None:
    name = wide.partition(":")[0]
    at = {"supply": "supply: 24 V", "load": "load: 8 ohm", "power": "power: 10 W"} | {name: wide}
    after, found = bench(
        f"figure: v_overshoot, place: left, value: 1.6 V, {', '.join(at.values())}"
    )
    assert (found.answer, OVERSHOOT in after.values) == ("not compared", False)
    assert f"it needs one {name}" in found.why


def test_a_trip_of_one_board_is_typical_of_a_series_unless_its_spread_is_known() -> None:
    reading = "figure: output_stage.over_current.i_trip, place: left, value: 6.1 A ± 4 %"
    after, found = bench(reading, {TRIP: None})
    value = after.values[TRIP]
    assert (value.sides, value.provenance) == ({"typ"}, "measured")  # type: ignore[union-attr]
    assert found.answer == "not compared"
    told = answer(review(after, "production"), "trip-above-music")
    assert (told.status, told.advice.missing[0].path) == (Status.OPEN, TRIP)
    after, found = bench(reading, {TRIP: {"value": "6 A ± 15 %", "from": "estimate"}})
    value = after.values[TRIP]
    assert value.lo == pytest.approx(6.1 * 0.96 * 0.85, rel=1e-3)  # type: ignore[union-attr]
    assert value.hi == pytest.approx(6.1 * 1.04 * 1.15, rel=1e-3)  # type: ignore[union-attr]
    assert found.band == pytest.approx((5.1, 6.9))  # the estimate, not the reading itself


@pytest.mark.parametrize(
    ("read", "status"),
    [("390 ms", Status.MEETS), ("450 ms", Status.OPEN)],  # a quarter more: 488 ms and 563 ms
)
def test_a_trip_of_one_board_near_a_grave_limit_is_open_at_prototype(read, status) -> None:
    """DC detection within half a second: another board of the series may be slower."""
    path = "protection.dc_detector.t_trip"
    spec = load_file(ROOT / "sample_specs/choir-portable.amp.yaml").spec
    assert spec is not None
    told = spec.with_values({path: {"typ": read, "from": "measured"}}).spec
    printed = spec.with_values({path: {"typ": read}}).spec
    assert told is not None
    assert printed is not None
    found = answer(review(told, "prototype"), "dc-detector-delay", "product")
    assert found.status is status
    assert answer(review(printed, "prototype"), "dc-detector-delay", "product").status is (
        Status.MEETS
    )


@pytest.mark.parametrize(("value", "agrees"), [("4.5 A", False), ("6.5 A", True), ("20 A", True)])
def test_a_side_that_a_data_sheet_does_not_print_is_not_made_up(value: str, agrees: bool) -> None:
    """The trip is printed from 5 A up, typically 6 A: nobody prints a most."""
    _, found = bench(f"figure: output_stage.over_current.i_trip, place: left, value: {value}")
    assert (found.answer == "agrees") is agrees
    assert found.band == (5.0, math.inf)


@pytest.mark.parametrize(("value", "agrees"), [("4 mV", True), ("14 mV", False)])
def test_a_most_is_held_by_all_that_is_less(value: str, agrees: bool) -> None:
    """The spec allows 12 mV of offset."""
    _, found = bench(f"figure: dc_offset, place: left, value: {value}")
    assert (found.answer == "agrees") is agrees
    assert found.band == (-math.inf, pytest.approx(0.012))


def test_a_figure_beyond_the_limit_of_its_check_is_a_finding() -> None:
    wide = "figure: carrier-residual, place: left, supply: 35 V, value: 12 %"
    found = answer(reviewed(wide), "measured-beyond-limit")
    assert found.severity is Severity.MAJOR  # the check's limit is 8 %
    assert found.evidence.figure == pytest.approx(0.1224)  # 2 % of the reading in doubt
    told = [x.check for x in reviewed(wide.replace("12 %", "2 %")).findings]
    assert "measured-beyond-limit" not in told


def test_boards_that_differ_more_than_their_tolerances_are_told() -> None:
    """The carrier of 375 to 425 kHz alone moves the ripple by 12.5 % of 1.99 A."""
    reading = "figure: ripple_idle, place: left, supply: 35 V"
    for values, wider in (((1.95, 2.05), False), ((1.6, 2.4), True)):
        items = [f"{reading}, board: {n}, value: {x} A" for n, x in enumerate(values)]
        spec = spec_of(*items)
        (boards,) = several(comparisons(spec, load(), spec.measurements))
        assert boards.allowed == pytest.approx(0.125, rel=0.02)
        assert boards.is_wider is wider
        assert boards.spread == pytest.approx((values[1] - values[0]) / 2)


def test_a_file_beside_the_spec_is_read_shown_and_hashed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    beside = tmp_path / "bench.yaml"
    reading = "{figure: p_idle, place: left, value: 2.4 W, supply: 35 V, board: 3}"
    beside.write_text(f"amplifier_measured: 1\nmeasured: [{reading}]\n", encoding="utf-8")
    given = ["assess", "--no-house", "--measured", str(beside), str(BOARD)]
    main(given)
    page = " ".join(capsys.readouterr().out.split())
    assert "part only p_idle (left), board 3: 2.4 W; the spec accounts for 344 mW" in page
    assert "explained by output_stage.p_auxiliary 2.04 W, or p_core 2.04 W" in page
    for kind in ("markdown", "json"):
        main([*given, "--report", kind])
        told = capsys.readouterr().out
        assert "part only" in told
        assert "measurements" in told  # among what the report rests on
    beside.write_text("amplifier_measured: 1\nmeasured: [{figure: p_idle}]\n", encoding="utf-8")
    assert main(given) == 2

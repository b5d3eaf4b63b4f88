"""At production the figures that decide must have been measured on a board.

The sample is a bench with two channels alike: no heatsink, no over-voltage trip, and a part of
which nobody tells the resistance from junction to case.
"""

from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType
from typing import Any

import pytest

from ampreview.linter.asking.letter import letter_of
from ampreview.linter.check import Milestone
from ampreview.linter.evaluation.bringup_steps import steps_of
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.judging.criteria import Criteria
from ampreview.linter.judging.review import Review, review
from ampreview.linter.judging.unmeasured import is_to_measure
from ampreview.linter.reading.keyed_file import Measured, Permissions
from ampreview.linter.reading.loading import load_file, load_text
from ampreview.linter.reports.letter_text import letter_text
from ampreview.rules.measurable import MEASURABLE, QUESTIONS

BENCH = Path(__file__).parents[3] / "sample_specs/museum-boards/bench/bench.amp.yaml"
NO_CHANGE: Mapping[str, Any] = MappingProxyType({})
I_TRIP = "output_stage.over_current.i_trip"
ROOM = "ambient: 25 degC, other_loads: 3 W"
AIR = f"figure: t_air_inside, supply: 24 V, load: 8 ohm, crest_factor: 14 dB, {ROOM}"
R_TH_JC = {f"channels.{x}.output_stage.device.r_th_jc": "2 K/W" for x in ("left", "right")}
ALL = {
    "power (left)", "idle (left)", "heat (product)", "over-current-trip (left)",
    "under-voltage-trip (product)", "over-temperature-trip (product)", "dc-trip (product)",
}  # fmt: skip


def reviewed(
    *readings: str,
    changes: Mapping[str, Any] = NO_CHANGE,
    milestone: Milestone = "production",
    permits: str = "",
) -> Review:
    loaded = load_file(BENCH).spec
    assert loaded is not None
    spec = loaded.with_values(changes).spec
    assert spec is not None
    lists = f"measured: [{', '.join(f'{{{x}}}' for x in readings)}]\ndeviations: [{permits}]\n"
    read = load_text(f"amplifier_spec: 1\n{lists}", "lists.yaml").spec
    assert read is not None
    permissions = Permissions("lists.yaml", lists, read.deviations)
    measured = Measured("lists.yaml", lists, read.measurements)
    return review(spec, milestone, criteria=Criteria(permissions=permissions, measured=measured))


def asked(found: Review) -> set[str]:
    items = [x for x in found.findings if is_to_measure(x)]
    assert all(x in found.verdict.holding for x in items)
    return {f"{x.check.removesuffix('-not-measured')} ({x.subject})" for x in items}


def message(found: Review, question: str) -> str:
    (text,) = (x.message for x in found.findings if x.check == f"{question}-not-measured")
    return text


def test_every_question_is_read_in_a_step_and_answered_by_a_figure() -> None:
    steps = {item.step.title for item in steps_of(load())}
    assert {item.step for item in QUESTIONS.values()} <= steps
    assert {item.decides for item in MEASURABLE} - {""} == {*QUESTIONS}
    unsafe = {name for name, item in QUESTIONS.items() if item.stake == "safety"}
    assert unsafe == {"dc-trip", "over-temperature-trip"}


def test_nobody_asks_for_readings_before_production() -> None:
    assert asked(reviewed()) == ALL
    assert asked(reviewed(milestone="prototype")) == set()


@pytest.mark.parametrize(
    ("reading", "answered"),
    [
        ("figure: protection.under_voltage.v_trip, value: 18 V", "under-voltage-trip (product)"),
        (f"{AIR}, power: 10 W, value: 31 degC", "heat (product)"),
        (f"figure: {I_TRIP}, place: right, value: 6 A", "over-current-trip (left)"),  # its twin
        ("figure: p_idle, place: right, supply: 24 V, value: 4 W", "idle (left)"),  # as taken over
    ],
)
def test_a_reading_that_is_compared_answers(reading: str, answered: str) -> None:
    assert asked(reviewed(reading)) == ALL - {answered}


def test_a_reading_that_cannot_be_compared_answers_nothing_and_is_told_with_its_reason() -> None:
    found = reviewed(f"{AIR}, value: 31 degC")
    assert asked(found) == ALL
    why = "(the reading of t_air_inside is not compared: power is not given"
    assert f"Operating temperature has not been measured on a board {why}" in message(found, "heat")
    assert 'step "Temperatures after the time constant"' in message(found, "heat")


@pytest.mark.parametrize(
    ("reading", "why"),
    [
        ("value: 27 degC ± 0.5 K", "is doubted: far below"),  # 2 K of the 6 K that the losses give
        ("value: 31 degC, date: 2999-01-01", "is not compared: "),
    ],
)
def test_a_reading_that_nobody_believes_answers_nothing(reading: str, why: str) -> None:
    found = reviewed(f"{AIR}, power: 10 W, {reading}")
    assert asked(found) == ALL
    assert why in message(found, "heat")


@pytest.mark.parametrize(
    ("value", "answered"), [("32 degC ± 0.5 K", True), ("39 degC ± 0.5 K", False)]
)
def test_air_in_a_box_is_known_to_a_quarter_of_its_rise(value: str, answered: bool) -> None:
    """The model gives 31 degC at 25 degC outside: 1.5 K more or less is its own error."""
    found = reviewed(f"{AIR}, power: 10 W, value: {value}")
    assert ("heat (product)" not in asked(found)) is answered


POWER = "figure: p_at_one_percent, place: left, supply: 24 V, load: 8 ohm, value: "


@pytest.mark.parametrize(
    ("readings", "changes", "answered"),
    [
        (["30.6 W"], {}, True),
        (["12 W"], {}, False),  # 0.4 of what the stated parts give, though above the rated 10 W
        (["30.6 W", "12 W"], {}, False),  # the second board is another one
        (["300 W"], {}, False),  # 24 V on 8 ohm give 36 W at most
        (["28 W"], {}, True),  # the formula is good to 10 %, TPA3221 data sheet and IRAUDAMP7D
        (["26 W"], {"r_series": {"value": "15 mohm", "from": "estimate"}}, False),  # 40 times
        (["29 W"], {"r_ds_on": None}, True),  # what the spec leaves out explains it
    ],
)
def test_only_a_reading_that_agrees_or_is_explained_answers(
    readings: list[str], changes: Mapping[str, Any], answered: bool
) -> None:
    where = {"r_series": "output_stage.r_series", "r_ds_on": "output_stage.device.r_ds_on"}
    full = {f"channels.{c}.{where[x]}": y for c in ("left", "right") for x, y in changes.items()}
    found = reviewed(*(f"{POWER}{x} ± 2 %" for x in readings), changes=full)
    assert ("power (left)" not in asked(found)) is answered


def test_a_difference_can_be_accepted() -> None:
    said = "permitted_by: head, reason: soft limiter, until: 2060-12-31"
    permits = f"{{check: power-not-measured, place: left, {said}}}"
    found = reviewed(f"{POWER}12 W", permits=permits)
    assert "differs from the model, unexplained" in message(found, "power")
    assert "power-not-measured" not in {x.check for x in found.verdict.holding}


def test_an_idle_loss_far_below_its_estimate_is_doubted_and_not_taken_over() -> None:
    """The spec estimates 0.34 W at least: a quarter of that is 85 mW."""
    reading = "figure: p_idle, place: left, supply: 24 V, value: "
    assert "idle (left)" in asked(reviewed(f"{reading}20 mW"))
    assert "is doubted: far below the estimate" in message(reviewed(f"{reading}20 mW"), "idle")
    assert "idle (left)" not in asked(reviewed(f"{reading}0.1 W"))


def test_a_reading_in_place_of_a_silent_value_answers() -> None:
    """The model has no trip of its own to compare it with, and takes over the one read."""
    silent = {f"channels.{x}.{I_TRIP}": None for x in ("left", "right")}
    both = [f"figure: {I_TRIP}, place: {x}, value: 6 A" for x in ("left", "right")]
    assert "over-current-trip (left)" not in asked(reviewed(*both, changes=silent))


def test_what_a_design_does_not_have_is_not_asked_for() -> None:
    none = {"protection.dc_detector": "none", "protection.under_voltage": "none"}
    gone = {"dc-trip (product)", "under-voltage-trip (product)"}
    assert asked(reviewed(changes=none)) == ALL - gone


def test_channels_that_differ_are_asked_for_each() -> None:
    found = asked(reviewed(changes={"channels.right.rated_power": "9 W"}))
    assert {"power (left)", "power (right)"} < found


def test_the_air_inside_answers_only_where_nothing_nearer_to_the_junction_is_known() -> None:
    air = f"{AIR}, power: 10 W, value: 31 degC"
    found = reviewed(air, changes=R_TH_JC)
    assert "heat (left)" in asked(found)
    assert "t_air_inside" not in message(found, "heat")
    case = air.replace("t_air_inside", "t_case_programme, place: left")
    assert "heat (left)" not in asked(reviewed(case, changes=R_TH_JC))


def test_a_question_can_be_accepted_as_open_unless_it_is_one_of_safety() -> None:
    said = "permitted_by: head, reason: trial lot of ten, until: 2060-12-31"
    items = [("idle-not-measured", "left"), ("dc-trip-not-measured", "product")]
    found = reviewed(permits=", ".join(f"{{check: {x}, place: {y}, {said}}}" for x, y in items))
    holding = {item.check for item in found.verdict.holding}
    assert "idle-not-measured" not in holding
    assert "dc-trip-not-measured" in holding
    own = [x.check for x in found.findings if x.domain == "deviations"]
    assert own == ["deviation-against-safety"]


def test_a_letter_asks_for_all_readings_in_one_point() -> None:
    found = reviewed()
    text = " ".join(letter_text(found, letter_of(found, ())).split())
    assert (
        "Please measure on a first board - Output power at clipping, idle loss, operating" in text
    )
    assert text.count(" - Output power at clipping") == 1

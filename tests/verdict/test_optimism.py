"""Statements that are too good: held, found or open, on the sound samples and at concept.

Each case changes a sample by one statement that physics, or the parts stated beside it, forbid.
"""

from collections.abc import Mapping
from typing import Any

import pytest

from ampreview.linter.check import Milestone
from ampreview.linter.finding import Severity, Status
from ampreview.linter.judging.compare import compare
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import load_text

from . import specs

STAGE = "channels.sub.output_stage"
PLAYHOUSE = "sample_specs/playhouse-subwoofer.amp.yaml"
CHOIR = "sample_specs/choir-portable.amp.yaml"
BEDSIDE = "sample_specs/bedside-lamp.amp.yaml"
CONTRADICTS = "stated-value-contradicts"


def reviewed(
    name: str, changes: Mapping[str, object] | None = None, milestone: Milestone | None = None
) -> Review:
    loaded = specs.spec_of_file(name).with_values(changes or {})
    assert loaded.spec is not None, loaded.refusals
    return review(loaded.spec, milestone)


def estimate(text: str) -> dict[str, str]:
    return {"value": text, "from": "estimate"}


MARKET = "sample_specs/market-day-trolley.amp.yaml"
# sample, changes, the check that holds
BEYOND_A_PART: list[tuple[str, dict[str, Any], str]] = [
    # a lead-acid battery on charge lies at 14.4 V and more
    (MARKET, {"supply.v_source_abs": "12 V"}, "converter-input-limit"),
    # the floating supply never gets above the lockout of 8.8 V
    (PLAYHOUSE, {"channels.sub.gate_drive.bootstrap.v_clamp": "5.2 V"}, "gate-lockout"),
    # the offset of 20 mV trips the detector for good
    (PLAYHOUSE, {"protection.dc_detector.v_trip": "15 mV"}, "dc-detector-offset"),
]


@pytest.mark.parametrize(("name", "changes", "check"), BEYOND_A_PART)
def test_a_part_that_stands_in_the_way_holds(
    name: str, changes: dict[str, Any], check: str
) -> None:
    assert reviewed(name).verdict.released
    assert check in {item.check for item in reviewed(name, changes).verdict.holding}


# sample, changes
TOO_GOOD: list[tuple[str, dict[str, Any]]] = [
    # 2 x 500 W and more at 22 mohm: conduction alone leaves 99 %, half of the rest 97.5 %
    (PLAYHOUSE, {f"{STAGE}.efficiency": "98 %"}),
    (PLAYHOUSE, {f"{STAGE}.efficiency": estimate("98 %"), f"{STAGE}.p_idle": "50 mW"}),
    (PLAYHOUSE, {f"{STAGE}.p_idle": "50 mW"}),
    (PLAYHOUSE, {f"{STAGE}.device.r_ds_on_hot_factor": "0.5"}),
    (PLAYHOUSE, {"thermal.heatsink.r_th_sa": "0.02 K/W"}),
    (CHOIR, {"battery.cell.i_pulse": "200 A"}),
    (CHOIR, {"battery.cell.r_internal": "1 mohm .. 60 mohm"}),
    (CHOIR, {"channels.left.filter.inductor.i_sat": "150 A"}),
    (CHOIR, {"channels.left.loudspeaker.sensitivity": "125 dB"}),
    (CHOIR, {"signal.crest_factor": "60 dB"}),
    (BEDSIDE, {"channels.lamp.output_stage.device.r_th_ja": "5 K/W"}),
    (BEDSIDE, {"supply.p_peak": "2 W"}),
]


@pytest.mark.parametrize(("name", "changes"), TOO_GOOD)
def test_what_is_too_good_holds_a_sound_sample(name: str, changes: dict[str, Any]) -> None:
    assert reviewed(name).verdict.released
    held = {item.check for item in reviewed(name, changes).verdict.holding}
    assert CONTRADICTS in held


@pytest.mark.parametrize(("name", "changes"), TOO_GOOD)
def test_no_permission_releases_it(name: str, changes: dict[str, Any]) -> None:
    spec = specs.spec_of_file(name)
    permits = [
        {
            "check": CONTRADICTS,
            "place": place,
            "permitted_by": "lead",
            "reason": "the maker says so",
            "until": "2999-01-01",
        }
        for place in ("product", *spec.channels)
    ]
    found = reviewed(name, {**changes, "deviations": permits})
    assert found.verdict.released == ("thermal.heatsink.r_th_sa" in changes)  # practice, no physics


@pytest.mark.parametrize("field", ["efficiency", "p_idle"])
def test_an_estimate_in_place_of_the_sum_leaves_the_heat_open(field: str) -> None:
    """97 % and 1.9 W are possible, and no measurement."""
    stated = {"efficiency": "97 %", "p_idle": "1.9 W"}[field]
    sound = reviewed(PLAYHOUSE)
    measured = reviewed(PLAYHOUSE, {f"{STAGE}.{field}": stated})
    guessed = reviewed(PLAYHOUSE, {f"{STAGE}.{field}": estimate(stated)})
    assert measured.verdict.released
    heat = "junction-temperature-margin"
    answer = next(item for item in guessed.findings if item.check == heat)
    assert answer.status is Status.OPEN
    assert heat in {item.check for item in guessed.verdict.holding}
    assert compare(sound, guessed).outcome == "worse"


def test_an_optimistic_estimate_does_not_make_a_small_heatsink_better() -> None:
    small = {"thermal.heatsink.r_th_sa": "6 K/W"}
    held = reviewed(PLAYHOUSE, small)
    assert held.counts()["critical"] > 0
    hidden = reviewed(PLAYHOUSE, small | {f"{STAGE}.efficiency": estimate("97 %")})
    assert not hidden.verdict.released
    assert compare(held, hidden).outcome != "better"


CONCEPT = """amplifier_spec: 1
milestone: concept
supply: {source: dc-source, rails: single, v_rail: 40 V%s}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: discrete, device: {r_ds_on: 200 mohm}}
    loudspeaker: {z_rated: 4 ohm%s}
claims: {efficiency: %s}
"""


@pytest.mark.parametrize(
    ("supply", "loudspeaker", "efficiency", "held"),
    [
        ("", "", "85 %", False),
        ("", "", "99.9 %", True),
        ("", "", "100 %", True),
        ("", ", sensitivity: 125 dB", "85 %", True),
        ("", ", sensitivity: 100 dB", "85 %", False),
        (", p_peak: 20 W", "", "85 %", True),
        (", p_peak: 220 W", "", "85 %", False),
    ],
)
def test_a_promise_that_physics_forbids_holds_a_concept(
    supply: str, loudspeaker: str, efficiency: str, held: bool
) -> None:
    loaded = load_text(CONCEPT % (supply, loudspeaker, efficiency), "concept")
    assert loaded.spec is not None, loaded.refusals
    found = review(loaded.spec)
    assert (CONTRADICTS in {item.check for item in found.verdict.holding}) is held
    assert found.verdict.released is not held


def test_what_the_resistances_leave_bounds_a_claim_where_other_losses_are_unknown() -> None:
    """4 ohm over 4 ohm and twice 200 mohm are 90.9 %; 95 % lie 4.1 points above."""
    both = {"efficiency-beyond-resistance", "efficiency-plausibility"}
    for claim, held in (("95 %", both), ("90 %", set())):
        loaded = load_text(CONCEPT % ("", "", claim), "concept")
        assert loaded.spec is not None, loaded.refusals
        assert {item.check for item in review(loaded.spec).verdict.holding} == held


def test_ten_loudspeakers_in_series_are_no_load_of_four_ohm() -> None:
    text = CONCEPT % ("", ", series: 10", "85 %")
    loaded = load_text(text.replace("concept", "prototype"), "series")
    assert loaded.spec is not None, loaded.refusals
    found = {item.check: item for item in review(loaded.spec).findings}
    assert found[CONTRADICTS].severity is Severity.MAJOR

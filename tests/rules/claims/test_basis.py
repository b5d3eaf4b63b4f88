"""What a rating and a distortion are judged by where the spec is silent."""

import pytest

from ampreview.linter.finding import Severity, Status

from ..whole import answer

STAGE = """
milestone: prototype
supply: {source: dc-source, rails: single, v_rail: 30 V}
channels:
  main:
    rated_power: 50 W
    rated_load: 8 ohmRATED
    output_stage: {topology: full-bridge, devices: integrated}
    gate_drive: {dead_time: 40 ns}
    modulator: {type: natural-sampling, levels: three-level, carrier: 400 kHz, feedback: none}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 0.47 uF}, c_ground: none}
CLAIM
"""


def spec(rated: str = "", claim: str = "") -> str:
    more = f"\n    rated_thd: {rated}" if rated else ""
    claimed = f"claims: {{thd: {claim}}}" if claim else ""
    return STAGE.replace("RATED", more).replace("CLAIM", claimed)


SHARE, DEPTH = 40e-9 * 400e3, (2 * 50.0 * 8.0) ** 0.5 / 30.0
BY_HAND = 1.163 * SHARE / (DEPTH - 2.546 * SHARE)  # the formula of large currents


@pytest.mark.parametrize(
    ("rated", "claim", "allowed"),
    [
        ("0.2 %", "", 0.002),
        ("10 %", "2 %", 0.02),  # a claim of its own goes before
        ("", "0.1 %", 0.001),
    ],
)
def test_dead_time_of_an_integrated_stage_is_judged_without_a_claim(rated, claim, allowed):
    """40 ns of 2.5 us: about 2 % without feedback, as the large-current formula gives it."""
    found = answer("dead-time-distortion", spec(rated, claim))
    assert found.evidence.figure == pytest.approx(BY_HAND / allowed, rel=0.03)
    assert found.status is Status.FINDING


@pytest.mark.parametrize("rated", ["", "10 %"])  # nothing is said; a power made by clipping
def test_two_percent_that_nobody_forbids_are_minor(rated):
    assert answer("dead-time-distortion", spec(rated)).status is Status.NOT_APPLICABLE
    found = answer("dead-time-distortion-unclaimed", spec(rated))
    assert found.evidence.figure == pytest.approx(BY_HAND / 0.01, rel=0.03)
    assert found.severity is Severity.MINOR
    coarse = spec(rated).replace("dead_time: 40 ns", "dead_time: 200 ns")
    assert answer("dead-time-distortion-unclaimed", coarse).severity is Severity.MAJOR


def test_a_power_without_distortion_is_asked_for_it():
    found = answer("rated-power-basis", spec())
    assert found.status is Status.OPEN
    assert [item.path for item in found.advice.missing] == ["channels.main.rated_thd"]
    assert "0 %" not in found.message
    assert answer("rated-power-basis", spec("1 %")).status is Status.MEETS
    assert answer("rated-power-basis", spec("10 %")).status is Status.FINDING

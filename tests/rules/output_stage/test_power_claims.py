"""Claims of power where distortion, largest depth or on-resistance is not stated."""

import pytest

from ampreview.linter.finding import Severity, Status

from ..whole import answer

# IRAUDAMP12: 130 W into 4 ohm on +-31 V, no distortion printed; 120 W are the clean limit
BOARD = """milestone: prototype
supply: {source: dc-source, rails: split, v_rail: 31 V}
channels:
  main:
    rated_power: 130 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, devices: integrated}
    modulator: {m_max: 100 %}
"""


@pytest.mark.parametrize(
    ("power", "severity"),
    [
        ("130 W", Severity.MINOR),
        ("154 W", Severity.MINOR),  # 1.288 times 120.1 W are 154.7 W
        ("158 W", Severity.MAJOR),
    ],
)
def test_silent_distortion(power: str, severity: Severity) -> None:
    found = answer("minimum-pulse-vs-modulation", BOARD.replace("130 W", power))
    assert found.severity is severity


@pytest.mark.parametrize(
    ("power", "severity"),
    [
        ("110 W", None),
        ("119 W", Severity.MINOR),  # within 5 % of 31 V^2 / (2 x 4 ohm) = 120.1 W
        ("122 W", Severity.MAJOR),
        ("130 W", Severity.MAJOR),
    ],
)
def test_above_a_clean_sine_without_a_distortion(power: str, severity: Severity | None) -> None:
    found = answer("power-above-rail", BOARD.replace("130 W", power))
    assert found.severity is severity
    assert found.holds_always is (severity is Severity.MAJOR)


def test_the_sentence_has_the_numbers_of_the_distortion_used() -> None:
    """130 W over 120.1 W; at 10 % over 154.7 W."""
    assert "the rails allow 120 W at 0 %" in answer("power-above-rail", BOARD).message
    at_ten = BOARD.replace("rated_load", "rated_thd: 10 %\n    rated_load")
    assert "the rails allow 155 W at 10 %" in answer("power-above-rail", at_ten).message


@pytest.mark.parametrize("check", ["power-above-rail", "minimum-pulse-vs-modulation"])
def test_stated_distortion(check: str) -> None:
    at_one = BOARD.replace("rated_load", "rated_thd: 1 %\n    rated_load")
    assert answer(check, at_one).severity is Severity.MAJOR
    assert answer(check, at_one.replace("1 %", "10 %")).status is not Status.FINDING


# 12 V bridge into 8 ohm: 9.2 W printed at 10 %, a tenth below the formula at full depth
LIGHT_LOAD = """
supply: {source: dc-source, rails: single, v_rail: 12 V, r_source: 10 mohm, bulk: {c: 1 mF},
  p_auxiliary: 0 W}
channels:
  main:
    rated_power: 9.2 W
    rated_thd: 10 %
    rated_load: 8 ohm
    band: 20 Hz .. 20 kHz
    lead: none
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 90 %, p_idle: 0.2 W,
      r_series: 10 mohm, device: {r_ds_on: 180 mohm, r_ds_on_hot_factor: 1.5}}
    filter: {type: lc, inductor: {dcr: 20 mohm}}
"""


def test_full_depth_of_a_silent_part_is_no_proof_at_production() -> None:
    assert answer("output-power", LIGHT_LOAD).status is Status.MEETS
    found = answer("output-power", "milestone: production\n" + LIGHT_LOAD)
    assert found.status is Status.OPEN
    assert "channels.main.modulator.m_max" in {gap.path for gap in found.advice.missing}
    assert any(
        x.path.endswith("m_max") and x.leaning == "favourable" for x in found.evidence.assumed
    )


def test_without_an_on_resistance_only_that_is_asked() -> None:
    """How hot it gets matters once it is stated; without a heat path a usual 100 degC does."""
    text = LIGHT_LOAD.replace("r_ds_on: 180 mohm, ", "")
    found = answer("output-power", text)
    assert [gap.path for gap in found.advice.missing] == [
        "channels.main.output_stage.device.r_ds_on"
    ]

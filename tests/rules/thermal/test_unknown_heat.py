"""A part of which no loss is known has no junction temperature, not a cold one."""

import pytest

from ampreview.linter.finding import Finding, Status

from ..whole import answer as answer_of

STAGE = """milestone: prototype
supply: {source: dc-source, rails: single, v_rail: 21 V}
channels:
  main:
    rated_power: 50 W
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: integrated
      LOSS
      device: {t_j_max: 150 degC, r_th_ja: 14 K/W, switches_per_package: 4 RESISTANCE}
protection: {over_temperature: {t_trip: 150 degC, at: junction}}
"""
CHECKS = ("junction-temperature-margin", "junction-at-rated-sine", "over-temperature-trip-in-use")


def answer(check: str, loss: str = "", resistance: str = "") -> Finding:
    """The answer of a check with one loss of the part stated, or none."""
    text = STAGE.replace("      LOSS\n", f"      {loss}\n" if loss else "")
    return answer_of(check, text.replace(" RESISTANCE", resistance))


@pytest.mark.parametrize("check", CHECKS)
def test_no_loss_no_temperature(check: str) -> None:
    found = answer(check)
    assert found.status is Status.OPEN
    if check == "over-temperature-trip-in-use":  # a floor, which asks for the heat at rest
        assert "best case: missing data can only make it worse" in found.message
        assert "channels.main.output_stage.p_idle" in [gap.path for gap in found.advice.missing]
        return
    assert found.evidence.figure is None
    assert [gap.path for gap in found.advice.missing] == ["channels.main.output_stage.efficiency"]


@pytest.mark.parametrize("check", CHECKS)
@pytest.mark.parametrize(
    ("loss", "resistance"), [("p_idle: 0.5 W", ""), ("", ", r_ds_on: 100 mohm")]
)
def test_any_loss_makes_a_floor(check: str, loss: str, resistance: str) -> None:
    found = answer(check, loss, resistance)
    assert found.status is Status.OPEN
    assert found.evidence.figure is not None
    assert found.evidence.figure < 110  # hotter than the 40 degC of the air


@pytest.mark.parametrize("check", CHECKS)
def test_a_floor_can_still_fail(check: str) -> None:
    """10 W without signal in 14 K/W are 140 K above 40 degC; a trip at 170 degC is too late."""
    late = STAGE.replace("t_trip: 150 degC", "t_trip: 170 degC").replace(" RESISTANCE", "")
    assert answer_of(check, late.replace("LOSS", "p_idle: 10 W")).status is Status.FINDING


def test_the_efficiency_settles_it() -> None:
    """50 W at 90 % are 5.6 W of heat: 78 K above 40 degC, 32 K below 150 degC."""
    found = answer("junction-at-rated-sine", "efficiency: 90 %")
    assert found.evidence.figure == pytest.approx(150 - 40 - 14 * 50 * (1 / 0.9 - 1), rel=0.02)

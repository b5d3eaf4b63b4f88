"""What stands across a leg when the over-voltage trip acts, through whole specs."""

import pytest

from ampreview.linter.finding import Severity, Status

from ..whole import answers

SINGLE = """
supply: {rails: single}
channels:
  main:
    output_stage:
      devices: integrated
      device: {v_supply: 6 V .. 14.4 V, v_supply_abs: 20 V}
protection: {over_voltage: {v_trip: {typ: 18 V, max: 19 V}}}
"""
SPLIT = """
supply: {source: dc-source, rails: split, v_rail: 34 V .. 36 V}
channels:
  main: {output_stage: {devices: discrete, device: {v_dss: 75 V}}}
protection: {over_voltage: {v_trip: {min: 38 V, typ: 40 V, max: 42 V}}}
"""


def test_trip_far_above_the_recommended_range() -> None:
    """19 V at most: 132 % of 14.4 V, 95 % of 20 V; no rail is needed for that."""
    found = answers(SINGLE)
    assert found["over-voltage-trip-recommended"].severity is Severity.MINOR
    assert found["over-voltage-trip-recommended"].evidence.figure == pytest.approx(19.0 / 14.4)
    assert found["over-voltage-trip-part"].status is Status.MEETS
    assert found["over-voltage-trip-part"].evidence.figure == pytest.approx(0.95)


def test_a_leg_on_two_rails_sees_one_trip_and_the_other_rail() -> None:
    """42 V and 36 V: 78 V on switches of 75 V; not twice 42 V."""
    found = answers(SPLIT)["over-voltage-trip-part"]
    assert found.severity is Severity.MAJOR
    assert found.evidence.figure == pytest.approx(78.0 / 75.0)


def test_switches_have_no_recommended_range() -> None:
    assert answers(SPLIT)["over-voltage-trip-recommended"].status is Status.NOT_APPLICABLE


@pytest.mark.parametrize("check", ["over-voltage-trip-part", "over-voltage-trip-recommended"])
def test_without_a_trip_there_is_nothing_to_judge(check: str) -> None:
    none = SINGLE.replace("{v_trip: {typ: 18 V, max: 19 V}}", "none")
    assert answers(none)[check].status is Status.NOT_APPLICABLE

"""Surge by the system of the vehicle, mains by the voltage of the source."""

import pytest

from ampreview.linter.finding import Severity, Status
from ampreview.linter.judging.milestone import verdict

from ..whole import answers

VEHICLE = """
milestone: prototype
environment: {place: PLACE}
supply: {source: dc-source, rails: single, converter: none, v_rail: RAIL}
protection: {surge: SURGE}
channels:
  main:
    output_stage: {topology: full-bridge, devices: integrated, device: {v_supply_abs: 40 V}}
"""


@pytest.mark.parametrize(
    ("rail", "surge", "left"),
    [
        ("11 V .. 14.4 V", "none", 35.0),
        ("22 V .. 28.8 V", "none", 58.0),
        ("22 V .. 28.8 V", "{v_rwm: 30 V, v_clamp: 35.5 V}", 35.5),
        ("11 V .. 14.4 V", "{v_rwm: 30 V, v_clamp: 48 V}", 35.0),
    ],
)
def test_surge_that_is_not_stated(rail: str, surge: str, left: float) -> None:
    """ISO 16750-2, test B: 35 V in 12 V systems, typically 58 V in 24 V systems."""
    text = VEHICLE.replace("RAIL", rail).replace("SURGE", surge).replace("PLACE", "vehicle")
    found = answers(text)["surge-against-stage"]
    assert found.evidence.figure == pytest.approx(left / 40.0)
    assert found.severity is (Severity.CRITICAL if left > 40 else None)
    assert ("v_surge_open", "favourable") in [(x.path, x.leaning) for x in found.evidence.assumed]


def test_no_vehicle_no_surge() -> None:
    text = VEHICLE.replace("RAIL", "14 V").replace("SURGE", "none").replace("PLACE", "indoor")
    assert answers(text)["surge-against-stage"].status is Status.NOT_APPLICABLE


def test_a_converter_takes_the_surge_itself() -> None:
    text = VEHICLE.replace("RAIL", "24 V, v_source: 11 V .. 15 V, v_source_abs: 32 V")
    text = (
        text.replace("SURGE", "none").replace("PLACE", "vehicle").replace("none, v", "step-up, v")
    )
    found = answers(text)
    assert found["surge-against-stage"].status is Status.NOT_APPLICABLE
    assert found["surge-against-converter"].evidence.figure == pytest.approx(35 / 32)


SOURCE = """
milestone: prototype
supply: {source: KIND, rails: RAILS, v_rail: 48 V, CERTIFIED}
wiring: {spacing: {gap: 2 mm}}
channels: {main: {rated_power: 20 W}}
"""
STEP_DOWN = "converter: step-down, v_source: 280 V .. 375 V"


@pytest.mark.parametrize(
    ("kind", "rails", "certified", "severity"),
    [
        ("dc-source", "single", f"{STEP_DOWN}, certified: no", "critical"),
        ("dc-source", "single", f"{STEP_DOWN}, certified: yes", None),
        ("dc-source", "split", "certified: no", "major"),
        ("mains-converter", "single", "certified: no", "critical"),
    ],
)
def test_barrier_by_voltage(kind: str, rails: str, certified: str, severity: str | None) -> None:
    """Class 1 ends at 60 V, class 2 at 120 V direct (IEC 62368-1, table 4)."""
    text = SOURCE.replace("KIND", kind).replace("RAILS", rails).replace("CERTIFIED", certified)
    found = answers(text)
    barrier, clearance = found["mains-barrier"], found["clearance-and-creepage"]
    assert barrier.severity == (Severity(severity) if severity else None)
    assert (clearance.status is Status.MEETS) == (severity is None)


def test_rectified_mains_asks_for_its_certificate() -> None:
    text = SOURCE.replace("KIND", "dc-source").replace("RAILS", "single")
    found = answers(text.replace("CERTIFIED", STEP_DOWN))
    barrier = found["mains-barrier"]
    assert [gap.path for gap in barrier.advice.missing] == ["supply.certified"]
    assert not verdict((barrier,), "prototype").released
    # with a certificate the clearances are met, without one the barrier alone holds the design
    assert found["clearance-and-creepage"].status is Status.MEETS
    bare = answers(text.replace("CERTIFIED", f"{STEP_DOWN}, certified: no"))
    assert bare["clearance-and-creepage"].status is Status.NOT_APPLICABLE
    assert bare["mains-barrier"].severity is Severity.CRITICAL
    low = answers(text.replace("CERTIFIED", "ripple: 50 mV"))
    assert low["mains-barrier"].status is Status.NOT_APPLICABLE
    assert low["clearance-and-creepage"].status is Status.MEETS

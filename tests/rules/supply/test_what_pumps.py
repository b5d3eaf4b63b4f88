"""What lifts a rail by returned energy, and what is asked for while that is not known."""

import math

import pytest

from ampreview.linter.finding import Finding, Severity, Status

from .test_published import answers

BRIDGE = """
milestone: prototype
supply: {source: dc-source, rails: single, v_rail: 30 V}
channels:
  main: {rated_load: 4 ohm, output_stage: {topology: full-bridge}}
protection: {over_voltage: {v_trip: 28 V}}
"""
HALF = BRIDGE.replace("full-bridge", "half-bridge").replace("28 V", "33 V")
WITH_CAPACITORS = ("v_rail: 30 V", "v_rail: 30 V, c_source: 0 F, bulk: {c: 2200 uF}")


def asked(finding: Finding) -> list[str]:
    assert finding.status is Status.OPEN
    return [item.path for item in finding.advice.missing]


def test_bridge_is_asked_for_no_capacitors_while_no_phase_is_stated() -> None:
    found = answers(BRIDGE)["bus-pumping"]
    assert (found.status, found.evidence.figure) == (Status.MEETS, 0.0)
    assert [(x.path, x.leaning) for x in found.evidence.assumed] == [
        ("channels.main.loudspeaker.phase", "favourable")
    ]


def test_production_asks_for_the_phase_only_where_it_decides_on_more_than_a_remark() -> None:
    """Any usual phase makes the rise a minor finding at most; the trip is a major one."""
    found = answers(BRIDGE.replace("prototype", "production"))
    assert found["bus-pumping"].status is Status.MEETS
    assert "a remark at most for any usual value" in found["bus-pumping"].message
    assert asked(found["pumping-against-trip"]) == ["channels.main.loudspeaker.phase"]


@pytest.mark.parametrize("phase", ["40 deg", "0 deg .. 40 deg"])
def test_bridge_with_a_reactive_load_is_asked_for_its_capacitors(phase: str) -> None:
    text = BRIDGE.replace("rated_load", f"loudspeaker: {{phase: {phase}}}, rated_load")
    assert asked(answers(text)["bus-pumping"]) == ["supply.bulk.c"]


def test_half_bridge_is_asked_for_all_capacitance_at_once() -> None:
    assert asked(answers(HALF)["bus-pumping"]) == ["supply.bulk.c", "supply.c_source"]


def test_silence_about_a_sinking_source_is_asked() -> None:
    """It is read as no, the worst case, and that convicts nobody."""
    silent = answers(HALF.replace(*WITH_CAPACITORS))["bus-pumping"]
    assert silent.status is Status.OPEN
    assert "supply.sinks_current" in asked(silent)
    assert ("supply.sinks_current", "adverse") in [
        (x.path, x.leaning) for x in silent.evidence.assumed
    ]


def test_sinking_source_is_asked_for_nothing() -> None:
    found = answers(HALF.replace("rails:", "sinks_current: yes, rails:"))
    assert (found["bus-pumping"].status, found["bus-pumping"].evidence.figure) == (
        Status.MEETS,
        0.0,
    )


def test_no_mains_converter_sinks_whatever_is_stated() -> None:
    """Its statement is told, and the rail is judged as one that rises."""
    mains = HALF.replace(*WITH_CAPACITORS).replace("dc-source", "mains-converter")
    said = answers(mains.replace("rails:", "sinks_current: yes, rails:"))
    not_said = answers(mains.replace("rails:", "sinks_current: no, rails:"))
    assert said["sink-of-mains-converter"].severity is Severity.MAJOR
    assert not_said["sink-of-mains-converter"].status is Status.MEETS
    assert said["bus-pumping"].evidence.figure == not_said["bus-pumping"].evidence.figure > 0.0


def test_full_bridge_is_told_of_its_trip_once() -> None:
    """A trip below the rail is one fault; with a resistive load nothing pumps there."""
    found = answers(BRIDGE)
    assert found["over-voltage-trip-window"].status is Status.FINDING
    assert asked(found["pumping-against-trip"]) == ["channels.main.loudspeaker.phase"]
    resistive = answers(BRIDGE.replace("rated_load", "loudspeaker: none, rated_load"))
    assert resistive["over-voltage-trip-window"].status is Status.FINDING
    assert resistive["pumping-against-trip"].status is Status.NOT_APPLICABLE


def test_pumping_reaches_the_trip_of_a_half_bridge() -> None:
    """15 V about the middle of the rail, 4 ohm, 20 Hz, 2200 uF: 4.32 V, 4.05 V when held.

    M V (4 - pi M) / (8 pi f R C) at M = 2/pi is V / (2 pi^2 f R C).
    """
    small = 15.0 / (2 * math.pi**2 * 20 * 4 * 2200e-6)
    rise = 30.0 * (math.sqrt(1 + 2 * small / 30.0) - 1)
    resistive = HALF.replace(*WITH_CAPACITORS).replace(
        "rated_load", "loudspeaker: none, rated_load"
    )
    found = answers(resistive)["pumping-against-trip"]
    assert found.severity is Severity.MAJOR
    assert found.evidence.figure == pytest.approx((30.0 + rise) / 33.0, rel=1e-6)


def test_pumping_is_judged_by_itself_where_the_rail_alone_reaches_the_trip() -> None:
    low = HALF.replace(*WITH_CAPACITORS).replace("v_trip: 33 V", "v_trip: 25 V")
    found = answers(low)
    rise = found["bus-pumping"].evidence.figure
    assert rise is not None
    assert found["pumping-against-trip"].evidence.figure == pytest.approx(1 + rise, rel=1e-9)


def test_assumed_idle_power_is_named_in_what_an_offset_pumps() -> None:
    text = """
supply: {source: dc-source, rails: split, v_rail: 35 V, sinks_current: no}
channels:
  main:
    rated_load: 4 ohm
    dc_offset: 2 V
    output_stage:
      topology: half-bridge
      devices: discrete
      IDLE
      device: {q_g: 20 nC, q_oss: 30 nC, v_c_oss: 50 V}
    gate_drive: {v_drv: 12 V, dead_time: 20 ns}
    modulator: {carrier: 400 kHz}
    filter: {inductor: {l: 22 uH}}
"""
    summed = answers(text.replace("IDLE\n", "\n"))["offset-pumping"]
    leaned = ("channels.main.output_stage.p_idle", "adverse")
    assert leaned in [(x.path, x.leaning) for x in summed.evidence.assumed]
    stated = answers(text.replace("IDLE", "p_idle: 2 W"))["offset-pumping"]
    assert leaned not in [(x.path, x.leaning) for x in stated.evidence.assumed]
    back = 2.0 / (2 * 3.2) * (1 - 2.0 / 35)  # 0.8 of 4 ohm: the coil at direct current
    assert stated.evidence.figure == pytest.approx(back / (2.0 / 70), rel=1e-6)

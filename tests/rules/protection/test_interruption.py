"""What ends a fault, and what carries it until then: fuse, pack, source, or nothing."""

import pytest

from ampreview.linter.finding import Severity, Status

from ..whole import Answers, answers

PACK = """
milestone: prototype
supply: {source: battery, converter: none}
battery:
  chemistry: li-ion
  series: 6
  connection: CONNECTION
  cell: {v_charge: 4.2 V, r_internal: 10 mohm .. 30 mohm}
  protection: PROTECTION
protection: {fuse: FUSE, reverse_polarity: POLARITY}
wiring: {supply_lead: {length: 0.5 m, area: 1.309 mm2}, trace: {width: 10 mm, copper: 70 um}}
thermal: {t_air_inside: 40 degC}
channels: {main: {rated_power: 50 W}}
"""
FITTED = "{i_rated: 10 A, standard: iec-60127, place: source}"
TRIPS = "{i_trip: 30 A, r: 3 mohm}"
BREAKS = "{i_trip: 30 A, r: 3 mohm, i_breaking: 500 A}"
SHUNT = "{method: shunt-diode-and-fuse}"


def found(
    fuse: str = FITTED, protection: str = TRIPS, polarity: str = "none", connection: str = "keyed"
) -> Answers:
    text = PACK.replace("FUSE", fuse).replace("PROTECTION", protection)
    return answers(text.replace("POLARITY", polarity).replace("CONNECTION", connection))


def test_power_that_nothing_ends() -> None:
    """25.2 V behind 60 mohm: 2646 W, 420 A; behind 63 mohm 400 A."""
    name = "unprotected-source-power"
    bare = found("none", "none")[name]
    assert (bare.evidence.figure, bare.severity) == (pytest.approx(2646.0), Severity.CRITICAL)
    assert found(FITTED, "none")[name].evidence.figure == 0.0
    assert found("none", BREAKS)[name].evidence.figure == 0.0
    weak = found("none", BREAKS.replace("500 A", "390 A"))[name]
    assert (weak.evidence.figure, weak.severity) == (pytest.approx(2520.0), Severity.CRITICAL)
    silent = found("none", TRIPS)[name]
    assert [gap.path for gap in silent.advice.missing] == ["battery.protection.i_breaking"]


@pytest.mark.parametrize(
    ("fuse", "protection", "lasting"),
    [
        (FITTED, TRIPS, 21.0),
        (FITTED.replace("iec-60127", "ul-248-14"), TRIPS, 13.5),
        (FITTED.replace("place: source", "place: board"), TRIPS, 30.0),
        ("none", TRIPS, 30.0),
        ("none", "none", 420.0),
    ],
)
def test_no_fuse_does_not_spare_the_lead(fuse: str, protection: str, lasting: float) -> None:
    """Chassis wire of AWG 16 carries 22 A."""
    lead = found(fuse, protection)["fuse-protects-lead"]
    assert lead.evidence.figure == pytest.approx(lasting / 22.0, rel=1e-3)


def test_no_fuse_does_not_spare_the_trace() -> None:
    assert found("none", "none")["fuse-protects-trace"].severity is Severity.CRITICAL
    assert found(FITTED, "none")["fuse-protects-trace"].status is Status.MEETS


def test_a_source_that_limits_stands_in_for_a_fuse() -> None:
    source = """
milestone: prototype
supply: {source: dc-source, rails: single, v_rail: 24 V, p_max: 240 W, self_limiting: LIMITS}
protection: {fuse: none}
wiring: {supply_lead: {length: 0.5 m, area: 1.309 mm2}}
channels: {main: {rated_power: 50 W}}
"""
    limits = answers(source.replace("LIMITS", "yes"))
    assert limits["unprotected-source-power"].evidence.figure == 0.0
    assert limits["fuse-protects-lead"].evidence.figure == pytest.approx(10.0 / 22.0, rel=1e-3)
    stiff = answers(source.replace("LIMITS", "no"))["unprotected-source-power"]
    assert (stiff.evidence.figure, stiff.severity) == (240.0, Severity.CRITICAL)


def test_a_shunt_diode_needs_its_fuse() -> None:
    name = "reverse-polarity"
    without = found("none", BREAKS, SHUNT, "reversible")[name]
    assert (without.evidence.figure, without.severity) == (0.0, Severity.CRITICAL)
    assert found(FITTED, BREAKS, SHUNT, "reversible")[name].evidence.figure == 1.0


@pytest.mark.parametrize(("polarity", "figure"), [("none", 0.0), ("{method: p-channel}", 1.0)])
def test_the_supply_of_a_vehicle_can_be_reversed(polarity: str, figure: float) -> None:
    text = "environment: {place: vehicle}\nsupply: {source: dc-source}\nprotection:"
    text += f" {{reverse_polarity: {polarity}}}\nchannels: {{main: {{rated_power: 20 W}}}}\n"
    assert answers(text)["reverse-polarity"].evidence.figure == figure


def test_reversed_source_and_charged_capacitors_add() -> None:
    polarity = "{method: n-channel, v_block: 60 V}"
    drain = found(FITTED, TRIPS, polarity)["reverse-polarity-drain"]
    assert drain.evidence.figure == pytest.approx((25.2 + 25.2) / 60.0)


def test_contradictions_of_the_source() -> None:
    text = """
milestone: prototype
supply: {source: dc-source, rails: single, v_rail: 24 V, sinks_current: yes}
protection: {reverse_polarity: {method: schottky}}
channels:
  main:
    rated_load: 4 ohm
    output_stage:
      topology: half-bridge
      devices: integrated
      device: {v_supply: 8 V .. 32 V, v_supply_abs: 30 V}
"""
    said = answers(text)
    assert said["sink-behind-diode"].severity is Severity.MAJOR
    assert said["part-supply-limits"].severity is Severity.MAJOR
    assert said["bus-pumping"].status is Status.OPEN
    through = answers(text.replace("schottky", "p-channel"))
    assert (through["bus-pumping"].status, through["bus-pumping"].evidence.figure) == (
        Status.MEETS,
        0.0,
    )


def test_contacts_in_the_loudspeaker_lead_break_the_fault() -> None:
    """35 V on two coils of 3.2 ohm side by side: 21.9 A."""
    text = """
milestone: prototype
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    output_stage: {topology: half-bridge, devices: discrete}
    loudspeaker: {z_rated: 4 ohm, r_e: 3.2 ohm, parallel: 2}
protection:
  dc_detector: {action: disconnect-load, independent: yes, v_break: 100 V, i_break: 16 A}
"""
    relay = answers(text)["dc-relay-breaking"]
    assert relay.evidence.figure == pytest.approx(2 * 35 / 3.2 / 16)
    assert relay.severity is Severity.CRITICAL
    mute = answers(text.replace("disconnect-load", "mute"))["dc-relay-breaking"]
    assert mute.status is Status.NOT_APPLICABLE

"""Published designs and failures through the whole catalogue: caught, or not condemned."""

import pytest

from ampreview.linter.finding import Severity, Status

from ..whole import answers

# R. MacLachlan, ILEMT laboratory notebook, 2015 .. 2019: half bridges into coils.  Assumed: 1 ohm,
# 5 W at idle, a trip of 80 V.
NOTEBOOK = """
milestone: prototype
supply: {source: dc-source, rails: split, v_rail: 75 V .. 80 V, sinks_current: no}
channels:
  coil:
    rated_load: 4 ohm
    dc_offset: 0.2 V .. 2 V
    output_stage: {topology: half-bridge, p_idle: 5 W}
    loudspeaker: {r_e: 1 ohm}
protection: {over_voltage: {v_trip: {max: 80 V}}, bleeder: {r: 175 ohm}}
"""


def test_offset_pumps_the_rail_and_the_trip_sits_on_it() -> None:
    """The log: offset of up to 2 V, rail from 75 V to 90 V, 175 ohm not enough."""
    found = answers(NOTEBOOK)
    for name in ("offset-pumping", "over-voltage-trip-window"):
        assert found[name].status is Status.FINDING, found[name].message
        assert found[name].severity is Severity.MAJOR
    assert found["offset-pumping"].evidence.figure == pytest.approx(
        0.973 / (5 / 150 + 75 / 175), rel=5e-3
    )


def test_small_offset_is_let_through() -> None:
    found = answers(NOTEBOOK.replace("0.2 V .. 2 V", "20 mV"))
    assert found["offset-pumping"].status is Status.MEETS


def test_capacitors_of_16_volt_on_30_volt() -> None:
    """github.com/halfstudents, parts list: 470 uF 16 V on a rail of 24 .. 30 V."""
    found = answers(
        "supply: {source: dc-source, rails: single, v_rail: 24 V .. 30 V,"
        " bulk: {c: 470 uF, v_rated: 16 V}}\nchannels: {main: {rated_power: 100 W}}\n"
    )
    assert found["bulk-capacitor-voltage"].severity is Severity.CRITICAL


SINGLE_CELL = """
supply:
  source: battery
  rails: single
  converter: step-up
  converter_efficiency: {value: 85 %, from: estimate}
  p_max: {value: 18 W, from: estimate}
battery: {chemistry: li-ion, series: 1, parallel: 1, cell: {capacity: 3599 mAh}}
channels: {mono: {rated_power: 30 W, rated_load: 4 ohm}}
"""


def test_single_cell_with_step_up_module() -> None:
    """reddit 1i3kotu: 30 W from one cell and a module of 18 W, collapses at volume."""
    found = answers(SINGLE_CELL)
    assert found["source-below-rated-power"].severity is Severity.MAJOR
    assert found["pack-rate"].status is Status.FINDING
    assert found["protection-present"].status is not Status.MEETS


def test_cell_current_through_the_converter() -> None:
    """The same with the losses known: 30 / 0.85 / 0.85 / 3.6 V = 11.5 A mean, more rms."""
    found = answers(
        """
supply: {source: battery, rails: single, converter: step-up, converter_efficiency: 85 %}
battery: {chemistry: li-ion, series: 1, cell: {v_oc_low: 3.6 V, r_internal: 0.5 mohm, i_cont: 10 A}}
channels:
  mono:
    rated_power: 30 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, efficiency: 85 %}
"""
    )
    current = found["pack-current"]
    assert current.severity is Severity.CRITICAL
    assert current.evidence.figure == pytest.approx(1.5**0.5 * 11.53 / 10.0, rel=0.01)


def test_advised_supply_is_enough() -> None:
    """sonocotta documentation: 2 x 10 W into 8 ohm, a supply of 9 V and 3 A is advised."""
    found = answers(
        "supply: {source: dc-source, rails: single, v_rail: 9 V, i_max: 3 A}\n"
        "channels:\n"
        "  left: &a {rated_power: 10 W, rated_load: 8 ohm,"
        " output_stage: {topology: full-bridge, efficiency: 88 %}}\n"
        "  right: *a\n"
    )
    assert found["source-below-rated-power"].status is Status.MEETS
    assert found["source-capability"].status is Status.MEETS


# International Rectifier, IRAUDAMP7D rev 2.9, 35 V variant.
REFERENCE = """
milestone: prototype
supply:
  source: dc-source
  rails: split
  v_rail: 35 V
  bulk: {c: 940 uF, v_rated: 100 V}
channels:
  left: &channel
    rated_power: 120 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, devices: discrete}
    modulator: {type: self-oscillating, carrier: 400 kHz}
    loudspeaker: none
  right: *channel
"""


def test_reference_board_is_asked_and_not_condemned() -> None:
    """Its bench supply's capacitors are unknown: pumping stays open and nothing is found."""
    found = answers(REFERENCE)
    assert found["bus-pumping"].status is Status.OPEN
    assert {item.path for item in found["bus-pumping"].advice.missing} <= {
        "supply.sinks_current",
        "supply.c_source",
    }
    own = [item for item in found.values() if item.domain in ("supply", "battery")]
    assert all(item.status is not Status.FINDING for item in own), own


def test_reference_board_pumps_with_its_own_capacitors_alone() -> None:
    """Two channels on 940 uF a rail, 20 Hz: a published reckoning gives 37 V in each."""
    own = REFERENCE.replace("v_rail: 35 V", "v_rail: 35 V\n  sinks_current: no\n  c_source: 0 F")
    own += "signal: {channel_phase: in-phase}\n"
    found = answers(own)
    assert found["bus-pumping"].status is Status.FINDING
    assert found["bus-pumping"].evidence.figure == pytest.approx(37.3 / 35.0, rel=0.01)
    sunk = answers(REFERENCE.replace("v_rail: 35 V", "v_rail: 35 V\n  sinks_current: yes"))
    assert sunk["bus-pumping"].evidence.figure == 0.0


PACK = """
supply: {source: battery, rails: single}
battery:
  chemistry: li-ion
  series: 6
  parallel: 2
  cell: {v_oc_low: 3.4 V, r_internal: 40 mohm, i_cont: 8 A, i_pulse: 15 A}
channels:
  left: &a
    rated_power: 40 W
    rated_load: 4 ohm
    band: 40 Hz .. 16 kHz
    output_stage: {topology: full-bridge, efficiency: 88 %}
  right: *a
protection: {under_voltage: {v_trip: 17 V}}
"""


def test_worked_pack() -> None:
    """20.4 V behind 0.12 ohm, 90.9 W mean: 19.27 V and 9.436 A at the crest, 5.722 A rms."""
    found = answers(PACK)
    assert found["pack-voltage-under-load"].evidence.figure == pytest.approx(19.27 / 17.0, rel=5e-4)
    assert found["pack-current"].evidence.figure == pytest.approx(5.722 / 16.0, rel=5e-4)
    assert found["pack-pulse-current"].evidence.figure == pytest.approx(9.436 / 30.0, rel=5e-4)


def test_worked_pack_aged_and_cold() -> None:
    """0.36 ohm: the crest pulls the pack under a lockout of 17 V."""
    found = answers(PACK.replace("r_internal: 40 mohm", "r_internal: 40 mohm .. 120 mohm"))
    assert found["pack-voltage-under-load"].severity is Severity.MAJOR


def test_series_diode_keeps_returned_current_from_the_pack() -> None:
    text = PACK.replace("rails: single}", "rails: single, bulk: {c: 1000 uF}}")
    assert answers(text)["bus-pumping"].evidence.figure == 0.0
    diode = text.replace("protection: {", "protection: {reverse_polarity: {method: schottky}, ")
    diode = diode.replace("topology", "t_edge: 10 ns, topology").replace(
        "band: 40", "modulator: {m_max: 90 %}\n    loudspeaker: {phase: 60 deg}\n    band: 40"
    )
    diode = diode.replace("cell: {", "cell: {v_charge: 4.2 V, ")
    assert (answers(diode)["bus-pumping"].evidence.figure or 0.0) > 0.01

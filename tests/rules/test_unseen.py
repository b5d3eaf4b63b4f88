"""Designs that the rules had never met: what they must say, and what they must not.

The specs are invented.  Their figures are typical of what is published (evaluation boards,
reference designs, student projects, car and battery products): common practice, from
memory, no real type.  Each stands for a false alarm or a false pass that was found with
such a spec; the sum that decides it stands beside it.
"""

import pytest

from ampreview.linter.finding import Finding
from ampreview.linter.judging.review import Review, review
from ampreview.linter.reading.loading import load_text

FILTERLESS_5V = """
amplifier_spec: 1
supply: {source: dc-source, rails: single, v_rail: 5 V, bulk: {c: 47 uF, v_rated: 10 V}}
channels:
  main:
    rated_power: 1.4 W
    rated_load: 8 ohm
    output_stage:
      topology: full-bridge
      devices: integrated
      device: {v_supply: 2.5 V .. 5.5 V, v_supply_abs: 6 V}
    modulator: {levels: three-level, carrier: 250 kHz}
    filter: {type: filterless}
    loudspeaker: {z_rated: 8 ohm}
"""
STEREO_42V = """
amplifier_spec: 1
supply:
  source: mains-converter
  rails: split
  v_rail: 42 V
  sinks_current: no
  c_source: 470 uF
  bulk: {c: 940 uF, v_rated: 50 V}
channels:
  left: &c
    rated_power: 150 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, devices: discrete, device: {v_dss: 100 V}}
    gate_drive: {dead_time: 60 ns}
    modulator: {carrier: 400 kHz}
    loudspeaker: {z_rated: 4 ohm}
  right: *c
"""
COPIED_35V = """
amplifier_spec: 1
supply: {source: dc-source, rails: split, v_rail: 35 V, bulk: {c: 1000 uF, v_rated: 50 V}}
channels:
  main:
    rated_power: 145 W
    rated_load: 4 ohm
    output_stage:
      topology: half-bridge
      devices: discrete
      device:
        {v_dss: 100 V, v_gss: 20 V, r_ds_on: {typ: 28 mohm}, q_g: {typ: 14 nC, max: 20 nC},
         q_gd: {typ: 4.8 nC}, c_iss: 890 pF, v_gs_th: {min: 3 V, max: 4.9 V}, t_d_on: 9.2 ns,
         t_r: 5 ns, t_d_off: 18 ns, t_f: 5.1 ns, r_g_test: 6.2 ohm}
    gate_drive:
      {v_drv: 12 V, r_g_on: 10 ohm, r_g_off: 10 ohm, i_source: 1 A, i_sink: 1.2 A,
       dead_time: 45 ns}
    modulator: {type: self-oscillating, carrier: 400 kHz, feedback: before-filter}
    filter: {type: lc, inductor: {l: 22 uH, i_sat: 13 A}, c_across: {c: 470 nF}}
    loudspeaker: none
"""
BIG_DEVICES = """
amplifier_spec: 1
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  sub:
    rated_power: 200 W
    rated_load: 2 ohm
    band: 20 Hz .. 150 Hz
    output_stage:
      topology: half-bridge
      devices: discrete
      device:
        {v_dss: 100 V, q_g: {typ: 83 nC}, q_gd: {typ: 30 nC}, t_d_on: 25 ns, t_r: 67 ns,
         t_d_off: 78 ns, t_f: 88 ns, r_g_test: 2.6 ohm}
    gate_drive:
      {v_drv: 12 V, r_g_on: 10 ohm, r_g_off: 3.3 ohm, i_source: 2 A, i_sink: 2 A,
       dead_time: 300 ns}
    modulator: {type: natural-sampling, carrier: 90 kHz}
"""
GAN_48V = """
amplifier_spec: 1
supply: {source: dc-source, rails: single, v_rail: 48 V}
channels:
  main:
    rated_power: 200 W
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: discrete
      device:
        {v_dss: 100 V, v_gss: 7 V, q_g: {typ: 8 nC}, q_gd: {typ: 1.7 nC}, r_g_int: 1.1 ohm,
         c_iss: 600 pF, v_gs_th: {min: 1.1 V, typ: 1.7 V}, v_gs_pl: 3.5 V}
    gate_drive:
      {v_drv: 6 V, r_g_on: 10 ohm, r_g_off: 2 ohm, i_source: 4 A, i_sink: 8 A, dead_time: 15 ns}
    modulator: {levels: two-level, carrier: 800 kHz}
"""
SLOW_GATES = BIG_DEVICES.replace("r_g_off: 3.3 ohm", "r_g_off: 47 ohm").replace(
    "v_dss: 100 V,", "v_dss: 100 V, v_gs_th: 2.9 V,"
)
MUTING = """
amplifier_spec: 1
supply: {source: mains-converter, rails: split, v_rail: 35 V}
channels:
  main:
    output_stage: {topology: half-bridge, devices: discrete}
    loudspeaker: {z_rated: 8 ohm, r_e: 6.4 ohm}
protection: {dc_detector: {v_trip: 4 V, action: mute}}
"""
SLOW_TRIP = """
amplifier_spec: 1
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage:
      {topology: half-bridge, devices: discrete,
       over_current: {i_trip: 20 A, t_response: 3.2 us, sensing: shunt}}
    filter: {type: lc, inductor: {l: 15 uH}, c_across: {c: 680 nF}}
"""
CAR = """
amplifier_spec: 1
environment: {place: vehicle, ambient: -40 degC .. 85 degC}
supply: {source: battery, rails: single, converter: none, v_rail: 14.4 V}
battery: {chemistry: lead-acid-flooded, series: 6}
channels:
  main: {rated_power: 20 W, rated_load: 4 ohm, output_stage: {topology: full-bridge}}
"""
SOFT_RAIL_12V = """
amplifier_spec: 1
supply: {source: mains-converter, rails: single, v_rail: 12 V ± 5 %}
channels:
  main:
    rated_power: 10 W
    rated_thd: 10 %
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: integrated, device: {r_ds_on: {typ: 180 mohm}}}
    modulator: {levels: three-level, carrier: 310 kHz}
"""
FILM = """
amplifier_spec: 1
supply: {source: dc-source, rails: split, v_rail: 70 V}
channels:
  main:
    rated_load: 4 ohm
    band: 20 Hz .. 40 kHz
    output_stage: {topology: half-bridge, devices: discrete}
    modulator: {carrier: 250 kHz}
    filter:
      {type: lc, inductor: {l: 4.7 uH}, c_across: {c: 2.2 uF, dielectric: polypropylene}}
"""
NO_OUTPUT_CAPACITOR = """
amplifier_spec: 1
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_power: 12 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, devices: integrated}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 680 nF}, c_block: none}
    loudspeaker: {z_rated: 4 ohm, p_rated: 20 W}
"""
CHARGED_24V = """
amplifier_spec: 1
supply: {source: dc-source, rails: single, v_rail: 24 V ± 5 %, bulk: {c: 1000 uF, v_rated: 25 V}}
channels:
  main: {rated_power: 20 W, rated_load: 8 ohm, output_stage: {topology: full-bridge}}
"""
TWO_SLIPS = """
amplifier_spec: 1
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_power: 30 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: integrated}
    modulator: {carrier: 400 Hz}
    filter: {type: lc, inductor: {l: 22 mH}, c_across: {c: 680 nF}}
"""


def reviewed(text: str) -> Review:
    """The review of a spec at the prototype."""
    loaded = load_text(text.lstrip(), "typical.amp.yaml")
    assert loaded.spec is not None, loaded.refusals
    return review(loaded.spec, milestone="prototype")


def answer(text: str, check: str) -> Finding:
    """The first answer of one check."""
    return next(item for item in reviewed(text).findings if item.check == check)


FOUND = [
    # one channel alone, resistive: 42 * 1.273 / (8 pi 20 Hz 4 ohm 1.41 mF) = 18.9 V
    (STEREO_42V, "pumping-against-capacitor", "critical"),
    (STEREO_42V, "device-voltage-margin", "critical"),
    # 53 ohm * 4.4 nF * ln(12 / 2.9) - 16 ohm * 4.4 nF * ln(12 / 9.1) = 315 ns beyond 300 ns,
    # and more once the threshold has fallen in the heat
    (SLOW_GATES, "dead-time-margin", "critical"),
    # (35 V)^2 / 6.4 ohm = 191 W that muting does not end
    (MUTING, "independent-disconnect", "major"),
    # 50 V / 15 uH * 3.2 us = 10.7 A beyond a trip of 20 A: half of it, not all
    (SLOW_TRIP, "short-circuit-current-rise", "minor"),
    # 10 W at 10 % against 7.2 W at clipping, times 1.29: 0.3 dB short at the lowest rail
    (SOFT_RAIL_12V, "output-power", "minor"),
    # 12 A in the treble and 14 A of ripple in 5 mohm of metal are beyond a quarter watt
    (FILM, "filter-capacitor-heating", "major"),
    # half of 24 V on 3.2 ohm: 45 W that never end
    (NO_OUTPUT_CAPACITOR, "blocking-capacitor-present", "critical"),
    (CHARGED_24V, "bulk-capacitor-voltage", "critical"),
]


@pytest.mark.parametrize(("text", "check", "severity"), FOUND)
def test_found(text: str, check: str, severity: str) -> None:
    item = answer(text, check)
    assert item.severity is not None, item.message or item.status
    assert item.severity.value == severity, item.message


SILENT = [
    # nobody states the phase of a small loudspeaker at 20 Hz: 5 V stay 5 V
    (FILTERLESS_5V, "supply-above-part-limit"),
    (FILTERLESS_5V, "pumping-against-capacitor"),
    (FILTERLESS_5V, "value-outside-usual-range"),
    (COPIED_35V, "dead-time-margin"),
    (COPIED_35V, "carrier-above-hearing"),  # 26 kHz for an instant at the crest of 145 W
    (BIG_DEVICES, "dead-time-margin"),  # 78 + 88 - 25 ns as printed; the gates take 39 ns
    (GAN_48V, "miller-turn-on"),  # 0.2 A in 3.5 ohm: 0.7 V on 1.1 V that do not fall
    (CAR, "discharge-in-cold"),
    (CHARGED_24V, "pumping-against-capacitor"),  # bulk-capacitor-voltage says it
]


@pytest.mark.parametrize(("text", "check"), SILENT)
def test_silent(text: str, check: str) -> None:
    said = [item for item in reviewed(text).findings if item.check == check and item.severity]
    assert not said, said[0].message


def test_copied_circuit_is_at_most_warned_of_false_turn_on() -> None:
    item = answer(COPIED_35V, "miller-turn-on")
    assert item.severity is None or item.severity.value == "minor", item.message


def test_both_slips_of_a_prefix_come_before_their_consequences() -> None:
    first = reviewed(TWO_SLIPS).failing()[:2]
    assert {item.check for item in first} == {"value-outside-usual-range"}

"""What the models of the spec accept and hold."""

from copy import deepcopy
from typing import Any

import pytest

from ampreview.linter.declare.field import Section
from ampreview.linter.quantities.quantity import Value
from ampreview.linter.reading.source import read
from ampreview.rules.spec.amplifier import Amplifier
from ampreview.rules.spec.battery import Battery

# An invented product with invented parts; no figure belongs to a maker.
WORKSHOP = """
amplifier_spec: 1
title: Two-way amplifier of a mobile planetarium
revision: D4
milestone: production
environment: {ambient: 5 degC .. 35 degC, altitude: 0 m, solar: 0 W/m2, pollution_degree: 2,
  place: indoor, ip_code: IP20, am_receiver: none}
signal: {crest_factor: 11 dB .. 14 dB, channel_phase: opposite, source_level: 0.9 V,
  v_in_max: 2 V, r_in: 15 kohm ± 1 %, c_in: 4u7 ± 20 %, c_in_dielectric: polyester,
  mute_time: 0 s}
supply:
  source: battery
  rails: split
  converter: step-up
  v_source: 19.2 V .. 25.6 V
  v_rail: 31 V ± 1 V
  r_source: 25 mohm
  i_max: 6 A
  p_max: 260 W
  converter_efficiency: {typ: 92 %, max: 94 %}
  converter_frequency: 250 kHz
  sinks_current: false
  ripple: 80 mV
  p_auxiliary: 4 W
  certified: no
  surge: {v: 50 V, r: 0.5 ohm}
  bulk: {c: 3.3 mF ± 20 %, v_rated: 50 V, i_ripple: 4 A, life: 8000 h, t_rated: 105 degC}
  c_source: 470 uF
battery:
  chemistry: lfp
  series: 8
  parallel: 3
  packs: 1
  i_standby: 80 uA
  connection: keyed
  usable_share: 85 %
  cold_share: 90 %
  cell: {capacity: {min: 2.9 Ah, typ: 3.1 Ah}, v_charge: 3.60 V ± 0.03 V, v_nominal: 3.2 V,
    v_oc_low: 3.0 V, r_internal: 12 mohm .. 40 mohm, i_cont: 9 A, i_pulse: 20 A,
    i_charge: 1.5 A, t_charge: 0 degC .. 50 degC, t_discharge: -20 degC .. 60 degC}
  protection: {i_trip: 30 A ± 10 %, t_trip: {max: 12 ms}, v_cutoff: 18 V, r: 6 mohm}
  charger: {v: 28.8 V, i: 2 A, sensor: cell, t_window: 2 degC .. 45 degC, playing: power-path}
channels:
  dome-bass: &bass
    rated_power: 55 W
    rated_thd: 0.5 %
    rated_voltage: 14.8 V
    rated_load: 4 ohm
    load_range: 4 ohm .. 8 ohm
    open_load: yes
    band: 40 Hz .. 2500 Hz
    gain: 26 V/V
    dc_offset: {max: 20 mV}
    turn_on_step: 15 mV
    limiter: {v_rms: 13 V, v_peak: 21 V}
    lead: {length: 3 m, area: 1.5 mm2}
    output_stage:
      topology: half-bridge
      devices: discrete
      l_loop: 8 nH
      snubber: {c: 470 pF, r: 10 ohm, p_rated: 0.5 W}
      over_current: {i_trip: {min: 9 A, typ: 11 A}, t_response: 400 ns, sensing: shunt}
      device:
        part: invented 100 V switch
        v_dss: 100 V
        r_ds_on: {typ: 21 mohm, max: 27 mohm}
        q_rr: 0 nC
        foster: [{r: 0.3 K/W, tau: 1.2 ms}, {r: 1.1 K/W, tau: 30 ms}]
    gate_drive:
      v_drv: 12 V ± 5 %
      r_g_on: 10R
      dead_time: {value: 40 ns, from: measured}
      cmti: 0.1 kV/ns
      regulator: {type: separate}
      bootstrap: {c: 1 uF, refresh: charge-pump}
    modulator: {type: self-oscillating, carrier: 420 kHz ± 5 %, locked: no, m_max: 90 %}
    filter:
      type: lc
      inductor: {l: 22 uH ± 10 %, core: powder, exponent_b: 2.3, p_v: 0.8 MW/m3}
      c_across: {c: 680 nF, dielectric: polypropylene}
      c_ground: none
      damper: {r: 12 ohm, c: 220 nF, p_rated: 2 W, connection: across}
      second_stage: none
    loudspeaker:
      z_rated: 4 ohm
      phase: 0 deg
      sensitivity: 90 dB
      s_d: 0.0214 m2
      bl: 8.1 N/A
      enclosure: {type: sealed, v_b: 30 L}
      high_pass: none
      c_series: none
      zobel: {r: 4R7, c: 15 uF, p_rated: 5 W}
  dome_treble:
    <<: *bass
    rated_power: 25 W
    band: 2500 Hz .. 20 kHz
    limiter: none
    loudspeaker: none
thermal:
  heatsink: {r_th_sa: 2.2 K/W, count: 1, place: outside, touch: 1-to-10-s, material: metal}
  enclosure: none
  basis: one-third
wiring:
  supply_lead: {length: 40 cm, area: 2.5 mm2}
  connector: {i_rated: 12 A, contacts: 2}
  trace: {width: 5 mm, copper: 70 um, layer: outer}
  spacing: {gap: 0.6 mm, surface: outer-coated}
protection:
  over_voltage: {v_trip: 38 V ± 1 V}
  under_voltage: none
  dc_detector: {v_trip: 2 V, t_trip: {max: 200 ms}, action: remove-supply, independent: true}
  fuse: {i_rated: 10 A, standard: ul-248-14, i2t: 120 A2s, k_ambient: 85 %}
  reverse_polarity: none
safety: {users: instructed, hearing_notice: yes, discharge_wait: 5 s, exposure_time: 2 h}
claims: {efficiency: 84 %, noise: 60 uV, run_time: 5 h, markets: [eu, ca],
  standards: [IEC 62368-1, EN 55032], emission_class: b, radio: no}
deviations:
  - {check: rail-ripple, place: dome-bass, permitted_by: chief engineer,
     reason: the bass is cut below 60 Hz in this product, until: 2031-03-31, up_to: 1.4 V}
"""


def plain(text: str) -> dict[str, Any]:
    """Plain data behind a text, scalars as they are written."""
    document = read(text, "workshop.amp.yaml")
    assert document.refusals == ()
    assert document.data is not None
    return document.data


def spec(changes: dict[str, Any]) -> Amplifier:
    """The workshop's spec with changes at dotted paths."""
    data = deepcopy(plain(WORKSHOP))
    for path, value in changes.items():
        *way, last = path.split("/")
        inner = data
        for step in way:
            inner = inner[step]
        inner[last] = value
    return Amplifier.model_validate(data)


def test_a_whole_spec() -> None:
    amplifier = spec({})
    assert amplifier.channels is not None
    assert list(amplifier.channels) == ["dome-bass", "dome_treble"]
    bass = amplifier.channels["dome-bass"]
    assert bass.filter is not None
    assert bass.filter.c_ground == "none"
    assert bass.output_stage is not None
    assert bass.output_stage.device is not None
    assert bass.output_stage.device.foster is not None
    assert [stage.tau.nominal for stage in bass.output_stage.device.foster if stage.tau] == [
        pytest.approx(1.2e-3),
        pytest.approx(30e-3),
    ]
    treble = amplifier.channels["dome_treble"]
    assert treble.loudspeaker == "none"
    assert treble.limiter == "none"
    assert treble.rated_power == Value(25.0, 25.0, 25.0)
    assert amplifier.deviations is not None
    assert amplifier.deviations[0].up_to == "1.4 V"
    assert amplifier.claims is not None
    assert amplifier.claims.markets == ("eu", "ca")


def test_units_of_the_same_dimension_end_in_si() -> None:
    amplifier = spec({})
    bass = (amplifier.channels or {})["dome-bass"]
    # by hand: 0.1 kV/ns = 1e11 V/s; 0.8 MW/m3 = 8e5 W/m3; 30 L = 0.03 m3; 40 cm = 0.4 m
    assert bass.gate_drive.cmti.nominal == pytest.approx(1e11)
    assert bass.filter.inductor.p_v.nominal == pytest.approx(8e5)
    assert bass.loudspeaker.enclosure.v_b.nominal == pytest.approx(0.03)
    assert bass.loudspeaker.s_d.nominal == pytest.approx(0.0214)
    assert bass.gate_drive.r_g_on.nominal == pytest.approx(10.0)
    assert amplifier.wiring.supply_lead.length.nominal == pytest.approx(0.4)
    assert amplifier.battery.cell.capacity.lo == pytest.approx(2.9 * 3600.0)
    assert amplifier.claims.run_time.nominal == pytest.approx(5 * 3600.0)
    assert amplifier.environment.ambient.hi == pytest.approx(308.15)
    assert amplifier.protection.over_voltage.v_trip.lo == pytest.approx(37.0)


def test_yes_and_no_in_their_spellings() -> None:
    amplifier = spec({})
    assert amplifier.supply.sinks_current == "no"
    assert amplifier.protection.dc_detector.independent == "yes"
    assert (amplifier.channels or {})["dome-bass"].open_load == "yes"
    assert spec({"safety/hearing_notice": "true"}).safety.hearing_notice == "yes"


def test_the_empty_spec_and_empty_keys_are_silent() -> None:
    assert Amplifier.model_validate({"amplifier_spec": "1"}).channels is None
    amplifier = spec({"supply": None, "wiring/trace/width": None})
    assert amplifier.supply is None
    assert amplifier.wiring.trace.width is None


def test_zero_where_it_is_a_value() -> None:
    amplifier = spec({"channels/dome-bass/gate_drive/r_g_on": "0 ohm"})
    assert amplifier.channels["dome-bass"].gate_drive.r_g_on == Value(0.0, 0.0, 0.0)
    assert amplifier.signal.mute_time == Value(0.0, 0.0, 0.0)


def test_temperatures_and_levels_may_be_negative() -> None:
    amplifier = spec({"environment/ambient": "-20 degC .. -5 degC"})
    assert amplifier.environment.ambient.lo == pytest.approx(253.15)


def test_order_zero_of_noise_shaping() -> None:
    amplifier = spec({"channels/dome-bass/modulator/noise_shaping": "0"})
    assert amplifier.channels["dome-bass"].modulator.noise_shaping.nominal == 0.0


def test_a_spec_is_never_changed() -> None:
    battery = spec({}).battery
    with pytest.raises(AttributeError):
        battery.series = None
    assert isinstance(battery, Battery)
    assert isinstance(battery, Section)

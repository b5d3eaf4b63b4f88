"""Filter at the carrier and in the treble, damper and bootstrap, for specs through the graph."""

import math
import random

import numpy as np
import pytest

from ampreview.rules.formulas.lc import deviation_db, frequency_of_deviation

BRIDGE = """
channels:
  main:
    band: 20 Hz .. 20 kHz
    load_range: 4 ohm .. 8 ohm
    output_stage: {topology: full-bridge, devices: discrete, parallel: 2, device: {q_g: 30 nC}}
    modulator: {type: natural-sampling, carrier: 400 kHz, levels: three-level, m_max: 80 %}
    gate_drive: {v_drv: 12 V, bootstrap: {v_f: 1 V, c: 220 nF, r: 0 ohm, i_q: 2 mA}}
    loudspeaker: {z_rated: 4 ohm, r_e: 3 ohm, l_e: 0.2 mH, series: 2, parallel: 1}
    filter:
      inductor: {l: 10 uH, dcr: 50 mohm}
      c_across: {c: 470 nF, dielectric: polypropylene}
"""
NO_DAMPER = BRIDGE + "      damper: none\n"
DAMPED = BRIDGE + "      damper: {r: 6 ohm, c: 1 uF, connection: each-terminal}\n"
ACROSS = BRIDGE + "      damper: {r: 6 ohm, c: 1 uF, connection: across}\n"


def gain(f: float, *branches: complex) -> complex:
    """20 uH with 0.1 ohm, 470 nF and branches across it: one node equation."""
    s = 2j * math.pi * f
    admittance = s * 470e-9 + sum(1 / z for z in branches)
    return abs(1 / (1 + (s * 20e-6 + 0.1) * admittance))


def decibel(load: complex, direct: float, damper: complex) -> float:
    """20 kHz against direct current."""
    return 20 * math.log10(gain(20e3, load, damper) / (direct / (direct + 0.1)))


@pytest.mark.parametrize(
    ("spec", "r", "c"),
    [
        (DAMPED, 12.0, 0.5e-6),
        (ACROSS, 6.0, 1e-6),
        (NO_DAMPER, 1.0, 0.0),
    ],
)
def test_damper_as_the_load_sees_it(derived, spec, r, c):
    """Two resistors to ground are in series, so are two capacitors; none has no capacitance."""
    assert derived("r_damper", spec) == pytest.approx(r)
    assert derived("c_damper", spec) == pytest.approx(c)


def test_filter_without_load_at_twice_the_carrier_of_a_three_level_bridge(derived):
    assert derived("carrier_gain", DAMPED) == pytest.approx(gain(800e3), rel=1e-9)


def test_treble_over_the_rated_loads_and_into_two_coils(derived):
    damper = 12 + 1 / (2j * math.pi * 20e3 * 0.5e-6)
    both = [decibel(z, z, damper) for z in (4.0, 8.0)]
    assert derived("treble_deviation", DAMPED) == pytest.approx(max(map(abs, both)), rel=1e-9)
    coils = 2 * (3.0 + 2j * math.pi * 20e3 * 0.2e-3)
    expected = abs(decibel(coils, 6.0, damper))
    assert derived("treble_deviation_coil", DAMPED) == pytest.approx(expected, rel=1e-9)


def test_a_peak_inside_the_band_is_found_by_a_fine_scan(derived):
    """10 uH a leg and 10 uF: 11 kHz; seven dB are left of it at the top of the band."""
    text = BRIDGE.replace("c: 470 nF", "c: 10 uF").replace("dcr: 50", "dcr: 5")
    text = text.replace("4 ohm .. 8 ohm", "4 ohm .. 30 ohm")
    s = 2j * math.pi * np.linspace(100, 20e3, 40000)
    largest = {}
    for load in (4.0, 30.0):
        gain = abs(1 / (1 + (s * 20e-6 + 0.01) * (s * 10e-6 + 1 / load))) * (load + 0.01) / load
        level = 20 * np.log10(gain)
        largest[load] = max(abs(level.min()), level.max())
    found = derived("treble_deviation", text)
    assert found == pytest.approx(max(largest.values()), abs=0.1)
    assert found > abs(level[-1]) + 10
    assert derived("f_deviation", text) == pytest.approx(11.2e3, rel=0.02)


@pytest.mark.parametrize("seed", range(60))
def test_the_largest_deviation_against_a_fine_scan(seed):
    """Sections, dampers and coils drawn at random; sharp peaks included."""
    draw = random.Random(seed)
    l_1, c_1 = 10 ** draw.uniform(-5.3, -3.5), 10 ** draw.uniform(-6.5, -5)
    r_load, l_load = 10 ** draw.uniform(0.3, 2), draw.choice((0.0, 1e-4, 5e-4))
    second = draw.choice(((0.0, 0.0), (l_1 / 3, c_1 / 3)))
    damper = draw.choice(((1.0, 0.0), ((l_1 / c_1) ** 0.5, c_1), (10.0, 1e-7)))
    parts = (l_1, c_1, r_load, l_load, 0.02, *second, *damper)
    f = frequency_of_deviation(20e3, *parts)
    fine = max(abs(deviation_db(x, *parts)) for x in np.linspace(50, 20e3, 8000))
    assert 0 < f <= 20e3
    assert abs(deviation_db(f, *parts)) > fine - 0.1


def test_bootstrap_without_resistance_loses_its_charge_over_its_capacitance(derived):
    """2 gates of 30 nC and 2 mA for 2.5 us are 65 nC, from 220 nF: 0.295 V of 11 V."""
    assert derived("v_bootstrap_min", BRIDGE) == pytest.approx(11.0 - 65 / 220, rel=1e-9)

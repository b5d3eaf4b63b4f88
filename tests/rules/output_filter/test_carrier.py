"""Carrier at the load: spectra of switched waveforms against figures and formulas."""

import numpy as np
import pytest

from ampreview.rules.derived.response import gain_without_load
from ampreview.rules.formulas.modulation import carrier_fundamental, effective_carrier
from ampreview.rules.output_filter.carrier_residual import figure as residual

SAMPLES = 2**14


def harmonics(waveform):
    """Peak amplitude of each harmonic of one period."""
    return 2 * np.abs(np.fft.rfft(waveform)) / len(waveform)


def leg(duty, v=1.0):
    phase = (np.arange(SAMPLES) + 0.5) / SAMPLES
    return np.where(abs(phase - 0.5) < duty / 2, v, 0.0)


def test_half_bridge_carrier_by_fft():
    found = harmonics(leg(0.5))[1] / 2**0.5
    assert carrier_fundamental(1.0, 1, "two-level") == pytest.approx(found, rel=1e-6)


def test_two_level_bridge_carrier_by_fft():
    wave = leg(0.5) - (1 - leg(0.5))
    found = harmonics(wave)[1] / 2**0.5
    assert carrier_fundamental(1.0, 2, "two-level") == pytest.approx(found, rel=1e-6)


def test_three_level_bridge_carrier_by_fft():
    """Nothing at the carrier; at twice of it the largest value at half modulation."""
    largest = 0.0
    for m in np.linspace(0.0, 1.0, 41):
        spectrum = harmonics(leg((1 + m) / 2) - leg((1 - m) / 2))
        assert spectrum[1] < 1e-3
        largest = max(largest, spectrum[2] / 2**0.5)
    assert carrier_fundamental(1.0, 2, "three-level") == pytest.approx(largest, rel=1e-3)
    assert effective_carrier(400e3, "three-level") == 800e3


def test_residual_of_a_half_bridge_by_superposing_harmonics():
    """50 V, 22 uH, 0.68 uF, 400 kHz, no load: all harmonics through the node equation."""
    total = 0.0
    for n, peak in enumerate(harmonics(leg(0.5, 50.0))[1:60], start=1):
        s = 2j * np.pi * n * 400e3
        gain = 1 / abs(1 + s * s * 22e-6 * 0.68e-6)
        total += (peak * gain) ** 2 / 2
    gain = gain_without_load(400e3, 22e-6, 0.68e-6, 1, 0.0, 0.0, 0.0)
    found = residual(50.0, 25.0, "two-level", 1, gain)
    # the higher harmonics add less than 0.1 %
    assert found == pytest.approx(total**0.5 / (25.0 / 2**0.5), rel=1e-3)


def test_gain_of_two_sections_by_node_equations():
    """Bridge with 40 mohm a leg and 5 uH, 0.47 uF behind: currents and voltages as unknowns."""
    s = 2j * np.pi * 400e3
    nodes = np.array(
        [
            [2 * (s * 10e-6 + 0.04), 1, 0, 0],  # v_in - i_1 z_1 = v_1
            [-1, s * 1e-6, 1, 0],  # i_1 = i_c + i_2
            [0, -1, 2 * s * 5e-6, 1],
            [0, 0, -1, s * 0.47e-6],
        ]
    )
    expected = abs(np.linalg.solve(nodes, [1, 0, 0, 0])[3])
    found = gain_without_load(400e3, 20e-6, 1e-6, 2, 0.04, 5e-6, 0.47e-6)
    assert found == pytest.approx(expected, rel=1e-9)


def test_gain_of_a_published_filter():
    """Universidad de Cantabria thesis 2017: 25 kHz corner, 32.8 dB at 165 kHz by asymptotes."""
    found = -20 * np.log10(gain_without_load(165e3, 70e-6, 0.579e-6, 2, 0.0, 0.0, 0.0))
    assert found == pytest.approx(32.8, rel=0.01)


def test_a_vendors_own_filter_lies_below_the_major_limit():
    """TPA3121D2, 24 V half bridge, 33 uH and 220 nF: 3.7, 5.1, 7.5 % at 350, 300, 250 kHz."""
    sine = 12.0 / 2**0.5
    for f, share in ((350e3, 0.037), (300e3, 0.051), (250e3, 0.075)):
        w2lc = (2 * np.pi * f) ** 2 * 33e-6 * 0.22e-6
        by_hand = harmonics(leg(0.5, 24.0))[1] / 2**0.5 / (w2lc - 1) / sine
        gain = gain_without_load(f, 33e-6, 0.22e-6, 1, 0.0, 0.0, 0.0)
        assert residual(24.0, 12.0, "two-level", 1, gain) == pytest.approx(by_hand, rel=1e-6)
        assert by_hand == pytest.approx(share, abs=5e-4)


def test_heat_at_the_major_limit():
    """8 % of a sine of 300 W in 4 ohm: 0.64 % of its power, 0.8 W in 10 ohm."""
    v = 0.08 * (300 * 4) ** 0.5
    assert v * v / 4 == pytest.approx(0.0064 * 300)
    assert v * v / 10 == pytest.approx(0.77, rel=0.01)
    programme = 10 ** (-12.04 / 10) * 2  # of the sine's power, peak for peak
    assert 0.0064 / programme == pytest.approx(1 / 20, rel=0.03)

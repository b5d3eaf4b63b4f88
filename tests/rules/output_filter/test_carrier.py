"""Carrier at the load: spectra of switched waveforms against figures and formulas."""

import numpy as np
import pytest

from ampreview.rules.derived.carrier import common_mode, gain_into_load, gain_without_load
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
    found = residual(50.0, 25.0, "two-level", 1, gain, 1e3)
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
        assert residual(24.0, 12.0, "two-level", 1, gain, 8.0) == pytest.approx(by_hand, rel=1e-6)
        assert by_hand == pytest.approx(share, abs=5e-4)


def test_heat_at_the_major_limit():
    """8 % of a sine of 300 W in 4 ohm: 0.64 % of its power, 0.8 W in 10 ohm."""
    v = 0.08 * (300 * 4) ** 0.5
    assert v * v / 4 == pytest.approx(0.0064 * 300)
    assert v * v / 10 == pytest.approx(0.77, rel=0.01)
    programme = 10 ** (-12.04 / 10) * 2  # of the sine's power, peak for peak
    assert 0.0064 / programme == pytest.approx(1 / 20, rel=0.03)


def bridge(f, v_left, v_right, load, parts):
    """Voltages of both terminals: two legs with inductor and capacitor to ground, node by node.

    parts: l of ONE leg, c to ground of ONE leg, c across, then of a second section l of ONE
    leg, c to ground, c across, and r, c of a damper from EACH terminal to ground.
    """
    l_1, g_1, x_1, l_2, g_2, x_2, r_d, c_d = parts
    s = 2j * np.pi * f
    y_1, y_2, y_d = 1 / (s * l_1), 1 / (s * l_2), s * c_d / (1 + s * r_d * c_d)
    ends, across = s * g_2 + y_d, s * x_2 + 1 / load
    nodes = np.array(
        [
            [y_1 + y_2 + s * (g_1 + x_1), -s * x_1, -y_2, 0],
            [-s * x_1, y_1 + y_2 + s * (g_1 + x_1), 0, -y_2],
            [-y_2, 0, y_2 + ends + across, -across],
            [0, -y_2, -across, y_2 + ends + across],
        ]
    )
    found = np.linalg.solve(nodes, [v_left * y_1, v_right * y_1, 0, 0])
    return found[2], found[3]


PARTS = (10e-6, 220e-9, 0.68e-6, 4.7e-6, 100e-9, 47e-9, 10.0, 100e-9)


def test_common_mode_of_a_bridge_node_by_node():
    """Both legs alike: neither the load nor what lies across it carries current."""
    both = bridge(384e3, 1.0, 1.0, 4.0, PARTS)
    assert both[0] == pytest.approx(both[1])
    l_1, g_1, _, l_2, g_2, _, r_d, c_d = PARTS
    found = common_mode(384e3, l_1, g_1, 0.0, l_2, g_2, r_d, c_d)
    assert found == pytest.approx(abs(both[0]), rel=1e-9)


def test_difference_of_a_bridge_node_by_node():
    """Half a volt each way: the ladder of both inductors, capacitors to ground halved."""
    left, right = bridge(384e3, 0.5, -0.5, 4.0, PARTS)
    l_1, g_1, x_1, l_2, g_2, x_2, r_d, c_d = PARTS
    first, second = (2 * l_1, x_1 + g_1 / 2), (l_2, x_2 + g_2 / 2)
    found = gain_into_load(384e3, 4.0, *first, 2, 0.0, *second, 2 * r_d, c_d / 2)
    assert found == pytest.approx(abs(left - right), rel=1e-9)


def test_legs_of_a_three_level_bridge_at_idle_carry_the_whole_carrier_together():
    """By FFT: the mean of both legs has the carrier that their difference has not."""
    for m, share in ((0.0, 1.0), (0.5, np.sin(np.pi * 0.75)), (0.9, np.sin(np.pi * 0.95))):
        left, right = leg((1 + m) / 2), leg((1 - m) / 2)
        found = harmonics((left + right) / 2)[1]
        assert found == pytest.approx(share * 2 / np.pi, rel=2e-3)
        assert harmonics(left - right)[1] < 1e-3


def test_resonance_without_load_is_no_residual_at_the_rated_load():
    """1 uH and 160 nF resonate at 398 kHz; 4 ohm damp them to a Q of 1.6."""
    open_end = gain_without_load(400e3, 1e-6, 160e-9, 1, 0.0, 0.0, 0.0)
    loaded = gain_into_load(400e3, 4.0, 1e-6, 160e-9, 1, 0.0, 0.0, 0.0, 1.0, 0.0)
    w = 2 * np.pi * 400e3
    node = (1 / (1j * w * 1e-6)) / (1 / (1j * w * 1e-6) + 1j * w * 160e-9 + 0.25)
    assert loaded == pytest.approx(abs(node), rel=1e-9)
    assert open_end > 50 * loaded

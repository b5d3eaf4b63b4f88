"""Carrier at the load: spectra of switched waveforms against figures and formulas."""

import numpy as np
import pytest

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
    found = residual(50.0, 25.0, "two-level", 400e3, 22e-6, 0.68e-6, 1, 0.0, 0.0, 0.0)
    # the higher harmonics add less than 0.1 %
    assert found == pytest.approx(total**0.5 / (25.0 / 2**0.5), rel=1e-3)

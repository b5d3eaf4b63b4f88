"""Figures of the modulator with every input away from one and zero, by hand."""

import math

import pytest

from ampreview.linter.finding import Severity
from ampreview.rules.formulas.modulation import jitter_noise, oscillation_frequency
from ampreview.rules.modulator.carrier_slope_limit import figure as slope
from ampreview.rules.modulator.edge_jitter_noise import figure as jitter

from ..whole import answer


@pytest.mark.parametrize(("waveform", "rise"), [("sawtooth", 2.0), ("triangle", 4.0)])
def test_slopes_of_tone_and_carrier(waveform: str, rise: float) -> None:
    """A tone of 0.9 at 20 kHz rises at 0.9 x 2 pi 20k; a carrier of +-1 at 2 f or 4 f."""
    steepest = 0.9 * 2 * math.pi * 20e3
    assert slope(400e3, 0.9, 20e3, waveform) == pytest.approx(rise * 400e3 / steepest)


def test_feedback_divides_the_noise_of_the_edges() -> None:
    """Ten of loop gain leave an eleventh; three-level legs are independent, so root 2."""
    alone = jitter_noise(24.0, 2**0.5, 400e3, 100e-12, 20e3)
    found = jitter(24.0, 2.0, "three-level", 400e3, 100e-12, 20e3, 10.0, 100e-6)
    assert found == pytest.approx(alone / 11 / 100e-6)


@pytest.mark.parametrize(("depth", "share"), [(0.0, 1.0), (0.6, 0.64), (1.0, 0.0), (1.3, 0.0)])
def test_loop_stands_still_at_full_depth(depth: float, share: float) -> None:
    assert oscillation_frequency(500e3, depth) == pytest.approx(500e3 * share)


@pytest.mark.parametrize(
    ("stated", "severity"),
    [
        ("am_receiver: none, ", None),
        ("am_receiver: nearby, ", Severity.MAJOR),
        ("", Severity.MAJOR),
    ],
)
def test_a_stated_receiver_counts_in_a_vehicle(stated: str, severity: str | None) -> None:
    """Vehicles have a receiver, common practice; a spec may state that this one has none."""
    text = "channels: {main: {modulator: {carrier: 400 kHz, carrier_shift: no}}}\n"
    found = answer("carrier-in-radio-bands", f"environment: {{{stated}place: vehicle}}\n{text}")
    assert found.severity == (Severity(severity) if severity else None), found.message

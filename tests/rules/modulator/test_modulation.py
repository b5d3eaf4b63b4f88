"""Modulation: exact edges, simulated loops and noise against the formulas."""

import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.special import jv

from ampreview.rules.formulas.modulation import (
    bessel,
    clipped_power_ratio,
    jitter_noise,
    loop_corner,
    loop_gain,
    oscillation_frequency,
    share_of_clipped_power,
    timer_noise,
    uniform_harmonic,
)
from ampreview.rules.modulator import carrier_to_audio_ratio

RATIO = 20


def spectrum_of_edges(rises, falls, order):
    """Peak amplitude of a pulse train of -1 .. 1 at ``order`` cycles per unit of time."""
    w = 2 * np.pi * order
    total = np.sum(np.exp(-1j * w * falls) - np.exp(-1j * w * rises)) / (-1j * w)
    return 2 * 2 * abs(total)


def uniform_pulse(depth, ratio, start, waveform):
    """Edges of one pulse whose width follows one sample."""

    def width(t):
        return (1 + depth * np.sin(2 * np.pi * t)) / 2 / ratio

    if waveform == "sawtooth":
        return start, start + width(start)
    middle = start + 0.5 / ratio
    return middle - width(middle) / 2, middle + width(middle) / 2


def natural_pulse(depth, ratio, start):
    """Edges of one pulse where the signal itself crosses the triangle."""
    middle, slack = start + 0.5 / ratio, 1e-9

    def inside(t):
        return (1 + depth * np.sin(2 * np.pi * t)) / 4 / ratio - abs(t - middle)

    return (
        brentq(inside, start - slack, middle),
        brentq(inside, middle, start + 1 / ratio + slack),
    )


def edges(depth, ratio, waveform=None):
    """Edge times of one period of the tone; natural sampling where no waveform is given."""
    pulses = [
        uniform_pulse(depth, ratio, k / ratio, waveform)
        if waveform
        else natural_pulse(depth, ratio, k / ratio)
        for k in range(ratio)
    ]
    return np.array(pulses).T


@pytest.mark.parametrize("order", [0, 1, 2, 3, 4])
@pytest.mark.parametrize("x", [0.01, 1.0, 2.5, 6.28])
def test_bessel_against_scipy(order, x):
    assert bessel(order, x) == pytest.approx(jv(order, x), rel=1e-9, abs=1e-13)


def natural_product(m, n, depth):
    """Amplitude at m carrier +/- n tone, a share of the ideal peak: two-level, triangle.

    Black, Modulation Theory, 1953 (from memory).
    """
    return 4 / (m * np.pi) * abs(jv(n, m * np.pi * depth / 2) * np.sin((m + n) * np.pi / 2))


@pytest.mark.parametrize(("m", "n"), [(1, 0), (1, 2), (2, 1)])
def test_natural_products_against_exact_edges(m, n):
    rises, falls = edges(0.8, RATIO)
    found = spectrum_of_edges(rises, falls, m * RATIO + n)
    assert natural_product(m, n, 0.8) == pytest.approx(found, rel=1e-3)


def test_natural_sampling_has_no_harmonics_in_the_band():
    rises, falls = edges(0.8, RATIO)
    assert spectrum_of_edges(rises, falls, 1) == pytest.approx(0.8, rel=1e-6)
    assert spectrum_of_edges(rises, falls, 2) < 1e-6
    assert spectrum_of_edges(rises, falls, 3) < 1e-6


@pytest.mark.parametrize("waveform", ["triangle", "sawtooth"])
@pytest.mark.parametrize("n", [2, 3])
def test_uniform_harmonics_against_exact_edges(n, waveform):
    rises, falls = edges(0.8, RATIO, waveform)
    found = spectrum_of_edges(rises, falls, n)
    assert uniform_harmonic(n, 1.0, RATIO, 0.8, waveform) == pytest.approx(found, rel=1e-6)


@pytest.mark.parametrize(("ratio", "told"), [(5, "1.8 %"), (6, "0.04 %"), (8, "0.0004 %")])
def test_products_that_fall_into_the_band(ratio, told):
    """The page of the check tells the worst one, with a full-scale tone at the band's top."""
    lowest = next(n for n in range(2, 12, 2) if abs(ratio - n) <= 1)
    percent = 100 * natural_product(1, lowest, 1.0)
    assert percent == pytest.approx(float(told.removesuffix(" %")), rel=0.07)  # as rounded
    assert told in carrier_to_audio_ratio.__doc__


@pytest.mark.parametrize(("order", "published"), [(0, 58.80), (1, 73.63), (2, 85.91)])
def test_electronotes_an_363_signal_to_noise(order, published):
    """250 levels, 400 kHz, depth 0.9, band 20 kHz."""
    noise = timer_noise(1.0, 400e3, 100e6, order, 20e3)
    assert 20 * np.log10(0.9 / 2**0.5 / noise) == pytest.approx(published, abs=0.01)


@pytest.mark.parametrize("order", [0, 1, 2])
def test_timer_noise_against_a_simulated_quantiser(order):
    """Error feedback of 65536 pulses; noise counted below 20 kHz of 200 kHz."""
    n = 2**16
    k = 331
    dice = np.random.default_rng(7)
    wanted = 0.9 * np.sin(2 * np.pi * k * np.arange(n) / n) + dice.uniform(-1e-4, 1e-4, n)
    step, e1, e2 = 2 / 250, 0.0, 0.0
    out = np.empty(n)
    for i, x in enumerate(wanted):
        shaped = x - (0.0, e1, 2 * e1 - e2)[order]
        out[i] = step * round(shaped / step)
        e1, e2 = out[i] - shaped, e1
    spectrum = np.abs(np.fft.rfft(out - wanted)) ** 2 * 2 / n**2
    measured = np.sqrt(np.sum(spectrum[1 : n // 20]))
    assert timer_noise(1.0, 400e3, 100e6, order, 20e3) == pytest.approx(measured, rel=0.1)


def test_jitter_noise_against_a_simulated_pulse_train():
    """100 V, 400 kHz, 100 ps on both edges: charge error of each edge, spectrum to 20 kHz."""
    n = 2**16
    dice = np.random.default_rng(3)
    error = 100.0 * 400e3 * (dice.normal(0, 100e-12, n) - dice.normal(0, 100e-12, n))
    spectrum = np.abs(np.fft.rfft(error)) ** 2 * 2 / n**2
    measured = np.sqrt(np.sum(spectrum[1 : n // 20]))
    assert jitter_noise(100.0, 1, 400e3, 100e-12, 20e3) == pytest.approx(measured, rel=0.03)


@pytest.mark.parametrize("m", [0.0, 0.5, 0.8, 0.9])
def test_hysteretic_frequency_by_time_stepping(m):
    """Integrator of v - m between two thresholds; frequency against that at idle."""

    def period(level):
        x, v, t, dt, crossings = 0.0, 1.0, 0.0, 1e-4, []
        while len(crossings) < 6:
            x += (v - level) * dt
            t += dt
            if v > 0 and x > 0.5:
                v = -1.0
            elif v < 0 and x < -0.5:
                v = 1.0
                crossings.append(t)
        return (crossings[-1] - crossings[1]) / 4

    assert oscillation_frequency(1.0, m) == pytest.approx(period(0.0) / period(m), rel=2e-3)


def clipped(drive):
    """Distortion and power of a hard-clipped sine, from 20000 samples."""
    wave = np.clip(drive * np.sin(2 * np.pi * (np.arange(20000) + 0.5) / 20000), -1, 1)
    spectrum = np.abs(np.fft.rfft(wave))
    return np.sqrt(np.sum(spectrum[2:] ** 2)) / spectrum[1], 2 * np.mean(wave**2)


@pytest.mark.parametrize("thd", [0.001, 0.003, 0.01, 0.03, 0.1])
def test_power_at_a_distortion_against_the_clipped_sine(thd):
    drive = brentq(lambda a: clipped(a)[0] - thd, 1.0001, 3.0)
    assert clipped_power_ratio(thd) == pytest.approx(clipped(drive)[1], rel=3e-3)


def test_tpa3001d1_power_at_one_and_ten_percent():
    """SLOS398E p. 18: 16 V peak in 8 ohm make 16 W below 1 %, 20 W at 10 %.

    So 10 % over less than 1 % lies between 10 % over 1 % and 10 % over the onset.
    """
    assert 16.0**2 / (2 * 8.0) == 16.0
    at_ten = clipped_power_ratio(0.10)
    assert at_ten / clipped_power_ratio(0.01) < 20 / 16 < at_ten


# TPA3221 data sheet: 4 ohm and 8 ohm output power at 1 % and 10 %, read off its plot.
@pytest.mark.parametrize(
    ("one", "ten"),
    [
        (14.6, 18.2),
        (40.3, 49.9),
        (88.1, 107.7),
        (49.7, 61.2),
    ],
)
def test_tpa3221_published_power_at_1_and_10_percent(one, ten):
    found = clipped_power_ratio(0.1) / clipped_power_ratio(0.01)
    assert found == pytest.approx(ten / one, rel=0.02)


@pytest.mark.parametrize(
    ("over_onset", "expected"),
    [
        (0.9, 0.9 / 1.048),  # clean already: as at 1 %
        (1.083, 1.0),  # 130 W where 120 W are clean: reached at about 2 %
        (1.25, 1.0),
        (1.5, 1.5 / 1.288),  # beyond what 10 % gives
    ],
)
def test_silent_distortion_lies_between_1_and_10_percent(over_onset, expected):
    found = share_of_clipped_power(over_onset, 0.01, 0.10)
    assert found == pytest.approx(expected, rel=1e-3)
    if expected == 1.0:  # the clipped sine itself has that power below 10 %
        drive = brentq(lambda a: clipped(a)[1] - over_onset, 1.0001, 3.0)
        assert 0.01 < clipped(drive)[0] < 0.10


def test_stated_distortion_is_taken_as_it_is():
    for over_onset in (0.9, 1.083, 1.25, 1.5):
        stated = share_of_clipped_power(over_onset, 0.01, 0.01)
        assert stated == pytest.approx(over_onset / 1.048, rel=1e-9)


@pytest.mark.parametrize("order", [1, 2, 3])
def test_loop_gain_of_leaky_integrators(order):
    """A cascade of amplifiers with one pole each, as complex numbers."""
    crossover, corner = 60e3, 4e3
    for f in (20.0, 1e3, 7e3, 60e3):
        gain = abs((crossover / corner / (1 + 1j * f / corner)) ** order)
        assert loop_gain(f, crossover, corner, order) == pytest.approx(gain, rel=1e-12)
    gain = loop_gain(1e3, crossover, corner, order)
    assert loop_corner(1e3, gain, crossover, order) == pytest.approx(corner, rel=1e-9)
    assert loop_corner(1e3, 1e9, crossover, order) == 0.0

"""Capacitors: published tables, differential equation and complex numbers."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from ampreview.rules.formulas.capacitor import (
    bias_third_harmonic,
    current_at_loss,
    high_pass_corner,
    reactive_current,
    series_rc_power,
)


# CS4525 data sheet DS726PP1, table 19: load, coupling capacitor, corner as printed.
@pytest.mark.parametrize(
    ("load", "c", "printed"),
    [
        (4, 1000e-6, 40),
        (4, 680e-6, 58),
        (4, 330e-6, 120),
        (8, 470e-6, 42),
        (8, 330e-6, 60),
        (8, 180e-6, 110),
    ],
)
def test_cs4525_table_19(load, c, printed):
    assert high_pass_corner(load, c) == pytest.approx(printed, rel=0.015)


# CEE "Technicalities": loss factors; 1 uF, 0.25 W, 100 kHz.
@pytest.mark.parametrize(("tan_delta", "volts"), [(0.017, 4.838), (0.0002, 44.60)])
def test_loss_limit_by_the_equivalent_series_resistance(tan_delta, volts):
    current = current_at_loss(0.25, 100e3, 1e-6, tan_delta, 0.0)
    esr = tan_delta / (2 * np.pi * 100e3 * 1e-6)
    assert current**2 * esr == pytest.approx(0.25, rel=1e-9)
    assert current / (2 * np.pi * 100e3 * 1e-6) == pytest.approx(volts, rel=1e-3)


def test_metal_bounds_what_a_good_film_carries():
    """0.25 W in 5 mohm are 7.07 A, whatever the dielectric; a parallel loss model agrees."""
    f, c, tan_delta, r = 800e3, 680e-9, 0.0002, 5e-3
    i = current_at_loss(0.25, f, c, tan_delta, r)
    film = 1 / (2j * np.pi * f * c * (1 - 1j * tan_delta))
    assert i**2 * (film + r).real == pytest.approx(0.25, rel=1e-6)
    assert 6.9 < i < 0.25**0.5 / 5e-3**0.5


def test_series_rc_power_with_complex_numbers():
    v, f, r, c = 17.68, 20e3, 10.0, 100e-9
    current = v / (r + 1 / (2j * np.pi * f * c))
    assert series_rc_power(v, f, r, c) == pytest.approx(abs(current) ** 2 * r, rel=1e-9)


def test_mattingly_film_capacitor_at_25_khz():
    """1 uF has 6.4 ohm at 25 kHz: 50 V drive 7.9 A through it."""
    assert 50.0 / reactive_current(25e3, 1e-6, 50.0) == pytest.approx(6.4, rel=0.01)


def third_harmonic_of_a_class_2_filter(ratio, loss, q=0.7071):
    """Filter with a capacitor whose slope dq/dv falls by ``loss`` at the peak, as an ODE.

    Charge of a bias curve c (1 - loss v^2): q(v) = v - loss v^3 / 3, corner at 1 rad/s.
    """
    w = ratio

    def run(t, x):
        current, v = x
        slope = 1 - loss * v**2
        return [np.sin(w * t) - v, (current - v / q) / slope]

    period = 2 * np.pi / w
    turns = 12
    t = np.linspace((turns - 1) * period, turns * period, 4096, endpoint=False)
    found = solve_ivp(run, (0, turns * period), [0.0, 0.0], t_eval=t, rtol=1e-10, atol=1e-12)
    spectrum = np.abs(np.fft.rfft(found.y[1]))
    return spectrum[3] / spectrum[1]


def test_bias_distortion_against_the_differential_equation():
    found = bias_third_harmonic(1.0, 15.0, 0.1)
    assert found == pytest.approx(third_harmonic_of_a_class_2_filter(1 / 15, 0.1), rel=0.06)
    # far below the corner the first-order result is exact
    found = bias_third_harmonic(1.0, 40.0, 0.05)
    assert found == pytest.approx(third_harmonic_of_a_class_2_filter(1 / 40, 0.05), rel=0.015)

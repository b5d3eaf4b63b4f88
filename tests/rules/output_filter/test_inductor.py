"""Inductor: switched circuits in time and quadrature against the formulas."""

import numpy as np
import pytest
from scipy.integrate import quad, solve_ivp

from ampreview.rules.formulas.inductor import (
    core_loss,
    flux_swing,
    hot_saturation,
    mean_square_three_level,
    mean_square_two_level,
    ripple_three_level,
    ripple_to_ground,
    ripple_two_level,
)

UH, NF, UF = 1e-6, 1e-9, 1e-6


def periodic_current(v_left, v_right, l_leg, c_across, c_ground, load, carrier, periods=400):
    """Inductor currents of a bridge over its last period; drives are functions of phase."""
    steps = 400
    dt = 1 / (carrier * steps)
    # states: i1, i2, v1, v2
    a = np.zeros((4, 4))
    a[0, 2] = a[1, 3] = -1 / l_leg
    cap = np.array([[c_ground + c_across, -c_across], [-c_across, c_ground + c_across]])
    inverse = np.linalg.inv(cap)
    conductance = np.array([[1, -1], [-1, 1]]) / load
    a[2:, 0:2] = inverse
    a[2:, 2:] = -inverse @ conductance
    b = np.zeros((4, 2))
    b[0, 0] = b[1, 1] = 1 / l_leg
    eye = np.eye(4)
    forward = np.linalg.inv(eye - a * dt / 2)
    phase = (np.arange(steps) + 0.5) / steps
    drive = np.array([[v_left(p), v_right(p)] for p in phase])
    # exact periodic solution of the discrete system
    total, offset = eye, np.zeros(4)
    for k in range(steps):
        step = forward @ (eye + a * dt / 2)
        total, offset = step @ total, step @ offset + forward @ b @ drive[k] * dt
    x = np.linalg.solve(eye - total, offset)
    rows = []
    for k in range(steps):
        x = forward @ ((eye + a * dt / 2) @ x + b @ drive[k] * dt)
        rows.append(x)
    return np.array(rows)


def pulse(v, duty):
    """A leg high for ``duty`` of the period, centred."""
    return lambda phase: v if abs(phase - 0.5) < duty / 2 else 0.0


def test_two_level_bridge_ripple_in_time():
    v, l_leg, f = 24.0, 10 * UH, 400e3
    low = pulse(v, 0.5)
    rows = periodic_current(low, lambda p: v - low(p), l_leg, 10 * UF, 0.01 * UF, 8.0, f)
    assert np.ptp(rows[:, 0]) == pytest.approx(ripple_two_level(v, l_leg, f), rel=0.01)


def test_three_level_bridge_without_ground_capacitors_in_time():
    """Half modulation: duties 0.75 and 0.25, centred pulses, capacitor across the load."""
    v, l_leg, f = 24.0, 10 * UH, 400e3
    rows = periodic_current(pulse(v, 0.75), pulse(v, 0.25), l_leg, 10 * UF, 1e-12, 8.0, f)
    differential = (rows[:, 0] - rows[:, 1]) / 2
    assert np.ptp(differential) == pytest.approx(ripple_three_level(v, l_leg, f), rel=0.01)


@pytest.mark.parametrize(("c_ground", "tolerance"), [(2 * UF, 0.02), (1e-9, 0.1)])
def test_three_level_bridge_with_ground_capacitors_at_idle_in_time(c_ground, tolerance):
    """Both legs move together: full leg ripple, or little where c_ground is small."""
    v, l_leg, f = 50.0, 11 * UH, 400e3
    leg = pulse(v, 0.5)
    rows = periodic_current(leg, leg, l_leg, 0.47 * UF, c_ground, 8.0, f)
    found = np.ptp(rows[:, 0])
    allowed = ripple_to_ground(v, l_leg, c_ground, f)
    if c_ground > 1 * UF:
        assert allowed == pytest.approx(found, rel=tolerance)
    else:
        # the larger of idle and half-modulation ripple counts, and idle is the smaller here
        assert allowed == ripple_three_level(v, l_leg, f)
        assert found < allowed


def test_ripple_of_a_real_half_bridge_filter_by_an_integrator():
    """22 uH, 0.68 uF, 50 V, 400 kHz into 8 ohm: 0.9 % above the volt-second value."""
    v, l_leg, c, load, f = 50.0, 22 * UH, 0.68 * UF, 8.0, 400e3
    period = 1 / f

    def slope(level):
        return lambda _t, x: [(level - x[1]) / l_leg, (x[0] - x[1] / load) / c]

    x, peaks = [0.0, 0.0], []
    for k in range(160):
        for level in (v / 2, -v / 2):
            run = solve_ivp(slope(level), (0, period / 2), x, rtol=1e-9, atol=1e-9)
            x = run.y[:, -1]
            if k > 150:
                peaks.append(x[0])
    expected = max(peaks) - min(peaks)
    assert ripple_two_level(v, l_leg, f) == pytest.approx(expected, rel=0.012)


@pytest.mark.parametrize("depth", [0.2, 0.5, 0.8, 1.0])
def test_mean_square_of_the_ripple_by_quadrature(depth):
    def m(t):
        return depth * abs(np.sin(t))

    two = quad(lambda t: (1 - m(t) ** 2) ** 2, 0, np.pi)[0] / np.pi
    three = quad(lambda t: (4 * m(t) * (1 - m(t))) ** 2, 0, np.pi)[0] / np.pi
    assert mean_square_two_level(depth) == pytest.approx(two, rel=1e-9)
    assert mean_square_three_level(depth) == pytest.approx(three, rel=1e-9)


def test_core_loss_of_a_triangle_is_seven_percent_below_the_sine_law():
    """Improved generalised Steinmetz equation by quadrature, exponents 1.4 and 2.6."""
    a, b, f = 1.4, 2.6, 400e3
    flux = flux_swing(22 * UH, ripple_two_level(50.0, 22 * UH, f), 12, 40e-6)
    cosine = quad(lambda t: abs(np.cos(t)) ** a, 0, 2 * np.pi)[0]
    k = 375e3 / (100e3**a * 0.2**b)
    k_i = k / ((2 * np.pi) ** (a - 1) * cosine * 2 ** (b - a))
    period = 1 / f
    rate = 2 * flux / (period / 2)
    triangle = k_i * rate**a * (2 * flux) ** (b - a) * 1500e-9
    sine = core_loss(flux, f, 1500e-9, 375e3, a, b, 100e3, 0.2)
    assert sine == pytest.approx(34.9e-3, rel=5e-3)
    assert triangle / sine == pytest.approx(0.9321, rel=1e-3)


def test_flux_by_integrating_the_voltage():
    """Half a period of half the swing on 12 turns and 40 mm2, half of the total swing."""
    expected = quad(lambda t: 25.0 / (12 * 40e-6), 0, 1 / 400e3 / 2)[0] / 2
    found = flux_swing(22 * UH, ripple_two_level(50.0, 22 * UH, 400e3), 12, 40e-6)
    assert found == pytest.approx(expected, rel=1e-9)


def test_n87_saturation_between_its_two_printed_points():
    """490 mT at 25 degC, 390 mT at 100 degC (from memory): halfway 440 mT."""
    found = hot_saturation(490.0, 390 / 490, 335.65, 298.15, 373.15)
    assert found == pytest.approx(440.0, rel=1e-6)
    assert hot_saturation(490.0, 390 / 490, 263.15, 298.15, 373.15) == 490.0


@pytest.mark.parametrize(("c_ground", "share"), [(1e-6, 1.0), (2e-9, None)])
def test_common_mode_ripple_by_the_impedance_of_l_and_c(c_ground, share):
    """Far above the carrier resonate 10 uH and 2 nF: the capacitor's reactance sets the ripple."""
    two_level = 50.0 / (4 * 10e-6 * 400e3)
    if share is None:
        resonance = 1 / (2 * np.pi * np.sqrt(10e-6 * c_ground))
        share = max((400e3 / resonance) ** 2, 0.25)
    assert ripple_to_ground(50.0, 10e-6, c_ground, 400e3) == pytest.approx(two_level * share)
    middle = 1 / ((2 * np.pi * 400e3) ** 2 * 10e-6) * 0.6
    assert ripple_to_ground(50.0, 10e-6, middle, 400e3) == pytest.approx(two_level * 0.6)


def test_depth_outside_zero_to_one_counts_as_the_end():
    for function in (mean_square_two_level, mean_square_three_level):
        assert function(1.3) == function(1.0)
        assert function(-0.4) == function(0.0)
        assert function(0.9) != function(1.0)


def test_saturation_never_falls_below_a_tenth():
    assert hot_saturation(10.0, 0.3, 298.15 + 150, 298.15, 373.15) == pytest.approx(1.0)
    assert hot_saturation(10.0, 0.3, 298.15 - 50, 298.15, 373.15) == pytest.approx(10.0)


def test_ripple_of_twice_the_peak_loses_two_thirds_of_full_power_at_idle():
    """The reason of the major limit: a triangle of +-1 against a sine of peak 1, sampled."""
    phase = (np.arange(4000) + 0.5) / 4000
    triangle, sine = 4 * abs(phase - 0.5) - 1, np.sin(2 * np.pi * phase)
    assert np.ptp(triangle) == pytest.approx(2.0, rel=1e-3)
    assert np.mean(triangle**2) / np.mean(sine**2) == pytest.approx(2 / 3, rel=1e-4)

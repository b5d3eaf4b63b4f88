"""Bus pumping against simulations that switch, and against published figures."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import minimize_scalar

from ampreview.rules.formulas.pumping import (
    bridge_rise,
    channel_rise,
    half_bridge_rise,
    held_rise,
    limited_by_trip,
    net_phase,
    offset_current,
    pumping,
    worst_depth,
)

CARRIER = 20e3
STEPS = 500  # within one period of the carrier


def switched_rise(v: float, m: float, r: float, f: float, c: float, phase: float = 0.0) -> float:
    """Rise of the negative rail, stepped through every carrier period with its switching.

    The lower switch conducts while the triangle is above the modulation; a source that
    only sources holds the rail at v from below.
    """
    dt = 1 / (CARRIER * STEPS)
    t = (np.arange(round(1.5 / (f * dt))) + 0.5) * dt
    triangle = 4 * np.abs((t * CARRIER) % 1.0 - 0.5) - 1
    wave = 2 * np.pi * f * t
    lower_on = m * np.sin(wave) < triangle
    charge = np.where(lower_on, m * v / r * np.sin(wave - phase), 0.0) * dt
    path = np.concatenate([[0.0], np.cumsum(charge)]) / c
    return float(np.max(path - np.minimum.accumulate(path)))


# Rows of a published switched simulation with a carrier of 20 kHz: V, M, R, f, C, phase, V.
SIMULATION_TABLE = [
    (50.0, 0.6366, 4.0, 20.0, 4700e-6, 0.0, 6.735),
    (50.0, 1.0, 4.0, 20.0, 4700e-6, 0.0, 4.541),
    (35.0, 0.5, 4.0, 20.0, 1000e-6, 0.0, 21.14),
    (50.0, 0.8, 4.0, 20.0, 4700e-6, math.radians(30), 7.718),
]


@pytest.mark.parametrize(("v", "m", "r", "f", "c", "phase", "volts"), SIMULATION_TABLE)
def test_table_of_the_switched_simulation(
    v: float, m: float, r: float, f: float, c: float, phase: float, volts: float
) -> None:
    figure = half_bridge_rise(v, m, phase, f, r, c)
    assert figure == pytest.approx(volts, rel=5e-4)
    assert figure == pytest.approx(switched_rise(v, m, r, f, c, phase), rel=3e-3)


def test_single_supply_half_bridge_swings_about_half_the_rail() -> None:
    """12 V, 4 ohm, 100 Hz, 220 uF, published simulation 3.417 V, formula 3.454 V.

    The upper switch returns current while the load current is negative: the same charge
    as on a split supply of half the voltage.
    """
    figure = channel_rise(1, 6.0, 1.0, 0.0, 100.0, 4.0, 220e-6)
    assert figure == pytest.approx(3.454, rel=5e-4)
    assert figure == pytest.approx(3.417, rel=0.012)
    assert figure == pytest.approx(switched_rise(6.0, 2 / math.pi, 4.0, 100.0, 220e-6), rel=5e-3)


def held_by_feedback(v: float, m: float, r: float, f: float, c: float) -> float:
    """Rise when feedback keeps the output voltage in spite of the risen rail (ODE)."""

    def slope(t: float, x: np.ndarray) -> list[float]:
        out = m * v * math.sin(2 * math.pi * f * t)
        lower = (v - out) / (2 * v + x[0])
        return [out / r * lower / c]

    return float(
        solve_ivp(slope, (0, 1 / (2 * f)), [0.0], rtol=1e-9, atol=1e-9, max_step=1e-4).y[0, -1]
    )


@pytest.mark.parametrize(("c", "depth"), [(1000e-6, 0.6366), (470e-6, 0.6366), (1000e-6, 0.9)])
def test_large_rise_with_the_output_held(c: float, depth: float) -> None:
    figure = held_rise(half_bridge_rise(50.0, depth, 0.0, 20.0, 4.0, c), 100.0)
    assert figure == pytest.approx(held_by_feedback(50.0, depth, 4.0, 20.0, c), rel=1e-6)


def test_published_large_rise() -> None:
    """50 V, 4 ohm, 20 Hz, 1000 uF: switched simulation 27.81 V, small-rise form 31.66 V."""
    small = half_bridge_rise(50.0, 0.6366, 0.0, 20.0, 4.0, 1000e-6)
    assert small == pytest.approx(31.66, rel=5e-4)
    assert held_rise(small, 100.0) == pytest.approx(27.81, rel=1e-3)


@pytest.mark.parametrize("degrees", [20.0, 45.0, 60.0])
def test_full_bridge_returns_the_reactive_energy(degrees: float) -> None:
    """Integral of the negative part of m i over one period, rail fixed and rail rising."""
    v, m, f, z, c, phase = 48.0, 0.9, 50.0, 4.0, 1e-3, math.radians(degrees)
    x = np.linspace(0, math.pi, 400_001)
    power = m**2 * v**2 / z * np.sin(x) * np.sin(x - phase)
    energy = -float(np.trapezoid(np.minimum(power, 0.0), x)) / (2 * math.pi * f)
    figure = bridge_rise(v, m, phase, f, z, c)
    assert figure == pytest.approx(energy / (v * c), rel=1e-6)
    risen = math.sqrt(v**2 + 2 * energy / c) - v  # energy balance of the capacitor
    assert held_rise(figure, v) == pytest.approx(risen, rel=1e-6)


def test_one_channel_alone_is_the_bound_below_both_in_phase() -> None:
    """Two channels of 50 V and 4 ohm, one on 8 ohm: the larger row of the table alone."""
    two = ((1, 1), (50.0, 50.0), (0.95, 0.95), (1e9, 1e9), (0.0, 0.0), (20.0, 20.0), (4.0, 8.0))
    alone = pumping(*two, 4700e-6, "alone", 50.0, 2)
    assert alone == pytest.approx(100.0 * (math.sqrt(1 + 2 * 6.735 / 100.0) - 1), rel=1e-3)
    assert alone < pumping(*two, 4700e-6, "in-phase", 50.0, 2)


def test_full_bridge_published_value() -> None:
    assert bridge_rise(48.0, 0.9, math.radians(60), 50.0, 4.0, 1e-3) == pytest.approx(
        5.297, rel=1e-3
    )
    assert bridge_rise(48.0, 0.9, 0.0, 50.0, 4.0, 1e-3) == 0.0


@pytest.mark.parametrize("degrees", [0.0, 30.0, 45.0])
def test_worst_depth_by_search(degrees: float) -> None:
    phase = math.radians(degrees)
    found = minimize_scalar(
        lambda m: -half_bridge_rise(50.0, m, phase, 20.0, 4.0, 1e-3), bounds=(0.0, 1.0)
    )
    assert worst_depth(1.0, phase) == pytest.approx(found.x, abs=1e-4)


def test_two_channels_in_phase_pump_twice_in_opposition_not_at_all() -> None:
    """50 V, 4 ohm, 20 Hz, 4700 uF: one channel 6.737 V, two 13.47 V before the held output."""
    two = ((1, 1), (50.0,) * 2, (1.0,) * 2, (1e9,) * 2, (0.0,) * 2, (20.0,) * 2, (4.0,) * 2)
    both = pumping(*two, 4700e-6, "in-phase", 50.0, 2)
    assert both == pytest.approx(held_rise(13.474, 100.0), rel=1e-3)
    assert pumping(*two, 4700e-6, "opposite", 50.0, 2) == 0.0


def test_opposition_is_an_upper_bound() -> None:
    """Three channels, the middle one reversed: net charge of one rail, integrated."""
    v, m, r, f, c = 50.0, 2 / math.pi, 4.0, 20.0, 4700e-6
    x = np.linspace(0, 2 * math.pi, 200_001)
    current = m * v / r * np.sin(x)
    into_negative = 2 * current * (1 - m * np.sin(x)) / 2 - current * (1 + m * np.sin(x)) / 2
    path = np.concatenate(
        [[0.0], np.cumsum((into_negative[1:] + into_negative[:-1]) / 2 * np.diff(x))]
    ) / (2 * math.pi * f * c)
    exact = float(np.max(path - np.minimum.accumulate(path)))
    three = ((1,) * 3, (v,) * 3, (m,) * 3, (1e9,) * 3, (0.0,) * 3, (f,) * 3, (r,) * 3)
    figure = pumping(*three, c, "opposite", v, 2)
    assert 0.0 < exact <= figure


def test_limiter_below_the_worst_depth_lessens_the_rise() -> None:
    one = ((1,), (50.0,), (1.0,))
    rest = ((0.0,), (20.0,), (4.0,), 4700e-6, "in-phase", 50.0, 2)
    limited = pumping(*one, (10.0,), *rest)
    small = switched_rise(50.0, 0.2, 4.0, 20.0, 4700e-6)
    assert limited == pytest.approx(held_rise(small, 100.0), rel=5e-3)


def test_reference_board_shows_less_than_its_own_capacitors_allow() -> None:
    """IRAUDAMP7D manual, figure 29: 35 V rails, 30 Hz, 30 V peak, swing of 5 .. 5.5 V.

    470 uF a rail alone would give 28 V into 4 ohm and 14 V into 8 ohm: about 2.5 mF and
    1.2 mF must have been there, the bench supply's own.  Hence the total is asked for.
    """
    depth = 30.0 / 35.0
    assert half_bridge_rise(35.0, depth, 0.0, 30.0, 4.0, 470e-6) == pytest.approx(28.0, rel=0.02)
    assert half_bridge_rise(35.0, depth, 0.0, 30.0, 8.0, 470e-6) == pytest.approx(14.0, rel=0.02)
    assert 5.0 < half_bridge_rise(35.0, depth, 0.0, 30.0, 4.0, 2.5e-3) < 5.5
    assert 5.0 < half_bridge_rise(35.0, depth, 0.0, 30.0, 8.0, 1.25e-3) < 5.5


def test_quick_form_is_optimistic() -> None:
    """V / (8 pi f R C), as remembered from a maker's tutorial, is pi/4 of the worst case."""
    worst = channel_rise(1, 50.0, 1.0, 0.0, 20.0, 4.0, 4700e-6)
    assert 50.0 / (8 * math.pi * 20.0 * 4.0 * 4700e-6) / worst == pytest.approx(math.pi / 4)


@pytest.mark.parametrize(("v_dc", "r", "v_rail"), [(2.0, 1.0, 75.0), (17.5, 4.0, 35.0)])
def test_offset_current_by_switching(v_dc: float, r: float, v_rail: float) -> None:
    """Mean of the current through the lower switch at constant modulation."""
    triangle = np.linspace(-1, 1, 1_000_001)
    lower_on = v_dc / v_rail < triangle
    assert offset_current(v_dc, r, v_rail) == pytest.approx(
        v_dc / r * float(np.mean(lower_on)), rel=1e-5
    )


def test_a_small_offset_returns_little() -> None:
    """20 mV into 4 ohm: half of 5 mA."""
    assert offset_current(0.02, 4.0, 35.0) == pytest.approx(2.5e-3, rel=1e-3)


def test_trip_stops_the_pumping_but_not_the_source() -> None:
    """Trip at 40 V, source up to 45 V: the capacitors see 45 V."""
    assert limited_by_trip(45.0, 10.0, 40.0) == 45.0
    assert limited_by_trip(35.0, 10.0, 40.0) == 40.0
    assert limited_by_trip(35.0, 2.0, 40.0) == 37.0


def test_coupled_half_bridges_of_a_dock() -> None:
    """A published 12 V dock amplifier with 220 uF: a reckoning gives 4.1 V at 85 Hz, 4 ohm."""
    small = channel_rise(1, 6.0, 0.95, 0.0, 85.0, 4.0, 220e-6)
    assert small == pytest.approx(4.1, rel=0.02)
    assert small == pytest.approx(switched_rise(6.0, 2 / math.pi, 4.0, 85.0, 220e-6), rel=5e-3)


@pytest.mark.parametrize("drawn", [0.0, 4.0, 18.0, 60.0])
def test_what_draws_from_the_rail_all_the_time_is_not_returned(drawn: float) -> None:
    """48 V on 4 ohm at 60 deg and 50 Hz: the current of the rail, where it is negative, summed."""
    v, m, phase, f, z, c = 48.0, 0.9, math.radians(60), 50.0, 4.0, 1e-3
    steps, charge = 200_000, 0.0
    for k in range(steps):  # a half cycle: one return
        x = math.pi * k / steps
        current = m * math.sin(x) * m * v / z * math.sin(x - phase) + drawn / v
        charge += max(-current, 0.0) * math.pi / steps / (2 * math.pi * f)
    left = net_phase(phase, drawn, v, v, m, 1e9, z)
    assert bridge_rise(v, m, left, f, z, c) == pytest.approx(charge / c, rel=1e-3, abs=1e-9)


def test_a_limiter_counts_in_what_is_returned() -> None:
    """Half the level is half the current and half the depth: the same drain weighs four times."""
    limited = net_phase(1.0, 5.0, 48.0, 48.0, 0.9, 0.45 * 48.0, 4.0)
    assert limited == pytest.approx(net_phase(1.0, 20.0, 48.0, 48.0, 0.9, 1e9, 4.0))

"""Ringing of the loop, snubber and saturating inductor against solved circuits."""

import numpy as np
import pytest
from scipy.integrate import quad, solve_ivp

from ampreview.rules.formulas.ringing import (
    current_overshoot,
    inductance_at,
    ringing_impedance,
    snubber_share,
)
from ampreview.rules.output_stage.snubber_dissipation import figure as snubber_heat

L_LOOP, C_SWITCH = 10e-9, 300e-12


def step_overshoot(ratio: float) -> float:
    """Peak of a stepped L-C above its step, with a snubber of sqrt(L/C) and ratio C."""
    r, c_s = ringing_impedance(L_LOOP, C_SWITCH), ratio * C_SWITCH

    def rates(_: float, x: np.ndarray) -> list[float]:
        i, v, v_s = x
        i_s = (v - v_s) / r
        return [(1.0 - v) / L_LOOP, (i - i_s) / C_SWITCH, i_s / c_s]

    times = np.linspace(0.0, 60e-9, 6001)
    solved = solve_ivp(rates, (0.0, 60e-9), [0.0, 0.0, 0.0], t_eval=times, rtol=1e-8, atol=1e-10)
    return float(solved.y[1].max() - 1.0)


@pytest.mark.parametrize(("ratio", "printed"), [(1, 0.703), (2, 0.528), (3, 0.434), (4, 0.378)])
def test_table_of_overshoot_with_a_snubber(ratio: int, printed: float) -> None:
    assert step_overshoot(ratio) == pytest.approx(printed, abs=2e-3)
    assert snubber_share(ratio * C_SWITCH, C_SWITCH) == pytest.approx(printed, rel=0.03)


def ramp_peak(current: float, t_edge: float) -> float:
    """Peak across the switch when its current falls in a ramp, undamped loop."""

    def rates(t: float, x: np.ndarray) -> list[float]:
        i, v = x
        taken = current * max(1 - t / t_edge, 0.0)
        return [-v / L_LOOP, (i - taken) / C_SWITCH]

    end = t_edge + 30e-9
    times = np.linspace(0.0, end, 20001)
    solved = solve_ivp(
        rates, (0.0, end), [current, 0.0], t_eval=times, rtol=1e-9, atol=1e-9, max_step=t_edge / 20
    )
    return float(solved.y[1].max())


@pytest.mark.parametrize("t_edge", [0.2e-9, 2e-9, 5e-9, 12e-9, 40e-9])
def test_overshoot_bounds_the_solved_ramp(t_edge: float) -> None:
    found = ramp_peak(10.0, t_edge)
    bound = current_overshoot(10.0, L_LOOP, C_SWITCH, t_edge)
    assert found <= bound * 1.001
    assert found >= 0.6 * bound


def test_ringing_of_an_instant_step() -> None:
    """10 A, 10 nH, 300 pF: 57.74 V, solved."""
    assert ramp_peak(10.0, 0.05e-9) == pytest.approx(57.74, rel=1e-3)


def test_halving_the_ringing_frequency() -> None:
    """Three times the capacitance added halves the frequency: 91.89 MHz with 300 pF, 10 nH."""
    frequency = 1 / (2 * np.pi * (L_LOOP * C_SWITCH) ** 0.5)
    assert frequency == pytest.approx(91.89e6, rel=1e-4)
    assert 1 / (2 * np.pi * (L_LOOP * 4 * C_SWITCH) ** 0.5) == pytest.approx(frequency / 2)


@pytest.mark.parametrize("t_edge", [0.8e-9, 8e-9, 40e-9])
def test_heat_in_a_snubber_by_integration(t_edge: float) -> None:
    c, r, swing, carrier = 1e-9, 10.0, 100.0, 400e3
    whole, tau = t_edge / 0.8, r * c
    rising, _ = quad(lambda t: (swing / whole * c * (1 - np.exp(-t / tau))) ** 2 * r, 0, whole)
    last = swing / whole * c * (1 - np.exp(-whole / tau))
    falling = last**2 * r * tau / 2
    expected = 2 * (rising + falling) * carrier
    assert snubber_heat(c, r, swing, carrier, t_edge, 1.0) == pytest.approx(expected, rel=1e-6)


def test_saturation_curve_meets_its_two_points() -> None:
    """Sagami 7W14A: 10 uH at rest, 25 % less at 11 A."""
    assert inductance_at(10e-6, 0.0, 11.0, 0.25) == 10e-6
    assert inductance_at(10e-6, 11.0, 11.0, 0.25) == pytest.approx(7.5e-6)
    currents = np.linspace(0, 40, 50)
    assert np.all(np.diff(inductance_at(10e-6, currents, 11.0, 0.25)) < 0)

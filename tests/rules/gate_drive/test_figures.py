"""Figures of the gate drive with every input away from one and zero, by hand."""

import math

import pytest

from ampreview.rules.derived.bootstrap import lowest
from ampreview.rules.gate_drive.gate_supply_regulator import figure as regulator


def simulated_minimum(v_drv: float, v_f: float, q: float, c: float, r: float, t: float) -> float:
    """Bootstrap capacitor period by period: q taken at once, refilled for t through r."""
    v = v_drv - v_f
    for _ in range(20000):
        v -= q / c
        low = v
        v = (v_drv - v_f) - ((v_drv - v_f) - v) * math.exp(-t / (r * c))
    return low


def test_bootstrap_by_simulation() -> None:
    """60 nC x 2 and 1 mA for 2.5 us each period, refill for 5 % of half the period."""
    charge = 2 * 60e-9 + 1e-3 * 2.5e-6
    refill = 0.05 / 2 * 2.5e-6
    least = simulated_minimum(12.0, 0.7, charge, 220e-9, 0.3, refill)
    given = (60e-9, 2.0, 1e-3, 400e3, "natural-sampling", 220e-9, 0.3, 0.99, 0.95)
    found = lowest(12.0, 0.7, *given, math.inf)
    assert found == pytest.approx(least, rel=1e-3)


def test_bootstrap_of_a_self_oscillating_stage_by_simulation() -> None:
    """At depth 0.6 the carrier falls to 64 %: 3.906 us, a fifth of them for the refill."""
    period = 2.5e-6 / 0.64
    charge = 30e-9 + 0.2e-3 * period
    least = simulated_minimum(12.0, 1.0, charge, 220e-9, 4.7, 0.2 * period)
    given = (30e-9, 1.0, 0.2e-3, 400e3, "self-oscillating", 220e-9, 4.7, 0.6, 0.95)
    found = lowest(12.0, 1.0, *given, math.inf)
    assert found == pytest.approx(least, rel=2e-3)


def test_a_clamp_refills_the_bootstrap_capacitor_no_higher() -> None:
    """A clamp of 5.2 V behind 12 V: simulated as a supply of 5.2 V without a diode."""
    charge = 30e-9 + 0.2e-3 * 2.5e-6
    least = simulated_minimum(5.2, 0.0, charge, 220e-9, 4.7, 0.125e-6)
    given = (30e-9, 1.0, 0.2e-3, 400e3, "natural-sampling", 220e-9, 4.7, 0.9, 0.95)
    assert lowest(12.0, 1.0, *given, 5.2) == pytest.approx(least, rel=1e-3)
    assert lowest(5.0, 1.0, *given, 5.2) == lowest(5.0, 1.0, *given, math.inf)


def test_regulator_of_eight_gates() -> None:
    """2 legs of 2 devices each way: 8 gates of 50 nC at 400 kHz, 160 mA, 20 mA beside, 12 V."""
    found = regulator(398.15, 313.15, 20.0, 24.0, 12.0, 2.0, 2.0, 50e-9, 400e3, 20e-3)
    assert found == pytest.approx(125.0 - 40.0 - 20.0 * 12.0 * 0.18)

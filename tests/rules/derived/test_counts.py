"""Quantities with counts other than one, and both sides of what the smaller or larger decides.

Two legs, two rails, two devices or loudspeakers: a factor that is left out shows here.  Each
expected value follows from a circuit that is worked out in the test.
"""

import math

import numpy as np
import pytest

from ampreview.rules.derived.access import across_parts
from ampreview.rules.derived.commutation import longer_of_both
from ampreview.rules.derived.excursion import excursion, excursion_least
from ampreview.rules.derived.heat import stated_rated
from ampreview.rules.derived.load import lowest_load
from ampreview.rules.derived.losses import with_load
from ampreview.rules.derived.output import whole_of_split
from ampreview.rules.derived.response import deviation_with_coils, larger_deviation
from ampreview.rules.derived.surge import clamped
from ampreview.rules.formulas.driver import high_pass
from ampreview.rules.gate_drive.miller_turn_on import figure as miller_share


def test_two_rails_and_a_source_above_them() -> None:
    """From -30 V to 30 V are 60 V; a source of 100 V that is stepped down can be touched too."""
    assert across_parts(30.0, 2, 24.0) == 60.0
    assert across_parts(30.0, 2, 100.0) == 100.0


def test_a_bridge_on_two_rails() -> None:
    """One terminal on 30 V, the other on -30 V."""
    assert whole_of_split(2, 30.0) == 30.0 - -30.0


def test_a_suppressor_lets_no_more_pass_than_arrives() -> None:
    """Load dump of 87 V behind a clamp of 40 V; a surge of 30 V does not reach the clamp."""
    assert clamped(40.0, 87.0) == 40.0
    assert clamped(40.0, 30.0) == 30.0


def test_the_longer_one_of_printed_times_and_gates() -> None:
    """Discharge of 1 nF through 10 ohm from 12 V to 3 V: 13.86 ns less 2.88 ns of the charge."""
    by_gates = 10e-9 * math.log(12 / 3) - 10e-9 * math.log(12 / 9)
    gates = (1e-9, 10.0, 10.0, 12.0, 3.0)
    assert longer_of_both(*gates, 30e-9, 10e-9, 15e-9) == pytest.approx(25e-9)
    assert longer_of_both(*gates, 10e-9, 5e-9, 15e-9) == pytest.approx(by_gates)


def test_lowest_load_of_two_in_series() -> None:
    """16 ohm that dip to 12.8 ohm; with 8 ohm allowed, half of it dips in the same ratio."""
    assert lowest_load(6.4, 2, 1, 8.0, 8.0) == pytest.approx(6.4)
    assert lowest_load(6.4, 2, 1, 8.0, 16.0) == pytest.approx(12.8)


def test_recovery_of_two_devices_in_each_of_two_legs() -> None:
    """Four times 50 nC from 50 V, 400,000 times a second: 4 W."""
    lossless = (0.0, 400e3, 2, 50e-9, 0.8, 0.0, "natural-sampling", 0.0, 0.0, "two-level", "none")
    assert with_load(2, 50.0, 10.0, 0.5, *lossless, 0.0, 1e-15, 0.0) == pytest.approx(4.0)


def test_coils_take_no_more_than_all_heat() -> None:
    """100 W at 99 % lose 1.0101 W; coils reckoned at 5 W leave none for the switches."""
    heat = stated_rated(100.0, 3.0, 2.0, 0.99)
    assert heat.switches == pytest.approx(0.0)
    assert heat.elsewhere == pytest.approx(100 / 0.99 - 100)


L_1, C_1, R_1, L_2, C_2 = 20e-6, 0.68e-6, 0.03, 2.2e-6, 0.22e-6


def two_legs(f: float, load: complex) -> float:
    """Voltage at the load of a bridge, each leg with its own parts, by node analysis.

    Nodes: behind the first coil of either leg, at either terminal.  Capacitors lie between
    the legs; the legs are driven by plus and minus a half.
    """
    s = 2j * math.pi * f
    first, second = 1 / (s * L_1 / 2 + R_1), 1 / (s * L_2)
    between, at_load = s * C_1, s * C_2 + 1 / load
    y = np.array(
        [
            [first + second + between, -between, -second, 0],
            [-between, first + second + between, 0, -second],
            [-second, 0, second + at_load, -at_load],
            [0, -second, -at_load, second + at_load],
        ]
    )
    v = np.linalg.solve(y, np.array([first / 2, -first / 2, 0, 0]))
    return float(abs(v[2] - v[3]))


def decibels(f: float, r: float, coil: float) -> float:
    low = two_legs(0.01, complex(r, 2 * math.pi * 0.01 * coil))
    return 20 * math.log10(two_legs(f, complex(r, 2 * math.pi * f * coil)) / low)


def test_treble_behind_the_second_coils_of_both_legs() -> None:
    args = (L_1, C_1, 2, R_1, L_2, C_2, 0.0, 0.0)
    ends = (abs(decibels(20e3, 4.0, 0.0)), abs(decibels(20e3, 8.0, 0.0)))
    assert larger_deviation(20e3, 4.0, 8.0, *args) == pytest.approx(max(ends), rel=1e-5)
    coil = deviation_with_coils(20e3, 3.2, 40e-6, 2, 1, *args)
    assert coil == pytest.approx(abs(decibels(20e3, 6.4, 80e-6)), rel=1e-5)


def test_cone_with_a_radiator_of_unknown_spring() -> None:
    """Below the box's tuning the stiffest radiator, a wall, holds the cone more."""
    motion = (1e-3, 45.0, math.inf, 0.4, 6.0, math.inf)
    rest = (7.0, 20.0, 2, 25.0, 25.0)
    sealed = abs(1 / (1 + 20 / 12 - (25 / 45) ** 2 + 1j * 25 / 45 / 0.4))
    found = excursion_least(*motion, 0.020, 0.012, 50.0, 0.05, *rest)
    assert found == pytest.approx(1e-3 * sealed * high_pass(25.0, 20.0, 2))
    assert found < 0.9 * excursion(*motion, 0.020, 0.012, 50.0, 0.05, *rest)


def test_false_turn_on_where_heat_takes_the_threshold() -> None:
    """0.5 V less 7 mV/K over 125 K is none: the bump stands over the least threshold."""
    bump = (10e9, 100.0, 5.0, 5e-9, 1500e-12)
    share = miller_share(*bump, 0.5, 423.15, 298.15, 7e-3, 0.1, 20.0, 10.0)
    # docstring of miller_bump, solved as a differential equation in the tests of the gate
    assert share == pytest.approx(1.812 / 0.1, rel=1e-3)

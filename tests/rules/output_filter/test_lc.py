"""Output filter: node equations, published tables and measurements against the formulas."""

import numpy as np
import pytest
from scipy.optimize import minimize_scalar

from ampreview.rules.formulas.lc import (
    corner,
    damper_resistance,
    deviation_db,
    ladder_gain,
    open_load_gain,
    quality,
)

UH, NF, UF = 1e-6, 1e-9, 1e-6


def node_gain(f, stages, z_load=np.inf, r=0.0, branch=None):
    """Gain of a chain of series L, shunt C by solving the node equations as a matrix."""
    s = 2j * np.pi * f
    n = len(stages)
    y = np.zeros((n, n), dtype=complex)
    for k, (inductance, capacitance) in enumerate(stages):
        series = 1 / (s * inductance + (r if k == 0 else 0.0))
        y[k, k] += series + s * capacitance
        if k:
            y[k - 1, k - 1] += series
            y[k, k - 1] -= series
            y[k - 1, k] -= series
    y[n - 1, n - 1] += 0 if np.isinf(np.abs(z_load)) else 1 / z_load
    if branch:
        y[0, 0] += 1 / (branch[0] + 1 / (s * branch[1]))
    drive = np.zeros(n, dtype=complex)
    drive[0] = 1 / (s * stages[0][0] + r)
    return abs(np.linalg.solve(y, drive)[-1])


def bridge_gain(f, l_leg, c_across, c_ground, load):
    """A full bridge as it is built: two driven legs, four elements, differential gain."""
    s = 2j * np.pi * f
    leg, cross = 1 / (s * l_leg), s * c_across + 1 / load
    own = leg + s * c_ground + cross
    v = np.linalg.solve(np.array([[own, -cross], [-cross, own]]), np.array([0.5, -0.5]) * leg)
    return abs(v[0] - v[1])


@pytest.mark.parametrize("f", [1e3, 20e3, 41e3, 400e3])
@pytest.mark.parametrize("load", [3.2, 8.0, 6.5 + 2j * np.pi * 20e3 * 0.5e-3])
def test_ladder_against_node_equations(f, load):
    one = ladder_gain(f, 22 * UH, 0.68 * UF, load, 0.03, 0.0, 0.0)
    assert one == pytest.approx(node_gain(f, [(22 * UH, 0.68 * UF)], load, 0.03), rel=1e-9)
    two = ladder_gain(f, 100 * UH, 1.56 * UF, load, 0.1, 68 * UH, 0.33 * UF)
    stages = [(100 * UH, 1.56 * UF), (68 * UH, 0.33 * UF)]
    assert two == pytest.approx(node_gain(f, stages, load, 0.1), rel=1e-9)


@pytest.mark.parametrize("f", [5e3, 20e3, 300e3])
def test_bridge_is_two_l_with_half_the_ground_capacitor(f):
    whole = ladder_gain(f, 2 * 15 * UH, 1.0 * UF + 0.27 * UF / 2, 4.0, 0.0, 0.0, 0.0)
    assert whole == pytest.approx(bridge_gain(f, 15 * UH, 1.0 * UF, 0.27 * UF, 4.0), rel=1e-9)


@pytest.mark.parametrize(
    ("l_1", "c_1", "load", "r"),
    [
        (22 * UH, 0.68 * UF, 8.0, 0.03),
        (22 * UH, 0.68 * UF, 8.0, 0.0),
        (44 * UH, 0.47 * UF, 4.0, 0.2),
    ],
)
def test_quality_against_the_poles(l_1, c_1, load, r):
    poles = np.roots([l_1 * c_1, l_1 / load + r * c_1, 1 + r / load])
    expected = abs(np.prod(poles)) ** 0.5 / -np.sum(poles).real
    assert quality(l_1, c_1, load, r) == pytest.approx(expected, rel=1e-9)


# MAX4295 data sheet p. 11; CS4525 data sheet DS726PP1 tables 18 and 20; TPA3001D1 SLOS398E
# p. 18; TPA3111D1 SLOS618E p. 16.  Total inductance, total capacitance, printed corner.
# Not used: the 6 ohm row of CS4525 table 20, whose parts give 42 kHz for a printed 35 kHz.
@pytest.mark.parametrize(
    ("l_1", "c_1", "printed"),
    [
        (30 * UH, 937 * NF, 30e3),
        (2 * 15 * UH, 2000 * NF / 2, 30e3),
        (22 * UH, 1000 * NF, 35e3),
        (47 * UH, 470 * NF, 35e3),
        (2 * 10 * UH, 1000 * NF, 35e3),
        (2 * 22 * UH, 470 * NF, 35e3),
        (2 * 33 * UH, 470 * NF + 100 * NF / 2, 27e3),
        (2 * 15 * UH, 2200 * NF / 2, 27e3),
    ],
)
def test_published_filter_tables(l_1, c_1, printed):
    assert corner(l_1, c_1) == pytest.approx(printed, rel=0.035)


def test_w1_linfinity_lx1710_evaluation_board():
    """50 kHz, Q 0.707, 4 ohm half load: 0.56 uF and 14.9 uH are worked out in the guide."""
    assert corner(14.9 * UH, 0.68 * UF) == pytest.approx(50e3, rel=1e-2)
    capacitance = 0.7071 / (2 * np.pi * 50e3 * 4)
    assert capacitance == pytest.approx(0.56 * UF, rel=0.01)
    inductance = 1 / ((2 * np.pi * 50e3) ** 2 * 0.68 * UF)
    assert inductance == pytest.approx(14.9 * UH, rel=0.01)
    butterworth = quality(4 / (2 * np.pi * 50e3 * 0.7071), capacitance, 4.0, 0.0)
    assert butterworth == pytest.approx(0.7071, rel=1e-3)


# IRAUDAMP7D reference design rev 2.9, frequency response into 4 ohm, dB against 1 kHz, read
# off the plot; 8 ohm rows include the amplifier's own rise and are not used.
@pytest.mark.parametrize(("f", "measured"), [(15e3, -0.19), (20e3, -0.67)])
def test_iraudamp7d_measured_response_4_ohm(f, measured):
    found = deviation_db(f, 22 * UH, 0.47 * UF, 4.0, 0.0, 0.02, 0.0, 0.0, 10.0, 0.1 * UF)
    assert found == pytest.approx(measured, abs=0.25)


@pytest.mark.parametrize("z", [4.0, 8.0])
def test_damper_beside_the_load_against_node_equations(z):
    r, c = 10.0, 0.1 * UF
    branch = 1 / (r + 1 / (2j * np.pi * 20e3 * c))
    load = 1 / (1 / z + branch)
    gain = node_gain(20e3, [(22 * UH, 0.47 * UF)], load, 0.02)
    found = deviation_db(20e3, 22 * UH, 0.47 * UF, z, 0.0, 0.02, 0.0, 0.0, r, c)
    assert found == pytest.approx(20 * np.log10(abs(gain) * (1 + 0.02 / z)), abs=1e-9)


def test_mattingly_measured_peak_into_15_ohm():
    """10 uH and 1 uF per leg, 15 ohm across: measured gain 2.25 at 50.8 kHz."""
    gain = ladder_gain(50.8e3, 20 * UH, 0.5 * UF, 15.0, 0.0, 0.0, 0.0)
    assert gain == pytest.approx(2.25, rel=0.06)


@pytest.mark.parametrize("n", [0.5, 1.0, 2.0, 4.0, 8.0])
def test_damper_resistance_against_an_optimiser(n):
    l_1, c_1 = 22 * UH, 0.68 * UF
    grid = np.geomspace(corner(l_1, c_1 * (1 + n)) * 0.5, corner(l_1, c_1) * 1.5, 4000)

    def peak(r):
        return max(node_gain(f, [(l_1, c_1)], branch=(r, n * c_1)) for f in grid[::4])

    guess = (l_1 / c_1) ** 0.5
    best = minimize_scalar(
        peak, bounds=(0.2 * guess, 4 * guess), method="bounded", options={"xatol": 1e-3 * guess}
    )
    assert damper_resistance(l_1, c_1, n * c_1) == pytest.approx(best.x, rel=0.01)
    assert best.fun == pytest.approx(1 + 2 / n, rel=1e-3)


@pytest.mark.parametrize(
    ("r_damper", "c_damper"),
    [
        (1.0, 0.0),
        (10.0, 100 * NF),
        (9.85, 680 * NF),
        (3.0, 680 * NF),
        (47.0, 680 * NF),
        (6.8, 2000 * NF),
    ],
)
def test_open_load_gain_against_a_fine_scan(r_damper, c_damper):
    l_1, c_1, r = 22 * UH, 0.68 * UF, 0.03
    branch = (r_damper, c_damper) if c_damper else None
    top = corner(l_1, c_1) * 1.001
    grid = np.linspace(corner(l_1, c_1 + c_damper) * 0.999, top, 20001)
    expected = max(node_gain(f, [(l_1, c_1)], r=r, branch=branch) for f in grid)
    found = open_load_gain(l_1, c_1, r, r_damper, c_damper)
    assert found == pytest.approx(expected, rel=0.02)

"""Fuses against the maker's guide, quadrature and simulation."""

import math

import numpy as np
import pytest
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from ampreview.linter.finding import Severity, Status
from ampreview.rules.derived.protection import heat_of_drop, heat_of_resistance
from ampreview.rules.formulas.conductors import trace_rise
from ampreview.rules.formulas.fuse import (
    CONTINUOUS_SHARE,
    OPENING_RATIO,
    PULSE_SHARE,
    charging_i2t,
    continuous_current,
    opening_current,
    prospective_current,
    steady_charging_i2t,
)
from ampreview.rules.formulas.maths import PI

from ..whole import answer

SQUARE_MIL = (25.4e-6) ** 2


def test_littelfuse_fuseology_chart_2_pulse_cycles() -> None:
    # Littelfuse, Fuseology selection guide 2017, chart 2
    assert PULSE_SHARE == {100_000: 0.22, 10_000: 0.29, 1000: 0.38, 100: 0.48}


def test_littelfuse_fuseology_page_12_ul_ratings() -> None:
    # carries 100 %, opens at 135 % within an hour; EDN 1996: at most 75 % for good
    assert opening_current(1.0, "ul-248-14") == 1.35
    assert continuous_current(1.0, "ul-248-14", 1.0) == 0.75
    assert CONTINUOUS_SHARE.keys() == OPENING_RATIO.keys()


@pytest.mark.parametrize(
    ("shape", "factor"),
    [
        (lambda x: math.sin(PI * x), 1 / 2),  # half sine
        (lambda x: x, 1 / 3),  # ramp
        (lambda x: (1 - x) ** 2, 1 / 5),  # parabola
        (lambda x: 1.0, 1.0),  # rectangle
    ],
)
def test_littelfuse_fuseology_chart_1_shapes(shape, factor) -> None:
    # the printed factors of chart 1 by quadrature, and with them the decaying pulse below
    assert quad(lambda x: shape(x) ** 2, 0, 1)[0] == pytest.approx(factor, rel=1e-9)


def test_charging_pulse_by_ode() -> None:
    # 4.4 mF to 25.2 V through 0.10 ohm: 252 A at first, 13.97 A2s in all
    c, v, r = 4.4e-3, 25.2, 0.10
    run = solve_ivp(
        lambda t, y: [(v - y[0]) / (r * c), ((v - y[0]) / r) ** 2],
        (0, 20 * r * c),
        [0.0, 0.0],
        rtol=1e-10,
        atol=1e-12,
    )
    assert charging_i2t(c, v, r) == pytest.approx(run.y[1, -1], rel=1e-6)
    assert charging_i2t(c, v, r) == pytest.approx(13.97, rel=1e-3)
    assert charging_i2t(c, v, r) / PULSE_SHARE[100_000] == pytest.approx(63.50, rel=1e-3)


def test_constant_current_charging_by_summation() -> None:
    # 50 V, 10 mF, 2 A: the charge lasts 0.25 s; steps of a microsecond
    step, charge, i2t = 1e-6, 0.0, 0.0
    while charge < 10e-3 * 50.0:
        charge += 2.0 * step
        i2t += 2.0**2 * step
    assert steady_charging_i2t(10e-3, 50.0, 2.0) == pytest.approx(i2t, rel=1e-4)


def test_prospective_current_by_nodal_solution() -> None:
    # six cells in series, two strings of 20 mohm a cell, shorted: one node per joint
    series, r_cell, v_cell = 6, 0.020, 4.2
    matrix = np.zeros((series + 1, series + 1))
    right = np.zeros(series + 1)
    for n in range(series):  # branch from node n to n + 1: two strings in parallel
        g = 2 / r_cell
        for a, b in ((n, n + 1), (n + 1, n)):
            matrix[a, a] += g
            matrix[a, b] -= g
        right[n] -= g * v_cell
        right[n + 1] += g * v_cell
    matrix[series, series] += 1e9  # the short to ground
    matrix[0, :], right[0] = 0.0, 0.0
    matrix[0, 0] = 1.0
    top = np.linalg.solve(matrix, right)[series]
    assert prospective_current(25.2, 6 / 2 * r_cell) == pytest.approx(top * 1e9, rel=1e-6)
    assert prospective_current(25.2, 0.06) == pytest.approx(420.0, rel=1e-12)


def test_rms_of_a_bridge_is_22_percent_above_its_mean() -> None:
    # i = I (1 - cos 2x): 4.580 A mean would be 5.609 A rms; with a sagging pack 5.722 A
    mean = quad(lambda x: 1 - math.cos(2 * x), 0, PI)[0] / PI
    rms = math.sqrt(quad(lambda x: (1 - math.cos(2 * x)) ** 2, 0, PI)[0] / PI)
    assert rms / mean == pytest.approx(1.5**0.5, rel=1e-9)
    # 5.722 A ask for 8.477 A of a hot UL fuse, not for the 6.785 A of the mean
    assert continuous_current(8.477, "ul-248-14", 0.9) == pytest.approx(5.722, rel=1e-3)


@pytest.mark.parametrize(("ratio", "rise"), [(1.35, 40.0), (1.5, 50.0), (2.1, 108.0)])
def test_trace_of_20_kelvin_at_the_rating_when_the_fuse_holds(ratio, rise) -> None:
    # the width that gives 20 K at 10 A by root finding; then the rise at the overload
    def at(width: float, current: float) -> float:
        return trace_rise(current, width, 35e-6, 0.048, SQUARE_MIL, 1.0)

    width = brentq(lambda w: at(w, 10.0) - 20.0, 1e-4, 5e-2)
    assert at(width, ratio * 10.0) == pytest.approx(rise, rel=0.02)


def test_heat_of_the_blocking_part_by_quadrature() -> None:
    # 4.580 A mean of a bridge, 1 - cos 2x: 0.45 V make 2.061 W, 5 mohm make 0.1573 W
    i = 4.580

    def average(f) -> float:
        return quad(f, 0, PI)[0] / PI

    diode = average(lambda x: 0.45 * i * (1 - math.cos(2 * x)))
    channel = average(lambda x: 5e-3 * (i * (1 - math.cos(2 * x))) ** 2)
    assert heat_of_drop(0.45, i * 20.0, 20.0) == pytest.approx(diode, rel=1e-9)
    assert heat_of_drop(0.45, i * 20.0, 20.0) == pytest.approx(2.061, rel=1e-3)
    assert heat_of_resistance(5e-3, 1.5**0.5 * i) == pytest.approx(channel, rel=1e-9)


def test_no_stated_rating_softens_what_the_copper_of_a_lead_bears() -> None:
    """2.1 times 12 A on 0.5 mm2: 10.6 A as chassis wire, whatever is printed beside it."""
    text = """
protection: {fuse: {i_rated: 12 A, standard: iec-60127}}
wiring: {supply_lead: {length: 0.4 m, area: 0.5 mm2, i_rated: RATED}}
channels: {main: {rated_power: 50 W}}
"""
    found = [answer("fuse-protects-lead", text.replace("RATED", x)) for x in ("11 A", "20 A")]
    assert [item.severity for item in found] == [Severity.CRITICAL, Severity.CRITICAL]
    assert found[0].evidence.figure == found[1].evidence.figure
    unknown = text.replace("RATED", "30 A").replace(", area: 0.5 mm2", "")  # copper not stated
    assert answer("fuse-protects-lead", unknown, "prototype").status is Status.OPEN
    low = answer("fuse-protects-lead", text.replace("RATED", "6 A"))
    assert low.evidence.figure == pytest.approx(2.1 * 12 / 6)


@pytest.mark.parametrize(
    ("limits", "amperes"),
    [("self_limiting: yes", 72.0 / 24.0), ("self_limiting: no", 24.0 / 0.06)],
)
def test_a_source_that_limits_itself_is_broken_at_its_limit(limits: str, amperes: float) -> None:
    """24 V behind 60 milliohm of regulator: 400 A for nobody but a source without a limit."""
    text = f"""
supply: {{source: dc-source, rails: single, v_rail: 24 V, r_source: 60 mohm, p_max: 72 W, {limits}}}
protection: {{fuse: {{i_rated: 4 A, i_breaking: 100 A}}}}
channels: {{main: {{rated_power: 20 W}}}}
"""
    found = answer("fuse-breaking-capacity", text)
    assert found.evidence.figure == pytest.approx(amperes / 100.0)

"""Loss at a part of the power: published curves, the law itself, and what must always hold."""

import math
from itertools import pairwise

import numpy as np
import pytest

from ampreview.rules.derived.part_load import efficiency_on_curve, of_curve, of_exponent
from ampreview.rules.formulas.efficiency import (
    knots_of,
    largest_fall,
    linear_share,
    loss_above_idle,
)

# loss at idle and at some powers [W].  IRAUDAMP7D rev 2.9, figs. 14 to 19; TPA3221 SLASEE9B, fig.
# 9, 4 ohm, both channels; the efficiencies of its figs. 6 to 8 stand in measurements.yaml.
CURVES = {
    "IRAUDAMP7D +-35 V": (4.8, {15.0: 7.19, 39.9: 10.54, 59.8: 12.25, 90.2: 15.67, 120.2: 18.28}),
    "IRAUDAMP7D +-50 V": (7.8, {40.3: 16.30, 85.3: 25.34, 133.0: 31.00, 244.9: 46.30}),
    "TPA3221 30 V": (0.37, {20.0: 5.52, 50.0: 11.4, 100.0: 21.0, 150.0: 26.7, 200.0: 33.7}),
}


def efficiencies(points: dict[float, float]) -> tuple[float, ...]:
    return tuple(power / (power + loss) for power, loss in points.items())


@pytest.mark.parametrize("name", CURVES)
def test_a_published_curve_from_two_of_its_points(name: str) -> None:
    """From idle, a middle point and the highest one: all others within 13 %.

    The power 0.82 alone, without the middle point, stays within 15 % on these curves.
    """
    idle, points = CURVES[name]
    powers = list(points)
    middle, top = powers[1], powers[-1]
    stated = {middle: points[middle], top: points[top]}
    for power, loss in points.items():
        knots = knots_of(tuple(stated), efficiencies(stated), idle)
        assert idle + loss_above_idle(power, knots) == pytest.approx(loss, rel=0.13)
        alone = of_exponent(top, top / (top + points[top]), idle, power / top, 0.82)
        assert idle + alone == pytest.approx(loss, rel=0.15)


def law(power: float) -> float:
    return 1.5 + 0.6 * math.sqrt(power) + 0.04 * power


def test_below_the_lowest_point_the_law_is_met_exactly() -> None:
    """A constant, a term of the current and its square: two points give the latter two."""
    stated = {power: law(power) for power in (10.0, 80.0)}
    knots = knots_of(tuple(stated), efficiencies(stated), 1.5)
    assert linear_share(knots) == pytest.approx(0.6 * math.sqrt(10) / (law(10.0) - 1.5))
    for power in (0.01, 1.0, 5.0, 10.0):
        assert loss_above_idle(power, knots) == pytest.approx(law(power) - 1.5)


@pytest.mark.parametrize(("ratio", "within"), [(2, 0.02), (10, 0.15)])
def test_a_straight_line_between_points_is_little_below_the_law(ratio: int, within: float) -> None:
    """Worst where all loss goes with the current itself."""
    stated = {power: math.sqrt(power) for power in (1.0, float(ratio))}
    knots = knots_of(tuple(stated), efficiencies(stated), 0.0)
    for power in np.linspace(1, ratio, 50):
        found = loss_above_idle(float(power), knots)
        assert (1 - within) * math.sqrt(power) <= found <= math.sqrt(power) * (1 + 1e-9)


def test_rated_point_and_curve_are_one() -> None:
    """The order of the points is free; the rated one belongs to them and is met."""
    idle, points = CURVES["TPA3221 30 V"]
    powers, shares = (100.0, 20.0), (100 / 121, 20 / 25.52)
    rated = 200 / 233.7
    assert of_curve(200.0, rated, idle, powers, shares, 1.0) == pytest.approx(33.33)
    assert of_curve(200.0, rated, idle, powers, shares, 0.1) == pytest.approx(5.52 - 0.37)
    between = of_curve(200.0, rated, idle, powers, shares, 0.3)
    assert between == pytest.approx(5.15 + (20.63 - 5.15) * 40 / 80)
    found = efficiency_on_curve(150.0, tuple(points), efficiencies(points), idle)
    assert found == pytest.approx(150 / 176.7)
    beyond = efficiency_on_curve(250.0, tuple(points), efficiencies(points), idle)
    assert beyond == pytest.approx(250 / (250 + 33.7 + 7.0))


def test_one_point_alone_is_read_at_its_adverse_end() -> None:
    """Nothing tells how a single loss divides: with the current itself it stays largest."""
    assert linear_share(((10.0, 4.0),)) == 1.0
    assert linear_share(((10.0, 4.0), (10.0, 4.0))) == 1.0
    assert loss_above_idle(2.5, ((10.0, 4.0),)) == pytest.approx(2.0)


def test_more_power_never_loses_less_whatever_the_points() -> None:
    """Two thousand curves of arbitrary points, read at rising powers."""
    draw = np.random.default_rng(3)
    for _ in range(2000):
        count = int(draw.integers(1, 6))
        powers = tuple(float(x) for x in draw.uniform(0.5, 200, count))
        shares = tuple(float(x) for x in draw.uniform(0.2, 0.98, count))
        knots = knots_of(powers, shares, float(draw.uniform(0, 5)))
        read = [loss_above_idle(float(p), knots) for p in np.geomspace(0.01, 400, 40)]
        assert all(low <= high * (1 + 1e-9) for low, high in pairwise(read))
        assert read[0] >= 0.0


def test_curves_of_many_builds_at_once() -> None:
    """Tolerances come as arrays: each build is read as it would be alone."""
    powers, shares = (np.array([9.0, 11.0]), np.array([80.0, 80.0])), (0.8, np.array([0.9, 0.92]))
    together = loss_above_idle(np.array([4.0, 40.0]), knots_of(powers, shares, 0.5))
    for n, p_out in enumerate((4.0, 40.0)):
        alone = knots_of((powers[0][n], 80.0), (0.8, shares[1][n]), 0.5)
        assert together[n] == pytest.approx(loss_above_idle(p_out, alone))


def test_loss_below_the_idle_loss_counts_as_idle() -> None:
    assert of_exponent(50.0, 50 / 53, 5.0, 0.125, 0.82) == 0.0
    assert of_exponent(50.0, 50 / 55.5, 5.0, 0.125, 0.82) == pytest.approx(0.5 * 0.125**0.82)
    assert knots_of((50.0,), (50 / 53,), 5.0) == ((50.0, 0.0),)


def test_the_largest_fall_of_a_loss() -> None:
    """3.2 W, 2.4 W, 6 W: a third more than later; idle of 3 W, and the same power twice."""
    falling = {10.0: 3.2, 20.0: 2.4, 60.0: 6.0}
    assert largest_fall(tuple(falling), efficiencies(falling), 1.0) == pytest.approx(1 / 3)
    assert largest_fall((10.0,), (10 / 12.4,), 3.0) == pytest.approx(0.25)
    assert largest_fall((20.0, 20.0), (0.8, 0.9), 0.0) == pytest.approx(5 / (20 / 9) - 1)
    for idle, points in CURVES.values():
        assert largest_fall(tuple(points), efficiencies(points), idle) == 0.0


STAGE = """
supply: {source: dc-source, rails: single, v_rail: 30 V, p_auxiliary: 3 W}
signal: {crest_factor: 12.0412 dB}
channels:
  a: &channel
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: integrated
      p_idle: 0.2 W
      EFFICIENCY
"""
CURVE = "efficiency_curve: [{power: 50 W, efficiency: 83 %}, {power: 10 W, efficiency: 78 %}]"


def test_programme_on_a_stated_curve(derived):
    """12.5 W lie between 10 W (2.821 W lost) and 50 W (10.24 W)."""
    text = STAGE.replace("EFFICIENCY", f"efficiency: 85 %\n      {CURVE}")
    low, high = 10 / 0.78 - 10, 50 / 0.83 - 50
    assert derived("p_loss_programme", text) == pytest.approx(low + (high - low) / 16, rel=1e-4)
    assert derived("p_loss_rated", text) == pytest.approx(100 / 0.85 - 100)


def test_two_equal_channels_draw_twice_what_one_draws_and_the_balance_holds(derived):
    one = STAGE.replace("EFFICIENCY", f"efficiency: 85 %\n      {CURVE}")
    two = one + "  b: *channel\n"
    for name, share in (("p_in_programme", 1 / 8), ("p_in_rated", 1.0)):
        alone, both = derived(name, one), derived(name, two)
        assert both - 3.0 == pytest.approx(2 * (alone - 3.0), rel=1e-9)
        loss = derived(name.replace("p_in", "p_loss"), one)
        assert alone == pytest.approx(100 * share + loss + 3.0, rel=1e-5)


def test_a_curve_alone_gives_the_rated_point(derived):
    """Beyond its highest point the last straight line goes on."""
    text = STAGE.replace("EFFICIENCY", CURVE)
    low, high = 10 / 0.78 - 10, 50 / 0.83 - 50
    assert derived("p_loss_rated", text) == pytest.approx(high + 50 * (high - low) / 40)

"""The heat balance against other ways to solve it: linear algebra, a root finder, iteration."""

import numpy as np
import pytest
from scipy.optimize import brentq, fsolve

from ampreview.rules.formulas.dissipation import T_COLD, hot_exponent
from ampreview.rules.formulas.enclosure import Walls, wall_rise, walls
from ampreview.rules.formulas.heat import (
    Air,
    ChannelHeat,
    Sink,
    Solution,
    junction_over,
    solve,
)

ZERO = 273.15
END = 150 + ZERO
BEYOND = 5000.0  # so far away that nothing ends the rise
FACTOR = (423.15 / 298.15) ** 1.6


def test_four_devices_on_one_heatsink_by_nodal_analysis() -> None:
    """40 degC, 4 x 6 W, 1.2 + 0.5 K/W each, sink 2.0 K/W: 88.00 and 98.20 degC."""
    conductance = np.zeros((5, 5))
    flow = np.zeros(5)
    for device in range(1, 5):
        g = 1 / 1.7
        conductance[[0, device], [0, device]] += g
        conductance[0, device] -= g
        conductance[device, 0] -= g
        flow[device] = 6.0
    conductance[0, 0] += 1 / 2.0
    rise = np.linalg.solve(conductance, flow)
    assert 40 + rise[0] == pytest.approx(88.00)
    assert 40 + rise[1] == pytest.approx(98.20)
    found = solve(
        Air(40 + ZERO, None, None), Sink(2.0, None, False),
        (ChannelHeat(24.0, 0.0, 1.0, 0.0, 0.0),), (1.7 / 4,), (END,), 0.0, 0.0,
    )  # fmt: skip
    assert found.t_reference - ZERO == pytest.approx(40 + rise[0])
    assert found.t_junction[0] - ZERO == pytest.approx(40 + rise[1])


def test_two_channels_of_two_packages_share_the_heatsink_like_one_of_four() -> None:
    """The same devices split over two channels heat the same heatsink to 88.00 degC."""
    heat = ChannelHeat(12.0, 0.0, 1.0, 0.0, 0.0)
    found = solve(
        Air(40 + ZERO, None, None), Sink(2.0, None, False), (heat, heat), (0.85, 0.85),
        (END, END), 0.0, 0.0,
    )  # fmt: skip
    assert found.t_reference - ZERO == pytest.approx(88.00)
    assert found.t_junction[1] - ZERO == pytest.approx(98.20)


def test_channels_that_are_the_same_heat_like_one_of_all_their_packages() -> None:
    """Three channels of 1.5 K/W beside another one, against one of 0.5 K/W with their heat."""
    air, sink = Air(40 + ZERO, None, None), Sink(2.0, None, True)
    third, other = ChannelHeat(4.0, 2.0, 1.6, 0.5, 0.0), ChannelHeat(6.0, 1.0, 1.6, 0.0, 0.0)
    whole = ChannelHeat(12.0, 6.0, 1.6, 1.5, 0.0)
    mixed = (third, other, third, third)
    found = solve(air, sink, mixed, (1.5, 1.0, 1.5, 1.5), (END,) * 4, 0.0, 0.0)
    alone = solve(air, sink, (whole, other), (0.5, 1.0), (END,) * 2, 0.0, 0.0)
    assert found.t_reference == pytest.approx(alone.t_reference, abs=1e-9)
    one, beside = alone.t_junction
    assert found.t_junction == pytest.approx((one, beside, one, one), abs=1e-9)


def _feedback(current: float, t_end: float = BEYOND) -> Solution:
    """One device: 20 mohm rising with the exponent 1.6, 0.4 W switching, 40 K/W, 50 degC."""
    heat = ChannelHeat(0.4, current**2 * 0.02, hot_exponent(FACTOR), 0.0, 0.0)
    air, sink = Air(50 + ZERO, None, None), Sink(0.0, None, False)
    return solve(air, sink, (heat,), (40.0,), (t_end,), 0.0, 0.0)


def test_hot_resistance_by_root_finding() -> None:
    """At 8 A the junction is at 158.6 degC; with the cold resistance it would be 117.2."""

    def off(t: float) -> float:
        return 323.15 + 40 * (0.4 + 64 * 0.02 * (t / 298.15) ** 1.6) - t

    root = brentq(off, 323.15, 460.0, xtol=1e-10)
    assert root - ZERO == pytest.approx(158.6, abs=0.05)
    assert _feedback(8.0).t_junction[0] == pytest.approx(root, abs=1e-6)


def test_runaway_starts_where_the_balance_ends() -> None:
    """With the exponent 1.6 there is no balance above 10.94 A (found by minimising)."""
    t = np.linspace(323.15, 900, 200_001)
    limit = np.sqrt(np.max(((t - 323.15) / 40 - 0.4) / (0.02 * (t / 298.15) ** 1.6)))
    assert limit == pytest.approx(10.94, abs=0.005)
    assert _feedback(limit * 0.995).t_junction[0] < 900
    assert _feedback(limit * 1.005).t_junction[0] > BEYOND


def test_heat_ends_where_the_part_ends_it() -> None:
    """12 A have no balance: the junction gets to its end, and the heat is what it is there."""
    found = _feedback(12.0, END).t_junction[0]
    at_end = 0.4 + 144 * 0.02 * (END / 298.15) ** 1.6
    assert found == pytest.approx(323.15 + 40 * at_end)
    assert found > END
    stable = _feedback(7.0, END).t_junction[0]
    assert stable < END
    assert stable == pytest.approx(_feedback(7.0).t_junction[0])


def inside_rise(heat: float, t_ambient: float, box: Walls) -> float:
    """Wall and the film at its inner side; of a vented box a share of that."""
    return box.air_share * (wall_rise(heat, t_ambient, box) + heat / box.film)


def _equations(
    air: Air,
    sink: Sink,
    heats: tuple[ChannelHeat, ...],
    r_own: tuple[float, ...],
    t_end: tuple[float, ...],
    p_other: float,
    share: float,
) -> np.ndarray:
    """The balance written down anew and handed to a root finder."""
    assert air.box is not None

    def off(x: np.ndarray) -> list[float]:
        t_air, t_reference, *junctions = x
        power = [
            h.switches + h.conduction * (min(abs(t), end) / T_COLD) ** h.exponent
            for h, t, end in zip(heats, junctions, t_end, strict=True)
        ]
        lost = sum(power) + sum(h.elsewhere for h in heats)
        heat = lost + p_other + share * (sum(h.p_out for h in heats) + lost)
        heat -= sum(power) if sink.outside else 0.0
        base = air.t_ambient if sink.outside else t_air
        return [
            air.t_ambient + inside_rise(heat, air.t_ambient, air.box) - t_air,
            base + sink.r * sum(power) - t_reference,
            *(t_reference + r * p - t for r, p, t in zip(r_own, power, junctions, strict=True)),
        ]

    start = [air.t_ambient + 5] * 2 + [air.t_ambient + 10] * len(heats)
    found, _, flag, _ = fsolve(off, start, full_output=True, xtol=1e-12)
    return found if flag == 1 else np.array([np.nan])


def _iterated(
    air: Air,
    sink: Sink,
    heats: tuple[ChannelHeat, ...],
    r_own: tuple[float, ...],
    t_end: tuple[float, ...],
    p_other: float,
    share: float,
) -> list[float]:
    """Plain iteration upwards from ambient: slow, but it cannot step over a balance."""
    junctions = [air.t_ambient] * len(heats)
    for _ in range(6000):
        power = [
            h.switches + h.conduction * (min(t, end) / T_COLD) ** h.exponent
            for h, t, end in zip(heats, junctions, t_end, strict=True)
        ]
        lost = sum(power) + sum(h.elsewhere for h in heats)
        heat = lost + p_other + share * (sum(h.p_out for h in heats) + lost)
        heat -= sum(power) if sink.outside else 0.0
        t_air = air.t_ambient + inside_rise(heat, air.t_ambient, air.box)  # type: ignore[arg-type]
        reference = (air.t_ambient if sink.outside else t_air) + sink.r * sum(power)
        following = [reference + r * p for r, p in zip(r_own, power, strict=True)]
        if np.allclose(following, junctions, rtol=0, atol=1e-9):
            return following
        junctions = following
    return junctions


def _random_product(dice: np.random.Generator, hot: float) -> tuple:  # type: ignore[type-arg]
    heats = tuple(
        ChannelHeat(
            dice.uniform(0.2, 8) * hot, dice.uniform(0, 6) * hot, dice.uniform(1, 2.3),
            dice.uniform(0, 2), dice.uniform(5, 200),
        )
        for _ in range(dice.integers(1, 5))
    )  # fmt: skip
    sun = float(dice.choice([0.0, 1000.0]))
    box = walls(*dice.uniform(0.1, 0.6, 3), dice.uniform(0.05, 0.95), "sealed", sun, 0.0)
    air = Air(dice.uniform(260, 320), None, box)
    sink = Sink(dice.uniform(0.2, 5), None, bool(dice.integers(2)))
    r_own = tuple(dice.uniform(0.5, 6, len(heats)))
    t_end = tuple(dice.uniform(380, 450, len(heats)))
    return air, sink, heats, r_own, t_end, dice.uniform(0, 5), float(dice.choice([0.0, 0.15]))


@pytest.mark.parametrize("seed", range(60))
def test_against_a_root_finder(seed: int) -> None:
    """Random products well away from runaway: all temperatures within a millikelvin."""
    product = _random_product(np.random.default_rng(seed), 0.4)
    expected = _equations(*product)
    if np.isnan(expected).any():
        pytest.skip("the root finder itself gave up")
    found = solve(*product)
    got = [found.t_air_inside, found.t_reference, *found.t_junction]
    assert got == pytest.approx(list(expected), abs=1e-3)


@pytest.mark.parametrize("seed", range(150))
def test_against_plain_iteration(seed: int) -> None:
    """Hot products, many without any balance below the end of their parts."""
    product = _random_product(np.random.default_rng(1000 + seed), 1.2)
    assert list(solve(*product).t_junction) == pytest.approx(_iterated(*product), abs=0.01)


def test_arrays_give_what_single_numbers_give() -> None:
    """One call with arrays equals one call for each element, runaway included."""
    currents = np.array([2.0, 8.0, 10.0, 14.0])
    end = (END,)
    heat = ChannelHeat(0.4, currents**2 * 0.02, 1.6, 0.0, 0.0)
    air, sink = Air(np.full(4, 323.15), None, None), Sink(0.0, None, False)
    together = solve(air, sink, (heat,), (40.0,), end, 0.0, 0.0).t_junction[0]
    for number, current in enumerate(currents):
        alone = ChannelHeat(0.4, current**2 * 0.02, 1.6, 0.0, 0.0)
        single = solve(Air(323.15, None, None), sink, (alone,), (40.0,), end, 0.0, 0.0)
        assert together[number] == pytest.approx(single.t_junction[0])


def test_shared_resistance_is_the_slope_of_the_heatsink() -> None:
    """One watt more in a switch moves the heatsink by r_shared (finite difference)."""
    box = walls(0.3, 0.26, 0.18, 0.9, "sealed", 0.0, 0.0)
    air, sink = Air(311.0, None, box), Sink(4.5, None, False)

    def at(power: float) -> Solution:
        heat = ChannelHeat(power, 0.0, 1.0, 0.5, 36.0)
        return solve(air, sink, (heat,), (1.0,), (END,), 1.0, 0.1)

    slope = (at(5.01).t_reference - at(4.99).t_reference) / 0.02
    assert at(5.0).r_shared == pytest.approx(slope, rel=1e-4)


def test_held_heatsink_of_tpa3221_at_75_degc() -> None:
    """TPA3221: 33.6 W at a case of 75 degC through 1.1 K/W is a junction of 112 degC."""
    one_channel = ChannelHeat(33.6 / 2, 0.0, 1.0, 0.0, 0.0)
    assert junction_over(348.15, one_channel, 2 * 1.1, END) - ZERO == pytest.approx(112, abs=0.1)


def test_iraudamp7d_case_at_2_x_15_watt() -> None:
    """Published: case 54 degC in 25 degC at 2 x 15 W of the 50 V board.

    Its board loses 10.4 W in all at 15.5 W of one channel, 7.8 W of it idle (both
    channels); 2 x 15 W make 13 W.  A heatsink of 2.2 K/W with all of it would be at
    54 degC; idle then gives 42 degC against 30 degC published, so more than half of the
    idle loss is not in the switches.  The balance must reproduce the first number.
    """
    loss = 2 * 10.42 - 7.8
    r_sink = (54 - 25) / loss
    heat = ChannelHeat(loss / 2, 0.0, 1.0, 0.0, 15.0)
    found = solve(
        Air(25 + ZERO, None, None), Sink(r_sink, None, True), (heat, heat), (7.1, 7.1),
        (END, END), 0.0, 0.0,
    )  # fmt: skip
    assert found.t_reference - ZERO == pytest.approx(54.0, abs=0.1)
    assert 85 < found.t_junction[0] - ZERO < 101

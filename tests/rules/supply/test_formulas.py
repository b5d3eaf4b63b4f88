"""Formulas of the supply with unlike channels, against quadrature and sums by hand."""

import math

import pytest
from scipy.integrate import quad

from ampreview.rules.formulas.bulk import bulk_current, carrier_ripple_square
from ampreview.rules.formulas.pumping import (
    bridge_rise,
    channel_rise,
    half_bridge_rise,
    pumping,
    pumping_unless_sunk,
    worst_depth,
)
from ampreview.rules.formulas.supply import loaded_voltage, lowest, source_current_rms


def test_source_current_by_quadrature() -> None:
    """Power of 100 W swinging by 70 W at twice and by 40 W at the frequency itself."""

    def square(x: float) -> float:
        p = 100.0 - 70.0 * math.cos(2 * x) + 40.0 * math.sin(x)
        return (p / loaded_voltage(24.0, 0.3, p)) ** 2

    expected = math.sqrt(quad(square, 0, 2 * math.pi)[0] / (2 * math.pi))
    assert source_current_rms(24.0, 0.3, 100.0, 70.0, 40.0) == pytest.approx(expected, rel=1e-6)


def test_lowest_wherever_it_stands() -> None:
    for values in ((1.0, 2.0, 3.0), (2.0, 1.0, 3.0), (3.0, 2.0, 1.0), (4.0,)):
        assert lowest(values) == min(values)


LEGS = (1.0, 1.0, 2.0, 1.0)
V = (40.0, 50.0, 45.0, 30.0)
M = (0.9, 0.95, 0.92, 0.9)
PHASE = (0.3, 0.0, 0.8, 0.1)
F = (20.0, 30.0, 25.0, 40.0)
Z = (4.0, 8.0, 6.0, 3.0)


@pytest.mark.parametrize(
    ("word", "signs"),
    [
        ("in-phase", (1, 1, 1, 1)),
        ("opposite", (1, -1, 1, -1)),
    ],
)
def test_pumping_of_unlike_channels(word: str, signs: tuple[int, ...]) -> None:
    """Half-bridges add with their signs, a bridge always the same way; then (v + x) dx."""
    limits = (1e9, 30.0, 1e9, 1e9)
    both = 2 * 55.0
    table = list(zip(LEGS, V, M, limits, PHASE, F, Z, strict=True))
    for rows in (table, table[::-1], table[1:]):
        rises = [channel_rise(r[0], r[1], min(r[2], r[3] / r[1]), *r[4:], 2e-3) for r in rows]
        # every second channel is reversed, but a bridge always pumps the same way
        turned = [1 if r[0] == 2 else s for r, s in zip(rows, signs, strict=False)]
        total = abs(sum(s * x for s, x in zip(turned, rises, strict=True)))
        expected = both * (math.sqrt(1 + 2 * total / both) - 1)
        found = pumping(*zip(*rows, strict=True), 2e-3, word, 55.0, 2.0)
        assert found == pytest.approx(expected, rel=1e-12)


def test_channel_is_a_half_bridge_or_a_bridge() -> None:
    arguments = (0.4, 25.0, 4.0, 2e-3)
    assert channel_rise(2, 40.0, 0.9, *arguments) == bridge_rise(40.0, 0.9, *arguments)
    depth = worst_depth(0.9, 0.4)
    assert channel_rise(1, 40.0, 0.9, *arguments) == half_bridge_rise(40.0, depth, *arguments)


def test_largest_channel_alone() -> None:
    none = (1e9,) * 4
    alone = [channel_rise(*x, 2e-3) for x in zip(LEGS, V, M, PHASE, F, Z, strict=True)]
    both = 110.0
    expected = both * (math.sqrt(1 + 2 * max(alone) / both) - 1)
    found = pumping(LEGS, V, M, none, PHASE, F, Z, 2e-3, "alone", 55.0, 2.0)
    assert found == pytest.approx(expected, rel=1e-12)


def test_source_that_takes_the_energy_back() -> None:
    arguments = (LEGS, V, M, (1e9,) * 4, PHASE, F, Z, 2e-3, "in-phase", 55.0, 2.0)
    assert pumping_unless_sunk(*arguments, "yes") == 0.0
    assert pumping_unless_sunk(*arguments, "no") == pumping(*arguments)


@pytest.mark.parametrize("locked", [("yes", "yes", "yes"), ("channels",) * 3, ("no", "no", "no")])
def test_bulk_current_of_three_channels_by_phasors(locked: tuple[str, ...]) -> None:
    """Audio parts in phase through r beside c; carrier parts straight or in squares."""
    legs, levels = (1.0, 2.0, 2.0), ("two-level", "two-level", "three-level")
    i, m, share = (3.0, 5.0, 7.0), (0.5, 0.8, 0.9), 0.25
    small_i, small_m = [x / 2 for x in i], [x / 2 for x in m]

    def through_c(f: float) -> float:
        z_c = 1 / (2j * math.pi * f * 10e-3)
        return abs(0.05 / (0.05 + z_c))

    # one rail: i m n / 4 at twice the frequency, i / 2 at the frequency from a half-bridge
    double = sum(a * b * n / 4 for a, b, n in zip(small_i, small_m, legs, strict=True))
    audio = (double * through_c(60.0)) ** 2 / 2 + (small_i[0] / 2 * through_c(30.0)) ** 2 / 2
    parts = [carrier_ripple_square(*x) for x in zip(legs, levels, small_i, small_m, strict=True)]
    straight = sum(math.sqrt(x) for x in parts) ** 2
    carrier = straight if locked[0] != "no" else sum(parts)
    found = bulk_current(legs, levels, i, m, locked, 0.05, 10e-3, (40.0, 30.0, 90.0), share)
    assert found == pytest.approx(math.sqrt(audio + carrier), rel=1e-9)


def test_depth_beyond_one_counts_as_one() -> None:
    for levels, legs in (("two-level", 1.0), ("three-level", 2.0)):
        full = carrier_ripple_square(legs, levels, 5.0, 1.0)
        assert carrier_ripple_square(legs, levels, 5.0, 1.4) == full
        assert carrier_ripple_square(legs, levels, 5.0, 0.9) != full

"""Formulas of the supply with unlike channels, against quadrature and sums by hand."""

import math

import pytest
from scipy.integrate import quad

from ampreview.rules.formulas.pumping import channel_rise, pumping, pumping_unless_sunk
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


@pytest.mark.parametrize(("word", "signs"), [
    ("in-phase", (1, 1, 1, 1)), ("opposite", (1, -1, 1, -1)),
])
def test_pumping_of_unlike_channels(word: str, signs: tuple[int, ...]) -> None:
    """Half-bridges add with their signs, a bridge always the same way; then (v + x) dx."""
    limits = (1e9, 30.0, 1e9, 1e9)
    rises = []
    for n, v, m, limit, phase, f, z in zip(LEGS, V, M, limits, PHASE, F, Z, strict=True):
        rises.append(channel_rise(n, v, min(m, limit / v), phase, f, z, 2e-3))
    total = abs(sum(s * r for s, r in zip(signs, rises, strict=True)))
    both = 2 * 55.0
    expected = both * (math.sqrt(1 + 2 * total / both) - 1)
    found = pumping(LEGS, V, M, limits, PHASE, F, Z, 2e-3, word, 55.0, 2.0)
    assert found == pytest.approx(expected, rel=1e-12)
    swapped = (LEGS[::-1], V[::-1], M[::-1], limits[::-1], PHASE[::-1], F[::-1], Z[::-1])
    again = pumping(*swapped, 2e-3, word, 55.0, 2.0)
    if word == "in-phase":
        assert again == pytest.approx(expected, rel=1e-12)


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

"""Walls, fin and capacitor life against root finding, finite differences and print."""

import numpy as np
import pytest
from scipy.optimize import brentq

from ampreview.rules.formulas.enclosure import (
    convection_factor,
    wall_rise,
    walls,
)
from ampreview.rules.thermal.capacitor_life import CHECK


def _given_off(rise: float, t_ambient: float, height: float, sun: float = 0.0) -> float:
    """Walls of a box 0.3 x 0.2 m wide and deep, written down anew."""
    sides = 2 * (0.3 + 0.2) * height
    top = 0.3 * 0.2
    span = 4 * top / (2 * (0.3 + 0.2))
    air = 1.42 * sides / height**0.25 + (1.32 + 0.59) * top / span**0.25
    glow = 0.9 * 5.670e-8 * (sides + 2 * top)
    return air * rise**1.25 + glow * ((t_ambient + rise) ** 4 - t_ambient**4) - sun


def test_box_of_15_watt_by_root_finding() -> None:
    """0.30 x 0.20 x 0.10 m, 15 W, 0.9, 35 degC: wall 7.329 K, radiation 66.5 %."""
    root = brentq(lambda t: _given_off(t, 308.15, 0.1) - 15, 1e-6, 100)
    assert root == pytest.approx(7.329, abs=1e-3)
    box = walls(0.3, 0.1, 0.2, 0.9, "sealed", 0.0, 0.0)
    assert wall_rise(15.0, 308.15, box) == pytest.approx(root, rel=1e-6)
    glow = box.radiating * ((308.15 + root) ** 4 - 308.15**4)
    assert glow / 15 == pytest.approx(0.665, abs=1e-3)
    assert box.film == pytest.approx(5 * 0.22)


@pytest.mark.parametrize("heat", [0.0, 0.5, 5.0, 60.0, 400.0])
@pytest.mark.parametrize("height", [0.05, 0.4])
def test_wall_rise_for_any_heat(heat: float, height: float) -> None:
    """A fixed number of steps is enough from nothing to far too much."""
    box = walls(0.3, height, 0.2, 0.9, "sealed", 0.0, 0.0)
    root = brentq(lambda t: _given_off(t, 300.0, height) - heat, 0, 2000, xtol=1e-12)
    assert wall_rise(heat, 300.0, box) == pytest.approx(root, rel=1e-5, abs=2e-3)


def test_sun_takes_the_largest_shadow() -> None:
    """Largest projected area of a box by search over directions; 0.8 of 1000 W/m2."""
    angle, height = np.meshgrid(np.linspace(0, np.pi / 2, 721), np.linspace(0, np.pi / 2, 721))
    areas = np.array([0.3 * 0.1, 0.2 * 0.1, 0.3 * 0.2])
    shadow = (
        areas[0] * np.cos(height) * np.sin(angle)
        + areas[1] * np.cos(height) * np.cos(angle)
        + areas[2] * np.sin(height)
    )
    box = walls(0.3, 0.1, 0.2, 0.9, "sealed", 1000.0, 0.0)
    assert box.sun == pytest.approx(0.8 * 1000 * shadow.max(), rel=1e-4)


def test_standard_atmosphere_table() -> None:
    """ISO 2533: density 1.225, 1.1117 and 0.90925 kg/m3 at 0, 1000 and 3000 m."""
    for height, density in ((0.0, 1.225), (1000.0, 1.1117), (3000.0, 0.90925)):
        assert convection_factor(height) ** 2 == pytest.approx(density / 1.225, rel=1e-3)


def test_cosel_a0057_three_temperatures() -> None:
    """1000 h at 105 degC: 64 000, 32 000 and 16 000 h at 45, 55 and 65 degC.

    Equal thirds last as long as 57.2 degC all the time: 27 429 h by the harmonic mean.
    """

    def hours(celsius: float) -> float:
        figure = CHECK.figure(
            life=1000.0, t_rated=378.15, t_air_inside=celsius + 273.15, doubling=10.0,
            seal=131_400.0, life_wanted=1.0,
        )  # fmt: skip
        return float(figure)

    assert [hours(t) for t in (45, 55, 65)] == pytest.approx([64_000, 32_000, 16_000])
    mixed = 3 / sum(1 / hours(t) for t in (45, 55, 65))
    assert mixed == pytest.approx(27_429, abs=1)
    assert hours(57.2) == pytest.approx(mixed, rel=2e-3)
    assert hours(5) == 131_400


def test_sun_counts_as_heat_of_the_wall() -> None:
    """What the sun gives the wall stands on the same side of the balance as the heat inside."""
    dark = walls(0.3, 0.1, 0.2, 0.9, "sealed", 0.0, 0.0)
    sunny = walls(0.3, 0.1, 0.2, 0.9, "sealed", 1000.0, 0.0)
    assert wall_rise(15.0, 308.15, sunny) == pytest.approx(
        wall_rise(15.0 + sunny.sun, 308.15, dark), rel=1e-9
    )
    assert sunny.sun > 10.0


def test_vented_box_has_half_the_rise_of_a_sealed_one() -> None:
    """Common practice, no source: nothing is known of the holes."""
    sealed = walls(0.3, 0.1, 0.2, 0.9, "sealed", 0.0, 0.0)
    vented = walls(0.3, 0.1, 0.2, 0.9, "vented", 0.0, 0.0)
    assert vented.air_share == sealed.air_share / 2

"""Sound levels against sound power, wave integrals and published level tables."""

import numpy as np
import pytest

from ampreview.rules.formulas.acoustics import (
    decibel,
    distance_loss,
    network_level,
    piston_level,
    power_decibel,
    programme_drop,
    sensitivity_at_voltage,
    sum_of_levels,
)

P_REF, RHO, SOUND = 20e-6, 1.18, 345.0


@pytest.mark.parametrize(
    ("volts", "dbu"), [(0.7746, 0.0), (1.2277, 4.0), (0.3162, -7.782), (1.0, 2.218)]
)
def test_dbu_table(volts: float, dbu: float) -> None:
    """0 dBu = 0.7746 V, +4 dBu = 1.228 V, -10 dBV = 0.3162 V, dBu = dBV + 2.218."""
    assert decibel(volts / 0.6**0.5) == pytest.approx(dbu, abs=2e-3)


def test_gap_between_professional_and_consumer_level() -> None:
    assert decibel(1.2277 / 0.3162) == pytest.approx(11.78, abs=5e-3)


@pytest.mark.parametrize(
    ("crest", "share"), [(6, 0.5024), (9, 0.2518), (12, 0.1262), (15, 0.06325), (20, 0.0200)]
)
def test_programme_power_of_a_scaled_wave(crest: float, share: float) -> None:
    """Mean square of noise scaled to the crest factor, over that of a sine of its peak."""
    noise = np.random.default_rng(3).normal(size=200_000)
    peak = 10 ** (crest / 20) * np.sqrt(np.mean(noise**2))
    found = np.mean(noise**2) / (peak**2 / 2)
    assert 10 ** (-programme_drop(crest) / 10) == pytest.approx(found, rel=1e-9)
    assert found == pytest.approx(share, rel=5e-3)


def test_antenna_magazine_one_eighth() -> None:
    """A crest factor of 12 dB makes about 1/8 of the sine rating, -9 dB."""
    assert programme_drop(12.04) == pytest.approx(-power_decibel(1 / 8), abs=2e-3)


def _pressure_squared(watts: float, per_watt: float) -> float:
    """Square of the pressure at 1 m [Pa^2] of a source that adds up by sound power."""
    return watts * 10 ** (per_watt / 10) * P_REF**2


@pytest.mark.parametrize("z", [4.0, 6.0, 8.0, 16.0])
def test_bases_of_sensitivity_agree_in_sound_power(z: float) -> None:
    by_power = 10 * np.log10(_pressure_squared(2.828427**2 / z, 85.0) / P_REF**2)
    assert sensitivity_at_voltage(85.0, z, 8.0) == pytest.approx(by_power, abs=1e-6)


@pytest.mark.parametrize(("series", "parallel"), [(1, 1), (2, 1), (1, 2), (2, 2), (1, 4)])
def test_network_level_by_adding_pressures(series: int, parallel: int) -> None:
    """Each unit has 1/series of the voltage; equal pressures of all units add."""
    one = 10 ** (88.0 / 20) * P_REF * (20.0 / series) / 2.828427
    total = one * series * parallel
    found = network_level(88.0, 20.0, parallel, 2.828427)
    assert found == pytest.approx(20 * np.log10(total / P_REF), abs=1e-9)


def test_listening_example() -> None:
    """88 dB, 100 W in 8 ohm, 3 m: 98.46 dB; 85 dB with 12 dB peaks at 3 m needs 35.75 W."""
    level = network_level(88.0, 28.28427, 1, 2.828427) - distance_loss(3.0, 1.0)
    sphere = _pressure_squared(100.0, 88.0) / 9.0
    assert level == pytest.approx(10 * np.log10(sphere / P_REF**2), abs=1e-5)
    assert level == pytest.approx(98.46, abs=0.005)
    needed = network_level(88.0, (35.75 * 8) ** 0.5, 1, 2.828427) - distance_loss(3.0, 1.0)
    assert needed - programme_drop(12.0) == pytest.approx(85.0, abs=0.005)


def test_levels_of_unlike_sounds_by_waves() -> None:
    """Three uncorrelated noises, added as waves."""
    dice = np.random.default_rng(8)
    waves = [dice.normal(size=400_000) * scale for scale in (1.0, 0.5, 2.0)]
    levels = [10 * np.log10(np.mean(wave**2)) for wave in waves]
    together = 10 * np.log10(np.mean(sum(waves) ** 2))
    assert sum_of_levels(levels) == pytest.approx(together, abs=0.02)


@pytest.mark.parametrize("f", [20.0, 30.0, 60.0])
def test_piston_by_the_rayleigh_integral(f: float) -> None:
    """Every ring of the piston radiates into the half space; phases of the paths counted."""
    s_d, x_peak, distance = 0.0137, 5e-3, 1.0
    radius = (s_d / np.pi) ** 0.5
    edges = np.linspace(0, radius, 2001)
    middle, step = (edges[1:] + edges[:-1]) / 2, radius / 2000
    path = np.sqrt(distance**2 + middle**2)
    wave = np.exp(-2j * np.pi * f / SOUND * path) / path * 2 * np.pi * middle * step
    acceleration = (2 * np.pi * f) ** 2 * x_peak
    pressure = abs(RHO / (2 * np.pi) * acceleration * wave.sum()) / 2**0.5
    found = piston_level(f, s_d, x_peak, 1, distance, RHO, P_REF)
    assert found == pytest.approx(20 * np.log10(pressure / P_REF), abs=0.02)


def test_piston_by_sound_power() -> None:
    """Radiation resistance of a small piston in a wall, power spread over the half sphere."""
    f, s_d, x_peak = 40.0, 0.0137, 238.4e-6 / 0.0137
    k = 2 * np.pi * f / SOUND
    radius = (s_d / np.pi) ** 0.5
    resistance = RHO * SOUND * s_d * (k * radius) ** 2 / 2
    watts = resistance * (2 * np.pi * f * x_peak) ** 2 / 2
    pressure = np.sqrt(watts * RHO * SOUND / (2 * np.pi))
    found = piston_level(f, s_d, x_peak, 1, 1.0, RHO, P_REF)
    assert found == pytest.approx(20 * np.log10(pressure / P_REF), abs=1e-6)
    assert found == pytest.approx(100.0, abs=0.005)
    assert piston_level(30.0, s_d, 5e-3, 1, 1.0, RHO, P_REF) == pytest.approx(84.17, abs=0.005)

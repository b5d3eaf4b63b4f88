"""Sag, source current, ripple, ripple current and inrush against second methods."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from ampreview.rules.formulas.bulk import bulk_current, capacitor_share, carrier_ripple_square
from ampreview.rules.formulas.fuse import charging_i2t
from ampreview.rules.formulas.supply import (
    half_bridge_swing,
    loaded_current,
    loaded_voltage,
    programme_share,
    rail_ripple,
    source_current_rms,
    source_share,
    stored_energy,
)

P_MEAN = 80.0 / 0.88  # 2 x 40 W at 88 % from 20.4 V and 0.12 ohm


def root(v_open: float, r: float, p: float) -> float:
    """Upper root of the power balance, found by bisection."""
    return float(brentq(lambda v: v * (v_open - v) / r - p, v_open / 2, v_open, xtol=1e-13))


@pytest.mark.parametrize(
    ("p", "volts", "amperes"), [(P_MEAN, 19.85, 4.580), (2 * P_MEAN, 19.27, 9.436)]
)
def test_sag_of_a_pack_by_root_finding(p: float, volts: float, amperes: float) -> None:
    v = loaded_voltage(20.4, 0.120, p)
    assert v == pytest.approx(root(20.4, 0.120, p), rel=1e-9)
    assert v == pytest.approx(volts, rel=5e-4)
    assert loaded_current(20.4, 0.120, p) == pytest.approx(amperes, rel=5e-4)


def test_sag_by_time_simulation() -> None:
    """A constant-power load with a capacitor settles at the upper root."""

    def slope(t: float, v: np.ndarray) -> list[float]:
        return [((20.4 - v[0]) / 0.12 - P_MEAN / v[0]) / 4.4e-3]

    settled = solve_ivp(slope, (0, 0.05), [20.4], rtol=1e-9).y[0, -1]
    assert loaded_voltage(20.4, 0.120, P_MEAN) == pytest.approx(settled, rel=1e-6)


def test_largest_power_of_a_pack() -> None:
    """20.4 V and 0.12 ohm give 867.0 W at most; the voltage is then half."""
    assert loaded_voltage(20.4, 0.12, 867.0) == pytest.approx(10.2, rel=1e-3)
    assert loaded_voltage(20.4, 0.12, 900.0) == 10.2


def test_current_of_a_full_scale_sine() -> None:
    """Mean 4.649 A and rms 5.722 A over a 40 Hz sine, solved at every instant."""
    x = np.linspace(0, 2 * math.pi, 4001)[:-1]
    p = P_MEAN * (1 - np.cos(2 * x))
    amperes = np.array([(20.4 - root(20.4, 0.12, k)) / 0.12 for k in p])
    rms = math.sqrt(float(np.mean(amperes**2)))
    assert float(np.mean(amperes)) == pytest.approx(4.649, rel=5e-4)
    assert rms == pytest.approx(5.722, rel=5e-4)
    assert source_current_rms(20.4, 0.12, P_MEAN, P_MEAN, 0.0) == pytest.approx(rms, rel=1e-5)


def test_rms_of_a_bridge_is_root_of_one_and_a_half() -> None:
    stiff = source_current_rms(20.0, 0.0, 100.0, 100.0, 0.0)
    assert stiff == pytest.approx(math.sqrt(1.5) * 5.0, rel=1e-12)


@pytest.mark.parametrize(("i_peak", "depth"), [(5.0, 0.8), (6.25, 1.0), (2.0, 0.3)])
def test_rail_current_of_a_half_bridge(i_peak: float, depth: float) -> None:
    """One rail carries i (1 + m) / 2: mean, rms and crest of the waveform itself."""
    v = 50.0
    x = np.linspace(0, 2 * math.pi, 100_001)[:-1]
    wave = i_peak * np.sin(x) * (1 + depth * np.sin(x)) / 2
    p_out = i_peak * depth * v / 2
    p_mean, p_signal = p_out / 2, half_bridge_swing(p_out, depth) / 2
    assert float(np.mean(wave)) == pytest.approx(p_mean / v, rel=1e-9)
    rms = source_current_rms(v, 0.0, p_mean, p_mean, p_signal)
    assert rms == pytest.approx(math.sqrt(float(np.mean(wave**2))), rel=1e-9)
    crest = loaded_current(v, 0.0, p_mean + p_mean + p_signal)
    assert crest == pytest.approx(float(np.max(wave)), rel=1e-6)


def turn(f: float, r: float, c: float) -> float:
    """Resistance times capacitance in radians of the audio frequency."""
    return 2 * math.pi * f * r * c


def phasor_ripple(p: float, v: float, f: float, r: float, c: float) -> float:
    z_c = 1 / (2j * math.pi * 2 * f * c)
    return 2 * p / v * abs(r * z_c / (r + z_c))


def test_ripple_of_a_bridge_by_phasor_and_ode() -> None:
    """200 W, 30 V, 20 Hz, 3.3 mF, 50 mohm: 0.666 V, not the 16 V of a constant current."""
    p, v, f, r, c = 200.0, 30.0, 20.0, 0.05, 3.3e-3
    figure = rail_ripple(v, r, p * source_share(r, c, 2 * f), 0.0, turn(f, r, c))
    assert figure == pytest.approx(0.666, rel=1e-3)
    assert figure == pytest.approx(phasor_ripple(p, v, f, r, c), rel=1e-9)

    def slope(t: float, x: np.ndarray) -> list[float]:
        return [((v - x[0]) / r - p / v * (1 - math.cos(4 * math.pi * f * t))) / c]

    late = np.linspace(0.2, 0.25, 2001)
    path = solve_ivp(slope, (0, 0.25), [v], t_eval=late, rtol=1e-9, max_step=1e-4).y[0]
    assert figure == pytest.approx(float(np.ptp(path)), rel=1e-3)


def test_ripple_with_constant_power_stays_close() -> None:
    """The current swing of a real amplifier also follows the sag: 2 % more here."""
    p, v, f, r, c = 200.0, 30.0, 20.0, 0.05, 3.3e-3

    def slope(t: float, x: np.ndarray) -> list[float]:
        return [((v - x[0]) / r - p / x[0] * (1 - math.cos(4 * math.pi * f * t))) / c]

    late = np.linspace(0.2, 0.25, 2001)
    path = solve_ivp(slope, (0, 0.25), [v], t_eval=late, rtol=1e-9, max_step=1e-4).y[0]
    figure = rail_ripple(v, r, p * source_share(r, c, 2 * f), 0.0, turn(f, r, c))
    assert float(np.ptp(path)) == pytest.approx(figure, rel=0.03)


def test_a_source_without_stiffness_gives_the_constant_current_figure() -> None:
    """P / (2 pi f V C) = 16.08 V for 200 W, 30 V, 20 Hz, 3.3 mF."""
    r = 1e4
    figure = rail_ripple(30.0, r, 200.0 * source_share(r, 3.3e-3, 40.0), 0.0, turn(20.0, r, 3.3e-3))
    assert figure == pytest.approx(16.08, rel=1e-3)


@pytest.mark.parametrize("depth", [0.2, 0.8, 1.0])
def test_half_bridge_ripple_on_a_constant_current(depth: float) -> None:
    """k I / (2 pi f C) of one rail, k from the zeros of its current: 1.005, 1.069, 1.101."""
    v, i_peak, f, c, r = 50.0, 5.0, 20.0, 4700e-6, 1e4
    s = brentq(lambda x: x - depth / 2 * (1 - 2 * x * x), 0.0, 1.0)
    t = math.asin(s)
    k = math.cos(t) + depth / 4 * math.sin(2 * t)
    assert half_bridge_ripple(v, i_peak, depth, f, r, c) == pytest.approx(
        k * i_peak / (2 * math.pi * f * c), rel=5e-3
    )


def half_bridge_ripple(
    v: float, i_peak: float, depth: float, f: float, r: float, c: float
) -> float:
    """Of one rail; the same for a split supply and for one rail with a series capacitor."""
    mean = i_peak * depth / 4 * v
    return rail_ripple(
        v,
        r,
        mean * source_share(r, c, 2 * f),
        half_bridge_swing(mean, depth) * source_share(r, c, f),
        turn(f, r, c),
    )


@pytest.mark.parametrize("depth", [0.3, 0.7, 1.0])
@pytest.mark.parametrize("c", [100e-6, 3.3e-3, 47e-3])
def test_half_bridge_ripple_by_a_switched_rail(depth: float, c: float) -> None:
    """Load current times the switch of one rail, period by period at 20 kHz, behind 0.2 ohm."""
    v, i_peak, f, r, steps = 50.0, 5.0, 20.0, 0.2, 1000
    h = 1 / f / steps
    wave, sag = [], 0.0
    for k in range(12 * steps):
        x = 2 * math.pi * (k + 0.5) / steps
        duty = (1 + depth * math.sin(x)) / 2
        settled = r * duty * i_peak * math.sin(x)
        sag = settled + (sag - settled) * math.exp(-h / (r * c))
        wave.append(sag)
    found = max(wave[-steps:]) - min(wave[-steps:])
    assert half_bridge_ripple(v, i_peak, depth, f, r, c) == pytest.approx(found, rel=6e-3)


def switched_current(levels: str, n_legs: int, i_peak: float, depth: float) -> float:
    """Rms of the alternating current of one rail about its local mean, carrier only."""
    periods, steps = 2000, 2000
    x = 2 * math.pi * (np.arange(periods) + 0.5) / periods
    m = depth * np.sin(x)[:, None]
    i = i_peak * np.sin(x)[:, None]
    triangle = (2 * (np.arange(steps) + 0.5) / steps - 1)[None, :]
    if n_legs == 1:
        rail = i * (m > triangle)
    elif levels == "two-level":
        rail = i * np.where(m > triangle, 1.0, -1.0)
    else:
        rail = i * ((m > triangle).astype(float) - (-m > triangle))
    return float(np.sqrt(np.mean((rail - rail.mean(axis=1, keepdims=True)) ** 2)))


# Published values of a switched waveform: legs, levels, peak current, depth, rms.
CARRIER_TABLE = [
    (1, "two-level", 5.0, 0.8, 1.275),
    (1, "two-level", 6.25, 1.0, 1.105),
    (2, "two-level", 5.0, 0.8, 2.550),
    (2, "three-level", 5.0, 0.8, 1.577),
]


@pytest.mark.parametrize(("n_legs", "levels", "i_peak", "depth", "amperes"), CARRIER_TABLE)
def test_table_of_carrier_ripple_currents(
    n_legs: int, levels: str, i_peak: float, depth: float, amperes: float
) -> None:
    figure = carrier_ripple_square(n_legs, levels, i_peak, depth) ** 0.5
    assert figure == pytest.approx(amperes, rel=5e-4)
    assert figure == pytest.approx(switched_current(levels, n_legs, i_peak, depth), rel=2e-3)


@pytest.mark.parametrize(
    ("n_legs", "levels", "i_peak", "depth", "audio"),
    [
        (1, "two-level", 5.0, 0.8, 1.904),  # published: half bridge, no source
        (1, "two-level", 6.25, 1.0, 2.471),
        (2, "two-level", 5.0, 0.8, 1.414),  # published: 100 W from 50 V on a bridge
    ],
)
def test_audio_part_without_a_source(
    n_legs: int, levels: str, i_peak: float, depth: float, audio: float
) -> None:
    all_of_it = bulk_current(
        (n_legs,), (levels,), (i_peak,), (depth,), ("yes",), 1e5, 1.0, (20.0,), 1.0
    )
    carrier = switched_current(levels, n_legs, i_peak, depth)
    assert math.sqrt(all_of_it**2 - carrier**2) == pytest.approx(audio, rel=2e-3)


def test_a_stiff_source_leaves_the_carrier_only() -> None:
    figure = bulk_current((1,), ("two-level",), (5.0,), (0.8,), ("yes",), 0.0, 1e-3, (20.0,), 1.0)
    assert figure == pytest.approx(1.275, rel=5e-4)


def test_channels_on_one_clock_add_straight_others_in_squares() -> None:
    two = ((1, 1), ("two-level",) * 2, (5.0,) * 2, (0.8,) * 2)
    locked = bulk_current(*two, ("yes", "yes"), 0.0, 1e-3, (20.0,) * 2, 1.0)
    free = bulk_current(*two, ("no", "no"), 0.0, 1e-3, (20.0,) * 2, 1.0)
    assert locked == pytest.approx(2 * 1.275, rel=5e-4)
    assert free == pytest.approx(math.sqrt(2) * 1.275, rel=5e-4)


def test_reference_board_at_sine_and_programme() -> None:
    """120 W into 4 ohm from 35 V: audio part 3.0 A at the sine, 0.98 A at one eighth."""
    i_peak = math.sqrt(2 * 120.0 / 4.0)
    depth = i_peak * 4.0 / 35.0
    for share, amperes in ((1.0, 3.0), (0.125, 0.98)):
        i, m = i_peak * share**0.5, depth * share**0.5
        both = bulk_current(
            (1,), ("two-level",), (i_peak,), (depth,), ("no",), 1e5, 1.0, (20.0,), share
        )
        carrier = switched_current("two-level", 1, i, m)
        assert math.sqrt(both**2 - carrier**2) == pytest.approx(amperes, rel=0.01)


def test_shares_of_source_and_capacitor_by_phasor() -> None:
    r, c, f = 0.36, 4.4e-3, 80.0
    z_c = 1 / (2j * math.pi * f * c)
    assert source_share(r, c, f) == pytest.approx(abs(z_c / (z_c + r)), rel=1e-12)
    assert capacitor_share(r, c, f) == pytest.approx(abs(r / (z_c + r)), rel=1e-12)


@pytest.mark.parametrize(
    ("v", "r", "c", "i2t", "joule"),
    [(25.2, 0.10, 4.4e-3, 13.97, 1.397), (50.0, 2.0, 10e-3, 6.250, 12.50)],
)
def test_inrush_by_ode(v: float, r: float, c: float, i2t: float, joule: float) -> None:
    def slope(t: float, x: np.ndarray) -> list[float]:
        i = (v - x[0]) / r
        return [i / c, i * i, i * i * r]

    end = solve_ivp(slope, (0, 20 * r * c), [0.0, 0.0, 0.0], rtol=1e-10, atol=1e-12).y[:, -1]
    assert charging_i2t(c, v, r) == pytest.approx(end[1], rel=1e-6)
    assert charging_i2t(c, v, r) == pytest.approx(i2t, rel=5e-4)
    assert stored_energy(v, c) == pytest.approx(end[2], rel=1e-6)
    assert stored_energy(v, c) == pytest.approx(joule, rel=5e-4)


def test_programme_share_by_waveform() -> None:
    """A train of full-scale sine bursts with a crest factor of 12.04 dB has 1/8 the power."""
    x = np.linspace(0, 16 * math.pi, 160_001)[:-1]
    burst = np.where(x < 2 * math.pi, np.sin(x), 0.0)  # one period of eight
    rms = math.sqrt(float(np.mean(burst**2)))
    crest = 20 * math.log10(1.0 / rms)
    assert crest == pytest.approx(12.04, abs=0.01)
    assert programme_share(crest) == pytest.approx(1 / 8, rel=1e-6)


def test_crest_factor_of_twelve_decibel() -> None:
    """12 dB of crest factor are 7.92 times below the sine, 15 dB 15.8 times."""
    assert 1 / programme_share(12.0) == pytest.approx(7.92, rel=1e-3)
    assert 1 / programme_share(15.0) == pytest.approx(15.81, rel=1e-3)

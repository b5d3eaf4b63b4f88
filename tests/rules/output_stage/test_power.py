"""Output power against measured amplifiers and a switched stage."""

import math

import pytest

from ampreview.rules.derived.output import power_at_depth, power_in_loop, power_with_dead_time
from ampreview.rules.formulas.modulation import clipped_power_ratio


# TPA3221 data sheet SLASEE9B, power at 1 % read off its plot: supply, load, watts.  70 mohm
# each at 25 degC, two in line, case at 75 degC: 1.3 times; maximum depth 1.
@pytest.mark.parametrize(
    ("v", "load", "one"),
    [
        (12.0, 4.0, 14.6),
        (24.0, 4.0, 57.6),
        (30.0, 4.0, 88.1),
        (24.0, 8.0, 31.9),
        (30.0, 8.0, 49.7),
    ],
)
def test_tpa3221_measured_power(v, load, one):
    """The formula is at most a fifth above: bond wires, inductors and the part's own limit."""
    found = power_at_depth(1.0, v, load, 2 * 0.07 * 1.3) * clipped_power_ratio(0.01)
    assert 1.0 < found / one < 1.25


# IRAUDAMP7D reference design rev 2.9: rail, load, watts at 1 %; 58 and 80 mohm, 1.4 hot,
# 20 mohm inductor; self-oscillating, full depth.  The 50 V board is printed with 300 W in
# its table and reads 289 W in its plot.
@pytest.mark.parametrize(("v", "r_on", "one"), [(35.0, 0.058, 145.0), (50.0, 0.080, 300.0)])
def test_iraudamp7d_measured_power(v, r_on, one):
    found = power_at_depth(1.0, v, 4.0, 1.4 * r_on + 0.02) * clipped_power_ratio(0.01)
    assert found == pytest.approx(one, rel=0.06)


def test_universidad_de_cantabria_dead_time_takes_its_share():
    """70 V bridge, 10.8 ohm, index 0.75, 325 ns at 165 kHz: measured 2.65 A rms.

    2 x 0.17 ohm cold at 1.4 and 2 x 0.3 ohm of inductors in line.  Without the dead time the
    formula gives 3.1 A; with it 2.6 A.
    """
    path = 2 * 0.17 * 1.4 + 2 * 0.3
    power = power_with_dead_time(0.75, 325e-9, 165e3, 70.0, 10.8, path)
    assert (power / 10.8) ** 0.5 == pytest.approx(2.65, rel=0.06)
    ignored = power_with_dead_time(0.75, 0.0, 165e3, 70.0, 10.8, path)
    assert (ignored / 10.8) ** 0.5 > 1.1 * 2.65


# e2e.ti.com thread 929504: TPA3138D2 on 12 V, the maker's estimate at 1 % with 0.18 ohm and
# 0.1 ohm, read as one switch and one inductor of each of the two legs.
@pytest.mark.parametrize(("load", "estimate"), [(8.0, 8.1), (4.0, 14.8)])
def test_tpa3138_estimate_with_series_resistance(load, estimate):
    found = power_at_depth(1.0, 12.0, load, 2 * 0.28) * clipped_power_ratio(0.01)
    assert found == pytest.approx(estimate, rel=0.03)


def test_tas6424_series_resistance_behind_the_published_power():
    """14.4 V bridge, 27 W into 4 ohm at 10 %: 0.4475 ohm follows, worked out by hand."""
    found = power_at_depth(1.0, 14.4, 4.0, 0.4475) * clipped_power_ratio(0.1)
    assert found == pytest.approx(27.0, rel=2e-3)


def _average(depth: float, dead_time: float, carrier: float) -> float:
    """Mean node voltage of one period at a large load current, in units of half the swing.

    The upper switch turns on late by the dead time; until then the load current holds the
    node at the lower rail.
    """
    high = (1 + depth) / 2 / carrier - dead_time
    return 2 * high * carrier - 1


@pytest.mark.parametrize("dead_time", [20e-9, 100e-9])
def test_dead_time_at_the_crest_and_over_a_sine(dead_time: float) -> None:
    """Crest of a loop and fundamental of an open stage, from the periods one by one."""
    carrier, depth, steps = 400e3, 0.9, 2000
    angles = [2 * math.pi * (k + 0.5) / steps for k in range(steps)]
    signs = [1 if math.sin(a) > 0 else -1 for a in angles]
    wave = [
        s * _average(depth * abs(math.sin(a)), dead_time, carrier)
        for s, a in zip(signs, angles, strict=True)
    ]
    fundamental = 2 / steps * sum(w * math.sin(a) for w, a in zip(wave, angles, strict=True))
    found = power_with_dead_time(depth, dead_time, carrier, 30.0, 4.0, 0.0)
    assert (8 * found) ** 0.5 == pytest.approx(30.0 * fundamental, rel=1e-5)
    crest = power_in_loop(depth, dead_time, carrier, 30.0, 4.0, 0.0)
    assert (8 * crest) ** 0.5 == pytest.approx(30.0 * _average(depth, dead_time, carrier))

"""Figures of loudspeakers with every input away from one and zero, second methods."""

import math

import pytest

from ampreview.rules.derived.excursion import cone_alone, excursion
from ampreview.rules.derived.load import lowest_load
from ampreview.rules.formulas.driver import bass_frequencies
from ampreview.rules.loudspeaker.loudspeaker_clipped_power import figure as clipped
from ampreview.rules.loudspeaker.loudspeaker_minimum_impedance import figure as least_impedance
from ampreview.rules.loudspeaker.low_frequency_output import figure as bass
from ampreview.rules.loudspeaker.vented_box_unloading import figure as unloading
from ampreview.rules.loudspeaker.voice_coil_zobel import figure as zobel


def test_bass_of_many_pistons() -> None:
    """p = rho f^2 V (2 pi)^2 / (2 pi r): 2 x 3 x 2 pistons at 3 m and a box gain of 2."""
    volume = 12 * 137e-4 * 5e-3 / math.sqrt(2)
    pascal = 1.18 * (2 * math.pi * 30.0) ** 2 * volume / (2 * math.pi * 3.0) * 2
    level = 20 * math.log10(pascal / 20e-6)
    found = bass(30.0, 137e-4, 5e-3, 2.0, 3.0, 2.0, 2.0, 90.0, 3.0, 1.0, 1.18, 20e-6)
    assert found == pytest.approx(level - 90.0, abs=1e-9)


def test_lowest_impedance_of_a_network() -> None:
    """Two of 3.2 ohm at least in series, four such: 1.6 ohm, printed as 2 ohm."""
    assert least_impedance(8.0, 3.2, 2.0, 4.0, 4.0) == pytest.approx(0.5)
    assert least_impedance(1.0, 3.2, 2.0, 4.0, 4.0) == pytest.approx(0.25)


def test_clipped_power_of_a_string() -> None:
    """A square of 20 V over two in series: 10 V at each, 12.5 W in 8 ohm, a quarter of 50 W."""
    sine = 20 / math.sqrt(2)
    for clip, rms, peak in ((sine, 99.0, 99.0), (99.0, 20.0, 99.0), (99.0, 99.0, 20.0)):
        assert clipped(clip, rms, peak, 2.0, 8.0, 50.0) == pytest.approx(0.25)


@pytest.mark.parametrize(
    ("r", "c", "expected"),
    [
        # 1.25 * 6.4 ohm and l / r^2 are right; each is then twice too large or too small
        (8.0, 30e-6, 1.0),
        (16.0, 30e-6 / 4, 2.0),
        (4.0, 30e-6 * 4, 2.0),
        (8.0, 60e-6, 2.0),
        (8.0, 15e-6, 2.0),
    ],
)
def test_zobel_against_the_right_one(r: float, c: float, expected: float) -> None:
    assert zobel(r, c, 6.4, 30e-6 * 64) == pytest.approx(expected)


@pytest.mark.parametrize("order", [1, 2, 3, 4])
def test_high_pass_an_octave_below_the_tuning(order: int) -> None:
    """|H| of a Butterworth high-pass at half the tuning."""
    f, corner = 20.0, 30.0
    gain = (f / corner) ** order / math.sqrt(1 + (f / corner) ** (2 * order))
    assert unloading(corner, order, 2 * f) == pytest.approx(-20 * math.log10(gain), abs=1e-9)


@pytest.mark.parametrize("box", ["sealed", "open"])
def test_excursion_search_reaches_the_resonance(box):
    """Q of 2 and a band from far below: the largest excursion lies beyond twice f_s."""
    q, f_s, alpha = 2.0, 40.0, 3.0 if box == "sealed" else 0.0
    corner, order, low = 90.0, 4.0, 5.0

    def at(f):
        x = f / f_s
        cone = 1 / math.hypot(1 + alpha - x * x, x / q)
        return cone / math.sqrt(1 + (corner / f) ** (2 * order))

    expected = max(at(low * 1.001**k) for k in range(4000)) * 2e-3
    v_b = 20e-3 if box == "sealed" else 1e9
    motion = (2e-3, f_s, math.inf, q, 6.0, math.inf)
    found = excursion(*motion, 60e-3, v_b, 0.0, 1e9, 1.0, corner, order, low, 5e3)
    assert found == pytest.approx(expected, rel=0.015)


def test_frequencies_of_a_search() -> None:
    """From the low end to the end of the search or of the band, evenly in octaves."""
    found = bass_frequencies(20.0, 20e3, 80.0)
    assert (found[0], found[-1]) == (20.0, pytest.approx(80.0))
    assert found[24] == pytest.approx(40.0)
    assert len(found) == 49
    assert bass_frequencies(20.0, 60.0, 80.0)[-1] == pytest.approx(60.0)
    assert bass_frequencies(100.0, 20e3, 80.0)[-1] == pytest.approx(100.0)


def test_cone_alone_has_no_help_from_a_box() -> None:
    assert cone_alone() == 1.0


def test_lower_rated_load_dips_in_the_same_ratio() -> None:
    """8 ohm that dip to 6; 4 ohm allowed: 3; 16 ohm allowed: the network itself, 6."""
    assert lowest_load(6.0, 1.0, 1.0, 8.0, 4.0) == pytest.approx(3.0)
    assert lowest_load(6.0, 1.0, 1.0, 8.0, 16.0) == pytest.approx(6.0)

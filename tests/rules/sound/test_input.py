"""Input coupling and muting against a divider, a bisection and a charging curve."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from ampreview.rules.loudspeaker.series_capacitor_corner import figure as series_corner
from ampreview.rules.sound.gain_structure import figure as surplus
from ampreview.rules.sound.input_capacitor_dielectric import figure as share
from ampreview.rules.sound.input_coupling_corner import figure as corner
from ampreview.rules.sound.input_sensitivity import figure as sensitivity
from ampreview.rules.sound.muting_time import figure as muting

from ..whole import answer


def _corner(r: float, c: float) -> float:
    def above(f: float) -> float:
        return abs(r / (r + 1 / (2j * np.pi * f * c))) - 0.5**0.5

    return brentq(above, 1e-3, 1e7, xtol=1e-12, rtol=1e-12)


@pytest.mark.parametrize(
    ("r", "c", "hertz"), [(10e3, 2.2e-6, 7.234), (20e3, 1e-6, 7.958), (2.2e3, 1e-6, 72.3)]
)
def test_corner_by_bisection(r: float, c: float, hertz: float) -> None:
    assert _corner(r, c) == pytest.approx(hertz, rel=1e-3)
    assert corner(r, c, 20.0) == pytest.approx(_corner(r, c) / 20.0, rel=1e-9)
    assert series_corner(c, r, 900.0) == pytest.approx(_corner(r, c) / 900.0, rel=1e-9)


def test_loss_at_the_limits_of_the_corner() -> None:
    """A corner at the low end loses 3 dB, at half of it 0.97 dB."""
    for ratio, loss in ((1.0, 3.01), (0.5, 0.969)):
        c = 1 / (2 * np.pi * 10e3 * 20.0 * ratio)
        z = 10e3 + 1 / (2j * np.pi * 20.0 * c)
        assert corner(10e3, c, 20.0) == pytest.approx(ratio, rel=1e-12)
        assert -20 * np.log10(abs(10e3 / z)) == pytest.approx(loss, abs=1e-3)


def test_share_across_the_capacitor_by_a_divider() -> None:
    z_c = 1 / (2j * np.pi * 20.0 * 1e-6)
    assert share(20e3, 1e-6, 20.0) == pytest.approx(abs(z_c / (z_c + 20e3)), rel=1e-12)


def test_five_time_constants_by_integration() -> None:
    """1 V step behind 1 uF into 20 kohm: what the amplifier sees after 100 ms."""
    run = solve_ivp(lambda _, v: (1 - v) / (20e3 * 1e-6), (0, 0.1), [0.0], rtol=1e-10, atol=1e-12)
    left = 1 - run.y[0, -1]
    assert left == pytest.approx(np.exp(-muting(0.1, 20e3, 1e-6)), rel=1e-5)
    assert left < 0.01


@pytest.mark.parametrize(("level", "decibels"), [(0.5, 35.05), (1.0, 29.03), (1.2277, 27.25)])
def test_gain_for_100_w_in_8_ohm(level: float, decibels: float) -> None:
    """28.28 V from 0.5 V, 1 V and +4 dBu: with just that gain rated power is just reached."""
    gain = 10 ** (decibels / 20)
    assert sensitivity(level, gain, 100.0, 8.0) == pytest.approx(0.0, abs=5e-3)
    assert surplus(level, gain, 1.0, 40.0) == pytest.approx(0.0, abs=5e-3)


DOOR = """supply: {source: dc-source, rails: single, v_rail: 24 V}
signal: {v_in_max: VOLTS}
channels:
  main:
    rated_power: POWER
    rated_load: 8 ohm
    gain: 10 V/V
    limiter: LIMITER
    output_stage: {topology: full-bridge}
    modulator: {m_max: 100 %}
"""


@pytest.mark.parametrize(
    ("volts", "power", "limiter", "severity"),
    [  # 1 V rms at gain 10 is a crest of 14.1 V
        ("1 V", "2.5 W", "none", None),  # a door station on 24 V needs 6.3 V
        ("0.4 V", "2.5 W", "none", "major"),  # 5.7 V
        ("1 V", "30 W", "none", "major"),  # the rating needs 21.9 V
        ("1 V", "30 W", "{v_peak: 14 V}", None),  # a limiter acts before
        ("1.6 V", "60 W", "none", "major"),  # 31 V of rating, 24 V of rail, 22.6 V of input stage
    ],
)
def test_the_input_stage_has_to_reach_what_the_output_needs(volts, power, limiter, severity):
    """Crest of a sine: the root of twice its power times the load."""
    text = DOOR.replace("VOLTS", volts).replace("POWER", power).replace("LIMITER", limiter)
    found = answer("input-stage-headroom", text)
    assert (found.severity and found.severity.value) == severity, found.message

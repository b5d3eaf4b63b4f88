"""Figures of the output filter with every input away from one and zero, second methods."""

import math

import numpy as np
import pytest

from ampreview.rules.derived.damper import carrier_heat
from ampreview.rules.derived.response import (
    capacitance,
    deviation_with_coils,
    larger_deviation,
    resistance,
)
from ampreview.rules.output_filter.blocking_capacitor_stress import figure as blocking
from ampreview.rules.output_filter.carrier_heats_loudspeaker import figure as coil_heat
from ampreview.rules.output_filter.damper_power import figure as damper_power
from ampreview.rules.output_filter.damper_size import figure as damper_size
from ampreview.rules.output_filter.emission_at_30_mhz import figure as emission
from ampreview.rules.output_filter.filter_capacitor_heating import figure as heating
from ampreview.rules.output_filter.filter_capacitor_heating_to_ground import (
    figure as heating_to_ground,
)
from ampreview.rules.output_filter.open_load_peaking import figure as open_load


def test_carrier_in_four_coils_by_node_equations() -> None:
    """Six coils, two in series and three such strings: the heat of the residual in all."""
    f, l_total, c_total, n_legs, dcr = 400e3, 44e-6, 0.47e-6, 2.0, 0.03
    s = 2j * math.pi * f
    load = 6.0 + s * 0.5e-3 * 2 / 3
    branch = 1 / (s * c_total + 1 / load)
    across = branch / (branch + s * l_total + n_legs * dcr)
    drive = 4 / math.pi * 24.0 / math.sqrt(2)  # fundamental of +-24 V across a bridge, rms
    watts = abs(drive * across / load) ** 2 * 6.0
    found = coil_heat(
        24.0, "two-level", f, l_total, c_total, n_legs, dcr, 0.0, 0.0, 6.0, 0.5e-3, 2.0, 3.0, 0.5
    )
    assert found == pytest.approx(watts / (0.5 * 6), rel=1e-9)


@pytest.mark.parametrize(
    ("connection", "legs", "share"),
    [
        ("across-load", 2.0, 1.0),
        ("each-terminal", 2.0, 2.0),
        ("each-terminal", 1.0, 1.0),
    ],
)
def test_damper_at_programme_by_phasors(connection: str, legs: float, share: float) -> None:
    """20 V of sine at most, 12 dB of crest: the r of a series r-c takes |u/z|^2 r."""
    u = 20.0 * math.sqrt(2) / 10 ** (12.0 / 20) / share
    z = 10.0 + 1 / (2j * math.pi * 20e3 * 680e-9)
    sine = 10 * math.log10(2)
    found = damper_power(20.0, 12.0, sine, 20e3, 10.0, 680e-9, connection, legs, 0.1, 0.5)
    assert found == pytest.approx((abs(u / z) ** 2 * 10.0 + 0.1) / 0.5, rel=1e-9)


@pytest.mark.parametrize(
    ("connection", "levels", "legs", "drive"),
    [
        ("across", "two-level", 1.0, 2 / math.pi * 24.0),
        ("across", "two-level", 2.0, 4 / math.pi * 24.0),
        ("each-terminal", "two-level", 2.0, 2 / math.pi * 24.0),
        ("across", "three-level", 2.0, 2 / math.pi * 24.0),
    ],
)
def test_carrier_in_the_damper_by_phasors(
    connection: str, levels: str, legs: float, drive: float
) -> None:
    """The fundamental of the pulses, 1.3 % of it behind the filter, across 4.7 ohm and 2.2 uF."""
    u = 0.013 * drive / math.sqrt(2)
    z = 4.7 + 1 / (2j * math.pi * 194e3 * 2.2e-6)
    found = carrier_heat(24.0, legs, levels, 0.013, 194e3, 4.7, 2.2e-6, connection)
    assert found == pytest.approx(abs(u / z) ** 2 * 4.7, rel=1e-9)


def test_damper_of_each_terminal_is_two_in_series() -> None:
    """Two of r, c in series across the load are 2 r and c / 2: the same ratio."""
    l_total, c_total = 44e-6, 0.47e-6
    one = damper_size(20.0, 0.5e-6, "across-load", 2.0, l_total, c_total)
    two = damper_size(10.0, 1.0e-6, "each-terminal", 2.0, l_total, c_total)
    assert two == pytest.approx(one, rel=1e-12)
    low = damper_size(2.0, 0.5e-6, "across-load", 2.0, l_total, c_total)
    high = damper_size(200.0, 0.5e-6, "across-load", 2.0, l_total, c_total)
    assert low * high == pytest.approx(100.0)  # one lies below the best, the other above
    assert min(low, high) > 1.0


def test_treble_current_of_each_capacitor_with_its_ripple() -> None:
    """16 V rms of programme at 20 kHz; of the ripple's triangle c_across / c_total flows here."""
    sine = 10 * math.log10(2)
    programme = 20.0 * math.sqrt(2) / 10 ** (6.0 / 20)
    audio = 2 * math.pi * 20e3 * 0.4e-6 * programme
    ripple = 3.0 / math.sqrt(12)
    across = math.hypot(audio / 2.0, ripple * 0.4 / 0.5 / 1.5)
    found = heating(20.0, 6.0, sine, 20e3, 0.4e-6, 0.5e-6, 3.0, 1.5, 2.0)
    assert found == pytest.approx(across, rel=1e-9)
    ground = math.hypot(audio / 2 / 2.0, ripple / 1.5)
    found = heating_to_ground(20.0, 6.0, sine, 20e3, 0.4e-6, 0.0, 2.0, "two-level", 3.0, 1.5, 2.0)
    assert found == pytest.approx(ground, rel=1e-9)


@pytest.mark.parametrize(
    ("legs", "levels"), [(1.0, "two-level"), (2.0, "two-level"), (2.0, "three-level")]
)
def test_part_of_the_ripple_in_a_capacitor_to_ground_by_node_equations(
    legs: float, levels: str
) -> None:
    """Currents of 1 A into each terminal, opposite or alike; two nodes and three capacitors."""
    s, to_ground, across = 2j * math.pi * 300e3, 0.47e-6, 1.5e-6
    if legs == 1.0:
        part = to_ground / (to_ground + across)
    else:
        nodes = s * np.array([[to_ground + across, -across], [-across, to_ground + across]])
        into = np.array([1.0, -1.0 if levels == "two-level" else 1.0])
        part = abs(np.linalg.solve(nodes, into)[0] * s * to_ground)
    found = heating_to_ground(
        1e-9, 60.0, 3.0103, 20e3, to_ground, across, legs, levels, 12**0.5, 1.0, 1.0
    )
    assert found == pytest.approx(part, rel=1e-6)


@pytest.mark.parametrize(
    ("n_legs", "levels", "share"),
    [
        (1.0, "two-level", 0.5),
        (2.0, "two-level", 0.1),
        (2.0, "three-level", 1.0),
    ],
)
@pytest.mark.parametrize(("kind", "stopped"), [("lc", 40), ("bead", 20), ("filterless", 0)])
@pytest.mark.parametrize(("emission_class", "allowed"), [("a", 40), ("b", 30)])
def test_emission_by_integration_along_the_lead(
    n_legs: float,
    levels: str,
    share: float,
    kind: str,
    stopped: float,
    emission_class: str,
    allowed: float,
) -> None:
    """Open wire of 0.8 m over ground: current sin(k (l - x)) / cos(k l), its field 60/r each."""
    k = 2 * math.pi * 30e6 / 299792458.0
    volts = math.sqrt(2) * 24.0 * 400e3 / (math.pi * 30e6)  # spectrum of the square wave, rms
    volts *= 0.8 / (math.pi * 30e6 * 20e-9)  # beyond the bend of a trapezoid
    steps = 2000
    along = sum(math.sin(k * 0.8 * (i + 0.5) / steps) for i in range(steps)) * k * 0.8 / steps
    amperes = volts * share / 350.0 * along / math.cos(k * 0.8)
    decibel = 20 * math.log10(60.0 * amperes / 10.0 / 1e-6) - stopped - allowed
    found = emission(
        24.0,
        400e3,
        20e-9,
        0.8,
        n_legs,
        levels,
        kind,
        emission_class,
        30e6,
        299792458.0,
        350.0,
        1.476,
        60.0,
        10.0,
        1e-6,
    )
    assert found == pytest.approx(decibel, abs=1e-3)


def test_slow_carrier_edge_has_no_bend_below_its_corner() -> None:
    """An edge of 1 ns bends at 255 MHz: at 30 MHz the square wave counts in full."""

    def level(t_edge: float) -> float:
        return emission(
            24.0,
            400e3,
            t_edge,
            0.8,
            1.0,
            "two-level",
            "lc",
            "b",
            30e6,
            299792458.0,
            350.0,
            1.476,
            60.0,
            10.0,
            1e-6,
        )

    assert level(1e-9) == pytest.approx(level(0.5e-9))
    assert level(1e-9) - level(0.8 / math.pi / 30e6 * 2) == pytest.approx(20 * math.log10(2))


def node_gain(f: float, series: float, c: float, damper: complex | None, load: complex) -> float:
    """Gain of series inductor (with 60 mohm) and shunt capacitor, damper and load."""
    s = 2j * math.pi * f
    shunt = s * c + (1 / damper if damper else 0) + (1 / load if load else 0)
    return abs(1 / (1 + (s * series + 0.06) * shunt))


@pytest.mark.parametrize("connection", ["across-load", "each-terminal"])
def test_response_with_dampers_by_node_equations(connection: str) -> None:
    """Two dampers from the terminals to ground are one of twice r and half c for the load."""
    both = 2 if connection == "each-terminal" else 1
    f = 20e3
    damper = 6.0 * both + both / (2j * math.pi * f * 1e-6)
    for_load = [
        20
        * math.log10(node_gain(f, 44e-6, 1e-6, damper, z) / node_gain(1e-3, 44e-6, 1e-6, None, z))
        for z in (3.0, 12.0)
    ]
    filter_ = (44e-6, 1e-6, 2.0, 0.03, 0.0, 0.0)
    seen = (resistance(6.0, connection, 2.0), capacitance(1e-6, connection, 2.0))
    found = larger_deviation(f, 3.0, 12.0, *filter_, *seen)
    assert found == pytest.approx(max(abs(x) for x in for_load), rel=1e-3)
    coil = (5.0 + 2j * math.pi * f * 0.1e-3) * 2 / 3
    still = node_gain(1e-3, 44e-6, 1e-6, None, 5.0 * 2 / 3)
    deviation = 20 * math.log10(node_gain(f, 44e-6, 1e-6, damper, coil) / still)
    found = deviation_with_coils(f, 5.0, 0.1e-3, 2.0, 3.0, *filter_, *seen)
    assert found == pytest.approx(abs(deviation), rel=1e-3)


@pytest.mark.parametrize("connection", ["across-load", "each-terminal"])
def test_open_load_with_dampers_by_a_scan(connection: str) -> None:
    both = 2 if connection == "each-terminal" else 1
    highest = 0.0
    for k in range(4000):
        f = 10e3 * 10 ** (k / 4000)
        damper = 6.0 * both + both / (2j * math.pi * f * 2e-6)
        highest = max(highest, node_gain(f, 44e-6, 1e-6, damper, 0))
    seen = (resistance(6.0, connection, 2.0), capacitance(2e-6, connection, 2.0))
    found = open_load(44e-6, 1e-6, 0.06, *seen)
    assert found == pytest.approx(20 * math.log10(highest), abs=0.1)


@pytest.mark.parametrize(("i_peak", "share"), [(2.0, 0.663), (8.0, 1.0)])
def test_coupling_capacitor_never_sees_more_than_the_rail(i_peak: float, share: float) -> None:
    """12 V at rest; 2 A at 40 Hz on 2 mF swing by 3.98 V, 8 A by 15.9 V, of which 12 V fit."""
    found = blocking(24.0, i_peak, 40.0, 2e-3, 24.0)
    assert found == pytest.approx((12.0 + min(i_peak / (2 * math.pi * 40 * 2e-3), 12.0)) / 24.0)
    assert found == pytest.approx(share, abs=0.01)

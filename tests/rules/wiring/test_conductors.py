"""Traces, wires, contacts and spacing against published tables."""

import math

import numpy as np
import pytest
from scipy.optimize import brentq

from ampreview.rules.formulas.conductors import (
    contact_current,
    spacing_needed,
    trace_rise,
    two_way_resistance,
    wire_current,
)

MIL = 25.4e-6
SQUARE_MIL = MIL**2  # the unit of the IPC charts
OUNCE = 1.378 * MIL
RHO = 1.724e-8
WIRE_TABLE = {
    10: (5.261, 3.277, 55),
    12: (3.309, 5.210, 41),
    14: (2.081, 8.285, 32),
    16: (1.309, 13.17, 22),
    18: (0.8230, 20.95, 16),
    20: (0.5176, 33.31, 11),
    22: (0.3255, 52.96, 7),
}


def test_trace_of_a_board_design_course() -> None:
    """10 mil, 1 oz, outer layer, 10 K: 0.884 A (lesson on trace current capacity)."""
    current = brentq(lambda i: trace_rise(i, 10 * MIL, OUNCE, 0.048, SQUARE_MIL, 1.0) - 10, 0.1, 5)
    assert current == pytest.approx(0.884, rel=3e-3)


@pytest.mark.parametrize(
    ("current", "ounces", "k", "mils"),
    [(5, 1, 0.048, 71.49), (5, 1, 0.024, 186.0), (10, 2, 0.048, 92.99)],
)
def test_trace_width_by_the_explicit_form(
    current: float, ounces: float, k: float, mils: float
) -> None:
    """Area = (I/(k dT^0.44))^(1/0.725) solved by hand for 20 K gives these widths."""
    area = (current / (k * 20**0.44)) ** (1 / 0.725)
    assert area / (1.378 * ounces) == pytest.approx(mils, rel=1e-3)
    rise = trace_rise(current, mils * MIL, ounces * OUNCE, k, SQUARE_MIL, 1.0)
    assert rise == pytest.approx(20, rel=2e-3)


def test_rise_at_the_current_that_a_fuse_lets_through() -> None:
    """A trace with 20 K at the fuse's rating has 40, 50 and 108 K at 1.35, 1.5, 2.1 times."""
    one = 3.0
    width = brentq(lambda w: trace_rise(one, w, OUNCE, 0.048, SQUARE_MIL, 1.0) - 20, 1e-4, 1e-2)
    for factor, rise in ((1.35, 40), (1.5, 50), (2.1, 108)):
        found = trace_rise(one * factor, width, OUNCE, 0.048, SQUARE_MIL, 1.0)
        assert found == pytest.approx(rise, rel=0.015)


@pytest.mark.parametrize("gauge", list(WIRE_TABLE))
def test_astm_b258_wire_table(gauge: int) -> None:
    """Diameter by the rule of the standard; resistance and current as printed."""
    area, milliohm, ampere = WIRE_TABLE[gauge]
    diameter = 0.005 * 25.4e-3 * 92 ** ((36 - gauge) / 39)
    assert np.pi / 4 * diameter**2 * 1e6 == pytest.approx(area, rel=1e-3)
    both = two_way_resistance(RHO, 1.0, area * 1e-6)
    assert both / 2 * 1e3 == pytest.approx(milliohm, rel=1e-3)
    assert wire_current(area * 1e-6) == pytest.approx(ampere)


def test_wire_between_and_beyond_the_rows() -> None:
    """1.5 mm2 lies between its neighbours; AWG 4 carries 135 A in print (from memory)."""
    assert 22 < wire_current(1.5e-6) < 32
    assert wire_current(21.15e-6) == pytest.approx(135, rel=0.05)
    areas = np.array([0.2e-6, 1.309e-6, 5e-6])
    assert wire_current(areas) == pytest.approx([wire_current(a) for a in areas])


@pytest.mark.parametrize(
    ("gauge", "load", "decibel"), [(16, 4, 1.65), (16, 8, 0.86), (18, 4, 2.49), (18, 8, 1.33)]
)
def test_100_feet_of_loudspeaker_cable(gauge: int, load: float, decibel: float) -> None:
    """Amplifier wiring page gxslo.avasdm.it; within 6 %: solid copper at 20 degC here."""
    r = two_way_resistance(RHO, 30.48, WIRE_TABLE[gauge][0] * 1e-6)
    assert 20 * np.log10((load + r) / load) == pytest.approx(decibel, rel=0.06)


@pytest.mark.parametrize(("base", "derated"), [(15.8, 12.64), (13.0, 10.40), (21.9, 17.52)])
def test_erni_derating_sheets(base: float, derated: float) -> None:
    """IEC 60512-5-2: 80 % of the measured curve."""
    full = contact_current(base, 1.0, 358.15, 328.15, 30.0, 1e-6)
    assert 0.8 * full == pytest.approx(derated)


@pytest.mark.parametrize(("celsius", "ampere"), [(50, 6.2), (60, 5.15)])
def test_m12_connector_curve(celsius: float, ampere: float) -> None:
    """ERNI M12: limit 85 degC, 8.6 A at 20 degC, so a rise of 65 K there; within 4 %."""
    found = contact_current(8.6, 1.0, 358.15, celsius + 273.15, 65.0, 1e-6)
    assert found == pytest.approx(ampere, rel=0.04)


def test_contacts_in_parallel_count_one_less() -> None:
    """One of one, one of two, three of four; air beyond the limit leaves nothing."""
    found = [contact_current(3.0, n, 358.15, 300.0, 30.0, 1e-6) for n in (1.0, 2.0, 4.0)]
    assert found == pytest.approx([3.0, 3.0, 9.0])
    assert 0 < contact_current(3.0, 1.0, 358.15, 370.0, 30.0, 1e-6) < 1e-3


@pytest.mark.parametrize(
    ("volt", "surface", "altitude", "millimetre"),
    [
        (15, "inner", 0, 0.05),
        (30, "outer-bare", 0, 0.1),
        (30.1, "outer-bare", 0, 0.6),
        (100, "outer-bare", 4000, 1.5),
        (120, "outer-coated", 0, 0.4),
        (160, "outer-bare", 0, 1.25),
        (300, "lead-coated", 0, 0.8),
        (600, "outer-bare", 0, 3.0),
    ],
)
def test_spacing_rows(volt: float, surface: str, altitude: float, millimetre: float) -> None:
    """Rows of IPC-2221 table 6-1, from memory (only 0 to 15 V inner was seen quoted)."""
    found = spacing_needed(volt, surface, altitude, 1.0, 1e-3, 3050.0)
    assert found * 1e3 == pytest.approx(millimetre)


def test_spacing_never_falls_with_voltage() -> None:
    """Every column rises from row to row, also for arrays."""
    volts = np.linspace(1, 700, 1400)
    for surface in ("inner", "outer-bare", "outer-coated", "assembly-coated", "lead-bare"):
        for altitude in (0.0, 4000.0):
            gaps = spacing_needed(volts, surface, altitude, 1.0, 1e-3, 3050.0)
            assert np.all(np.diff(gaps) >= 0)


@pytest.mark.parametrize(("area", "resistance"), [(0.3255e-6, 0.0530), (1.309e-6, 0.01317)])
def test_twice_the_chassis_table_is_more_than_any_insulation_bears(
    area: float, resistance: float
) -> None:
    """Heat balance of a thin wire, 25 W/(m2 K), copper at 200 degC: 150 K over air of 50 degC."""
    current = 2 * wire_current(area)
    hot = resistance * (1 + 0.00393 * 180)
    diameter = 1.2 * 2 * (area / math.pi) ** 0.5 + 0.5e-3
    rise = current**2 * hot / (25.0 * math.pi * diameter)
    assert 150.0 < rise < 300.0

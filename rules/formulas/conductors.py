"""Copper conductors: resistance, current of board traces, wires and contacts, spacing.

Plain functions.  Symbols and units stand in brackets; SI throughout.
"""

import math
from itertools import pairwise

from .maths import choose, larger, smaller

CHASSIS_WIRE = (
    (0.3255e-6, 7.0),
    (0.5176e-6, 11.0),
    (0.8230e-6, 16.0),
    (1.309e-6, 22.0),
    (2.081e-6, 32.0),
    (3.309e-6, 41.0),
    (5.261e-6, 55.0),
)
"""Copper area [m2] and current [A] of one wire in free air, sizes 22 to 10 of ASTM B258
(Handbook of Electronic Tables and Formulas, as quoted by HyperPhysics)."""


LEAD_SIZES = (
    *("0.5 mm2", "0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2", "10 mm2"),
    *("16 mm2", "25 mm2"),
)
"""Cross-sections that leads are made in (IEC 60228, from memory)."""


def two_way_resistance(resistivity: float, length: float, area: float) -> float:
    """Resistance of a pair of conductors, round trip.

    resistivity [ohm m]: 1.724e-8 for copper at 20 degC (IEC 60028)
    length [m]: ONE way; area [m2]: copper of one conductor
    Valid for direct current and audio; stranded wire lies 2 to 5 % higher.
    Source: Ohm's law.  Example: 0.4 m of AWG 16 (13.17 mohm/m): 10.54 mohm.
    Units: resistivity [ohm m], length [m], area [m2]; returns [ohm].

    >>> round(two_way_resistance(1.724e-8, 0.4, 1.309e-6) * 1e3, 2)
    10.54
    """
    return 2 * resistivity * length / area


def trace_rise(
    current: float,
    width: float,
    copper: float,
    chart_current: float,
    chart_area: float,
    chart_rise: float,
) -> float:
    """Temperature rise of a board trace.

    I = k dT^0.44 A^0.725 solved for dT, the fit to the charts of IPC-2221.
    current [A] rms; width, copper [m]; chart_current k [A]: 0.048 outer, 0.024 inner
    layer, at chart_area 1 mil2 [m2] and chart_rise 1 K.
    Valid for about 10 .. 100 K, up to 35 A outer and 17.5 A inner, width up to 10 mm
    (from memory); a trace alone, in still air.
    Source: IPC-2221 as quoted on public pages.  Example: 10 mil of 1.378 mil copper
    on an outer layer carry 0.884 A at 10 K.
    Units: current [A], width [m], copper [m], chart_current [A], chart_area [m2], chart_rise
    [K]; returns [K].

    >>> round(trace_rise(0.884, 254e-6, 35e-6, 0.048, 25.4e-6**2, 1.0), 1)
    10.0
    """
    area_share = width * copper / chart_area
    return chart_rise * (current / (chart_current * area_share**0.725)) ** (1 / 0.44)


def wire_current(area: float) -> float:
    """Current that one copper wire carries in free air.

    area [m2]; gives [A].  Straight lines in log-log scale between the rows of
    ``CHASSIS_WIRE``, continued beyond the ends (AWG 4, 21.15 mm2: 133 A; 135 A printed,
    from memory).  A wire in a bundle or in a duct carries much less.
    Source: Handbook of Electronic Tables and Formulas, as quoted by HyperPhysics.
    Units: area [m2]; returns [A].

    >>> round(wire_current(1.309e-6), 6)
    22.0
    """
    rows = list(pairwise(CHASSIS_WIRE))
    result = _between(area, *rows[0])
    for row in rows[1:]:
        result = choose(area > row[0][0], _between(area, *row), result)
    return result


def _between(area: float, low: tuple[float, float], high: tuple[float, float]) -> float:
    """Power law through two rows of the wire table."""
    exponent = math.log(high[1] / low[1]) / math.log(high[0] / low[0])
    return low[1] * (area / low[0]) ** exponent


def contact_current(
    i_rated: float,
    contacts: float,
    t_limit: float,
    t_air: float,
    rise_rated: float,
    rise_least: float,
) -> float:
    """Current that the contacts of one pole may carry in warm air.

    i_rated [A]: ONE contact, for rise_rated [K]; contacts: number per pole; t_limit [K]:
    highest temperature of the connector; t_air [K]; rise_least [K]: rise that stands for
    none, so that a ratio to what is left in air beyond the limit is a number.
    The heat of a contact goes as I^2, so I = i_rated sqrt((t_limit - t_air)/rise_rated),
    and never more than printed.  Contacts in parallel share unequally: of several, one
    is not counted (common practice).
    Source: IEC 60512-5-2 describes the derating curve; the square root follows from I^2 R.
    Example: 3 A for 30 K, limit 85 degC, air 70 degC: 2.121 A.
    Units: i_rated [A], contacts [1], t_limit [K], t_air [K], rise_rated [K], rise_least [K];
    returns [A].

    >>> round(contact_current(3.0, 1.0, 358.15, 343.15, 30.0, 1.0), 3)
    2.121
    """
    room = smaller(larger(t_limit - t_air, rise_least) / rise_rated, 1.0)
    return i_rated * larger(contacts - 1, 1.0) * room**0.5


SPACING = {
    "inner": (0.05, 0.05, 0.1, 0.1, 0.2, 0.2, 0.2, 0.2, 0.25, 0.0025),
    "outer-bare": (0.1, 0.1, 0.6, 0.6, 0.6, 1.25, 1.25, 1.25, 2.5, 0.005),
    "outer-bare-high": (0.1, 0.1, 0.6, 1.5, 3.2, 3.2, 6.4, 12.5, 12.5, 0.025),
    "outer-coated": (0.05, 0.05, 0.13, 0.13, 0.4, 0.4, 0.4, 0.4, 0.8, 0.00305),
    "assembly-coated": (0.13, 0.13, 0.13, 0.13, 0.4, 0.4, 0.4, 0.4, 0.8, 0.00305),
    "lead-bare": (0.13, 0.25, 0.4, 0.5, 0.8, 0.8, 0.8, 0.8, 1.5, 0.00305),
    "lead-coated": (0.13, 0.13, 0.13, 0.13, 0.4, 0.4, 0.4, 0.8, 0.8, 0.00305),
}
"""Spacing [mm] up to each voltage of ``SPACING_VOLTAGES``, then [mm/V] above 500 V.
IPC-2221 table 6-1, from memory; copies on the web contradict one another."""

SPACING_VOLTAGES = (15.0, 30.0, 50.0, 100.0, 150.0, 170.0, 250.0, 300.0, 500.0)
"""Upper ends of the rows [V], direct voltage or peak."""


def spacing_needed(
    voltage: float, surface: str, altitude: float, volt: float, millimetre: float, high: float
) -> float:
    """Smallest gap between conductors by IPC-2221 table 6-1 (functional spacing).

    voltage [V]: direct or peak; surface: key of ``SPACING``; altitude [m]; volt 1 V and
    millimetre 1 mm: units of the table; high [m]: 3050 m, above which a bare outer
    layer needs more.  No safety barrier: those follow other standards.
    Source: IPC-2221 table 6-1, from memory.
    Units: voltage [V], surface [word], altitude [m], volt [V], millimetre [m], high [m];
    returns [m].

    >>> spacing_needed(35.0, "outer-bare", 0.0, 1.0, 1e-3, 3050.0) * 1e3
    0.6
    >>> spacing_needed(35.0, "outer-coated", 0.0, 1.0, 1e-3, 3050.0) * 1e3
    0.13
    """
    gap = _table_gap(voltage / volt, SPACING[surface])
    if surface == "outer-bare":
        gap = choose(altitude > high, _table_gap(voltage / volt, SPACING["outer-bare-high"]), gap)
    return gap * millimetre


def _table_gap(volts: float, column: tuple[float, ...]) -> float:
    """Gap in mm for a number of volts, row by row from the highest down."""
    gap = column[8] + column[9] * (volts - SPACING_VOLTAGES[8])
    for top, row in zip(reversed(SPACING_VOLTAGES), reversed(column[:9]), strict=True):
        gap = choose(volts <= top, row + 0.0 * volts, gap)
    return gap

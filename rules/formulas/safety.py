"""Limits of voltage, power and distance that keep people from harm.

Most limits are from memory or quoted: nothing here was verified against the standards.
"""

import re
from collections.abc import Sequence

from ...linter.check import Assumption, derivation, from_memory, quoted
from .maths import choose, exp, larger, smaller

ENERGY_CLASSES = from_memory(
    "IEC 62368-1, clause 5, table 4",
    "class 1 up to 60 V direct, class 2 up to 120 V direct; ratios of a mixture added",
)
AUDIO_CLASSES = from_memory(
    "IEC 62368-1, table E.1", "audio signals: class 1 up to 71 V rms, class 2 up to 120 V rms"
)
AUDIO_BEFORE = quoted(
    "IEC 60065 (withdrawn), 9.1.1.1, as quoted in angui.org thread 76011",
    "audio signals: 71 V rms, for professional apparatus 120 V rms",
)
TOUCH_AC = from_memory("IEC 62368-1, table 4", "30 V rms up to 1 kHz, class 1")
FIRE_POWER = quoted(
    "IEC 62368-1, 6.2.2, as quoted in a test report form", "class 2 up to 100 W, class 3 above"
)
SAFE_POWER = quoted(
    "IEC 62368-1, 6.2.2, as quoted by UL Solutions, You ask, we answer",
    "class 1: not above 15 W, measured after 3 s",
)
IGNITION = quoted(
    "IEC 62368-1, 6.2.3.2, as quoted in a test report form",
    "a resistive part may ignite by a single fault: above 100 W at once, or above 15 W after 30 s",
)
WAIT = quoted("IEC 62368-1, 5.5.2.2, as quoted in a test report form", "2 s after disconnection")
CREEPAGE = quoted(
    "IEC 60664-1, table F.4, as quoted in WAGO, Full line catalog vol. 1, 2015",
    "p. 594: printed wiring of degree 1 and 2, other surfaces of degree 3, material group III",
)
CLEARANCE = from_memory(
    "IEC 60664-1, tables F.2 and A.2",
    "0.8 mm at degree 3 and up to 0.8 kV; factors 1.14, 1.29, 1.48 at 3000, 4000, 5000 m",
)
IP_CODE = from_memory("IEC 60529", "structure of the code: IP, two digits or X, letters")

COIL_BASIS = {
    "critical": derivation("counted by the figure: a coil burns out at once, or a fire spreads"),
    "major": derivation("more than its rating, as steady heat without cooling"),
}
"""What the limits of ``coil_hazard`` say; the powers behind them are constants."""

UNSAID = Assumption("none", "adverse", derivation("bound: nothing discharges the rail"))
NONE_FITTED = Assumption(
    float("inf"), "absent", derivation("without a resistor nothing discharges the rail")
)

CREEPAGE_ROWS = (
    (50.0, 0.025, 0.040, 1.9),
    (63.0, 0.040, 0.063, 2.0),
    (80.0, 0.063, 0.100, 2.1),
    (100.0, 0.100, 0.160, 2.2),
    (125.0, 0.160, 0.250, 2.4),
    (160.0, 0.250, 0.400, 2.5),
    (200.0, 0.400, 0.630, 3.2),
    (250.0, 0.560, 1.000, 4.0),
    (320.0, 0.75, 1.6, 5.0),
    (400.0, 1.0, 2.0, 6.3),
)
"""Voltage up to [V]; creepage [mm] on printed wiring of degree 1, of degree 2, and on a
surface of degree 3 and material group III (finer steps below 50 V: ``DEGREE_3_LOW``)."""

DEGREE_3_LOW = (
    *((10.0, 1.0), (12.5, 1.05), (16.0, 1.1), (20.0, 1.2)),
    *((25.0, 1.25), (32.0, 1.3), (40.0, 1.8)),
)
"""Voltage up to [V] and creepage [mm] at degree 3, material group III, below 50 V."""

LEAST_CLEARANCE = {1: 0.0, 2: 0.04, 3: 0.8}
"""Clearance [mm] that no pollution degree goes below on a printed board, at sea level."""

ALTITUDE_ROWS = ((2000.0, 1.0), (3000.0, 1.14), (4000.0, 1.29), (5000.0, 1.48))
"""Altitude up to [m] and factor of the clearance."""

IP_PATTERN = re.compile(r"IP([0-6X])([0-9X])(?:K)?[A-D]?[HMSW]?")
NO_CODE = "none"
COATED = ("assembly-coated", "lead-coated")


def sum_of_ratios(v_dc: float, v_ac: float, dc_limit: float, ac_limit: float) -> float:
    """Direct and alternating voltage of one part, each over its limit, added [1].

    v_dc, dc_limit [V]; v_ac, ac_limit [V rms].  At most 1 within the class.
    Source: ENERGY_CLASSES.  Example: one terminal of a bridge on 75.1 V stands at
    37.55 V and carries 26.55 V rms: the limits 60 V and 71 V are just used up.
    Units: v_dc [V], v_ac [V], dc_limit [V], ac_limit [V]; returns [1].

    >>> round(sum_of_ratios(37.55, 26.55, 60.0, 71.0), 3)
    1.0
    """
    return v_dc / dc_limit + v_ac / ac_limit


def voltage_left(v: float, t: float, r: float, c: float) -> float:
    """Voltage of a capacitor some time after the source was cut off.

    v [V] at first; t [s]; r [ohm]: discharge resistor; c [F]; all of ONE rail.
    Valid for a resistor alone: what the amplifier draws helps, but not in a dead one.
    Source: v exp(-t / (r c)).  Example: 100 V, 2.2 kohm, 4.7 mF: 60 V after 5.282 s.
    Units: v [V], t [s], r [ohm], c [F]; returns [V].

    >>> round(voltage_left(100.0, 5.282, 2200.0, 4.7e-3), 2)
    60.0
    """
    return v * exp(-t / (r * c))


def stored_energy(c: float, v: float) -> float:
    """Energy of a capacitor of c [F] at v [V]: c v^2 / 2 [J].

    >>> stored_energy(10e-3, 80.0)
    32.0
    """
    return c * v**2 / 2


def available_power(v: float, r: float) -> float:
    """Largest power that a source of v [V] and r [ohm] gives to a fault [W].

    The fault that equals the source's own resistance gets v^2 / (4 r).
    Example: 25.2 V and 0.06 ohm: 2646 W.

    >>> round(available_power(25.2, 0.06), 6)
    2646.0
    """
    return v**2 / (4 * r)


def coil_hazard(
    p: float, rating: float, safe: float, spreads: float, times: float, guard: str
) -> float:
    """Heat of a voice coil under direct voltage after a fault, over what the coil bears [1].

    p, rating [W]: heat and noise rating of ONE coil; safe [W]: what starts no fire; spreads [W]:
    what a fire spreads from; times [1]: multiple of its rating at which a coil burns out at once;
    guard: ``none``, or the one safeguard that is stated.  Up to 1: borne.  Up to ``times``: the
    coil is lost.  More than ``times``, however little: beyond ``spreads``, or, where nothing is
    stated against it, beyond ``times`` the rating.  What one safeguard covers counts as borne.
    Source: SAFE_POWER, IGNITION.  Example: 24 W in a coil of 10 W, 110 W in one of 60 W.
    Units: p [W], rating [W], safe [W], spreads [W], times [1], guard [word]; returns [1].

    >>> coil_hazard(24.0, 10.0, 15.0, 100.0, 5.0, "none")
    1.6
    >>> coil_hazard(110.0, 60.0, 15.0, 100.0, 5.0, "none")
    5.5
    """
    covered = larger(rating, spreads)
    at_once = larger(rating, smaller(spreads, larger(safe, times * rating)))
    bears, grave = (larger(rating, safe), at_once) if guard == "none" else (covered, covered)
    return choose(p > grave, times * p / grave, smaller(p / bears, times))


def gap_needed(
    v: float,
    degree: float,
    surface: str,
    altitude: float,
    volt: float,
    metre: float,
    millimetre: float,
) -> float:
    """Larger one of clearance and creepage on a board, functional insulation [m].

    v [V]: working voltage, up to 400 V; degree: pollution degree 1 .. 3; surface: kind of
    surface (a conformal coating counts as degree 1); altitude [m], up to 5000 m; volt,
    metre, millimetre: units of the tables.  No mains: its barriers are not computed.
    Source: CREEPAGE, CLEARANCE.
    Units: v [V], degree [1], surface [word], altitude [m], volt [V], metre [m], millimetre
    [m]; returns [m].

    >>> round(gap_needed(100.0, 2, "outer-bare", 0.0, 1.0, 1.0, 1e-3) * 1e3, 3)
    0.16
    >>> round(gap_needed(24.0, 3, "outer-bare", 0.0, 1.0, 1.0, 1e-3) * 1e3, 3)
    1.25
    """
    inside = 1 if surface in COATED else int(degree)
    through_air = LEAST_CLEARANCE[inside] * _altitude_factor(altitude / metre)
    return larger(_creepage(v / volt, inside), through_air) * millimetre


def _creepage(volts: float, degree: int) -> float:
    rows = [(row[0], row[degree]) for row in CREEPAGE_ROWS]
    if degree == 3:
        rows = [*DEGREE_3_LOW, *rows]
    return _step(volts, rows)


def _altitude_factor(metres: float) -> float:
    return _step(metres, ALTITUDE_ROWS)


def _step(x: float, rows: Sequence[tuple[float, float]]) -> float:
    """The value of the first row that reaches up to ``x``; beyond the last one, that."""
    found = rows[-1][1] + 0 * x
    for top, value in reversed(rows):
        found = choose(x <= top, value + 0 * x, found)
    return found


def ip_digits(code: str) -> tuple[int, int]:
    """The two digits of a code as ``IP54``; X and ``none`` count as 0, a bad code as (-1, -1).

    Units: code [word]; returns [1].

    >>> ip_digits("IP54"), ip_digits("ipx4"), ip_digits("IP 7")
    ((5, 4), (0, 4), (-1, -1))
    """
    if code == NO_CODE:
        return (0, 0)
    found = IP_PATTERN.fullmatch(code.upper().replace(" ", ""))
    if found is None:
        return (-1, -1)
    solids, water = (0 if digit == "X" else int(digit) for digit in found.groups())
    return (solids, water)

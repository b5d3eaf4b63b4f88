"""Fuses: what they carry, when they open, what a pulse does to them.

Plain functions and the figures of the two standards.  Symbols and units stand in brackets.
"""

from ...linter.check import Source, from_memory

FUSEOLOGY = Source(
    "Littelfuse, Fuseology Selection Guide, 2014",
    "p. 12: UL 248-14 carries 100 %, opens at 135 % within 1 h and at 200 % within 2 min",
)
PULSES = Source(
    "Littelfuse, Fuse Products and Mounting Accessories catalogue, 2017",
    "p. 12, charts 1 and 2: pulse shapes and pulse cycles",
)
LOADING = Source(
    "L. Lundy, The fuse-selection checklist: a quick update, EDN, 26 Sep. 1996",
    "ampere rating: 75 % of the nominal rating for UL fuses; no page given",
)
IEC_FUSES = from_memory(
    "IEC 60127-2", "rating carried at length; 1.5 times: 1 h or more; 2.1 times: 2 to 30 min"
)

CONTINUOUS_SHARE = {"ul-248-14": 0.75, "iec-60127": 1.0}
"""Part of the rated current that may flow for hours at 25 degC, by standard."""

OPENING_RATIO = {"ul-248-14": 1.35, "iec-60127": 2.1}
"""Current over rated current at which the fuse is sure to open (1 h; 2 to 30 min)."""

PULSE_SHARE = {100: 0.48, 1000: 0.38, 10_000: 0.29, 100_000: 0.22}
"""Pulses in a life, and the part of the melting I2t that each may have (chart 2)."""

STOCK = (
    *("0.5 A", "0.63 A", "0.8 A", "1 A", "1.25 A", "1.6 A", "2 A", "2.5 A", "3.15 A", "4 A"),
    *("5 A", "6.3 A", "8 A", "10 A", "12.5 A", "15 A", "16 A", "20 A", "25 A", "30 A"),
    *("40 A", "50 A", "60 A", "80 A"),
)
"""Rated currents that are sold (R10 steps of IEC 60127, and sizes usual above them)."""


def continuous_current(i_rated: float, standard: str, k_ambient: float) -> float:
    """Current that a fuse carries for hours without ageing.

    i_rated [A]; standard: key of ``CONTINUOUS_SHARE``; k_ambient [1]: part of the rating
    that is left in the hottest air round the fuse, from its data sheet.
    Source: LOADING, IEC_FUSES.  Example: 10 A after UL at 0.9: 6.75 A.
    Units: i_rated [A], standard [word], k_ambient [1]; returns [A].

    >>> continuous_current(10.0, "ul-248-14", 0.9)
    6.75
    """
    return CONTINUOUS_SHARE[standard] * k_ambient * i_rated


def opening_current(i_rated: float, standard: str) -> float:
    """Smallest current at which the fuse is sure to open, and a conductor has to bear it.

    i_rated [A]; standard: key of ``OPENING_RATIO``.  It flows for up to an hour.
    Source: FUSEOLOGY, IEC_FUSES.
    Units: i_rated [A], standard [word]; returns [A].

    >>> opening_current(10.0, "iec-60127")
    21.0
    """
    return OPENING_RATIO[standard] * i_rated


def charging_i2t(c: float, v: float, r: float) -> float:
    """I2t of an empty capacitor that is charged through a resistance.

    c [F], v [V], r [ohm]: the whole loop.  i = (v/r) exp(-t/(r c)), so the integral of
    i^2 is (v/r)^2 r c / 2.  A decaying pulse of chart 1 of FUSEOLOGY.
    Example: 4.4 mF, 25.2 V, 0.10 ohm: 13.97 A2s.
    Units: c [F], v [V], r [ohm]; returns [A2s].

    >>> round(charging_i2t(4.4e-3, 25.2, 0.10), 2)
    13.97
    """
    return c * v**2 / (2 * r)


def steady_charging_i2t(c: float, v: float, i: float) -> float:
    """I2t of the same charge with a constant current i [A]: it flows for c v / i.

    Units: c [F], v [V], i [A]; returns [A2s].

    >>> round(steady_charging_i2t(10e-3, 50.0, 2.0), 3)  # 2 A for 0.25 s
    1.0
    """
    return i * c * v


def prospective_current(v: float, r: float) -> float:
    """Current of a dead short at the terminals of a source of v [V] and r [ohm].

    Units: v [V], r [ohm]; returns [A].

    >>> round(prospective_current(25.2, 0.06), 9)
    420.0
    """
    return v / r

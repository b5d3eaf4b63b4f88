"""Battery packs: resistance, energy, run time, Peukert's law."""

from typing import Any

from ...linter.check import Source, derivation, from_memory

PEUKERT = Source(
    "Oracle Tutoring, Peukert's law",
    "worked example: 120 Ah at the 20 h rate, 120 A, exponent 1.4, about 0.30 h",
)
CHARGE_ENDS = Source(
    "knowledge-base article 'Battery charge algorithms'",
    "4.2 V lithium-ion, 3.65 V lithium iron phosphate, 14.4 and 15.5 V lead-acid block",
)
CHARGE_WINDOW = Source(
    "TI BQ25887 data sheet SLUSD89B",
    "register 08h: standard charge 0 .. 45 degC, reduced 45 .. 60 degC, none below 0 degC",
)
AIR_TRAVEL = Source(
    "batteriestransport.org, Lithium Batteries e-book 2024",
    "p. 35: up to 100 Wh free, over 100 to 160 Wh with the operator's approval",
)
CELL_DATA = from_memory("cell data sheets")
SERIES_PARALLEL = derivation("Kirchhoff: cells in series add, strings in parallel share")


def pack_resistance(series: Any, parallel: Any, r_cell: Any, r_protection: Any, r_lead: Any) -> Any:
    """Resistance of a pack with its protection and leads [ohm].

    series, parallel: counts [1]; r_cell: ONE cell; r_protection; r_lead: both ways [ohm].

    >>> round(pack_resistance(6, 2, 0.028, 0.009, 0.027), 3)
    0.12
    """
    return series / parallel * r_cell + r_protection + r_lead


def pack_energy(series: Any, parallel: Any, capacity: Any, v_nominal: Any) -> Any:
    """Energy of a pack; capacity of ONE cell [C or Ah], v_nominal of ONE cell [V].

    >>> round(pack_energy(6, 2, 3.5, 3.6), 1)  # Ah and V give Wh
    151.2
    """
    return series * parallel * capacity * v_nominal


def peukert_time(capacity: Any, rating_time: Any, current: Any, exponent: Any) -> Any:
    """Time until a lead-acid battery is empty [same unit as rating_time].

    capacity: printed for rating_time; current: drawn, steady; exponent: 1.05 .. 1.3 [1].
    The short form C / I^k takes the capacity at 1 A, not the printed one: not used here.
    Valid for lead-acid only.  Source: see PEUKERT.

    >>> round(peukert_time(120.0, 20.0, 120.0, 1.4), 2)
    0.3
    """
    return rating_time * (capacity / (current * rating_time)) ** exponent

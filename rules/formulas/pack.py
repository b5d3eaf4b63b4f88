"""Battery packs: resistance, energy, run time, Peukert's law."""

from ...linter.check import Source, derivation, from_memory, quoted

PEUKERT = Source(
    "Oracle Tutoring, Peukert's law",
    "web page, worked example: 120 Ah at the 20 h rate, 120 A, exponent 1.4, about 0.30 h",
)
CHARGE_ENDS = Source(
    "utilitiesbunker.com, Battery Charge Algorithms",
    "4.2 V lithium-ion, 3.65 V lithium iron phosphate, 14.4 V a lead-acid block, 15.5 V a "
    "flooded one while it is equalised",
)
FILLED = Source(
    "Dolgin Engineering, Li-Ion cells charge levels vs. capacity, from Battery University",
    "each 70 mV less in charge voltage lowers the capacity by 10 %; no page given",
)
DISCHARGE_END = Source(
    "utilitiesbunker.com, Battery Charge Algorithms", "lithium-ion: disconnect below 2.5 V a cell"
)
CHARGE_WINDOW = Source(
    "TI BQ25887 data sheet SLUSD89B",
    "register 08h: charges lithium-ion from 0 to 60 degC, below 10 degC at 20 % of the current,"
    " above 45 degC to 4.0 V a cell by default, or not at all",
)
IRON_PHOSPHATE = Source(
    "AA Portable Power LFP-26650-3300 specification; Lishen LP54173207-202Ah specification, rev. 0",
    "charge from 0 to 45 degC; section 2.2: from 0 to 60 degC",
)
NICKEL = Source(
    "Panasonic HHR70AAAJ data sheet",
    "p. 1: charge at 0 to 45 degC, rapid at 0 to 40 degC; discharge at -10 to 65 degC",
)
CHARGE_WINDOWS = Source(
    "TI BQ25887 data sheet SLUSD89B; AA Portable Power LFP-26650-3300 specification; Lishen"
    " LP54173207-202Ah specification, rev. 0; Panasonic HHR70AAAJ data sheet",
    "register 08h: lithium-ion from 0 to 60 degC, in full up to 45; iron phosphate from 0 to 45,"
    " others to 60; nickel from 0 to 45",
)
AIR_TRAVEL = Source(
    "batteriestransport.org, Lithium Batteries e-book 2024; Air China, lithium batteries",
    "p. 35: up to 100 Wh free, beyond with the operator's approval; the airline: up to 160 Wh",
)
CELL_DATA = from_memory("cell data sheets")
HIGH_VOLTAGE = from_memory("data sheets of cobalt cells", "4.35 to 4.45 V, said on the cell")
CYCLIC_CHARGE = from_memory(
    "data sheets of lead-acid batteries", "cyclic use up to 15 V, equalising up to 16.2 V a block"
)
DEEP_DISCHARGE = from_memory("cell data sheets", "lowest end of discharge")
SELF_HEATING = from_memory(
    "abuse tests of lithium cells", "they heat themselves from 80 to 90 degC"
)
BATTERY_ROOMS = quoted(
    "EN 50272-3, as quoted by Exide, ventilation airflow",
    "0.05 m3 an ampere hour of gassing current and cell; 28 cm2 for 1 m3/h, air of 0.1 m/s",
)
GASSING = quoted(
    "gassing of lead-acid cells, as quoted on estimation.tools",
    "table at 2.4 V a cell: 20 mA/Ah vented, 8 mA/Ah valve-regulated",
)
SERIES_PARALLEL = derivation("Kirchhoff: cells in series add, strings in parallel share")


def pack_resistance(
    series: float, parallel: float, r_cell: float, r_protection: float, r_lead: float
) -> float:
    """Resistance of a pack with its protection and leads [ohm].

    series, parallel: counts [1]; r_cell: ONE cell; r_protection; r_lead: both ways [ohm].
    Units: series [1], parallel [1], r_cell [ohm], r_protection [ohm], r_lead [ohm]; returns
    [ohm].

    >>> round(pack_resistance(6, 2, 0.028, 0.009, 0.027), 3)
    0.12
    """
    return series / parallel * r_cell + r_protection + r_lead


def pack_energy(series: float, parallel: float, capacity: float, v_nominal: float) -> float:
    """Energy of a pack; capacity of ONE cell [C or Ah], v_nominal of ONE cell [V].

    Units: series [1], parallel [1], capacity [C], v_nominal [V]; returns [J].

    >>> round(pack_energy(6, 2, 3.5, 3.6), 1)  # Ah and V give Wh
    151.2
    """
    return series * parallel * capacity * v_nominal


def peukert_time(capacity: float, rating_time: float, current: float, exponent: float) -> float:
    """Time until a lead-acid battery is empty [same unit as rating_time].

    capacity: printed for rating_time; current: drawn, steady; exponent: 1.05 .. 1.3 [1].
    The short form C / I^k takes the capacity at 1 A, not the printed one: not used here.
    Valid for lead-acid only.  Source: see PEUKERT.
    Units: capacity [C], rating_time [s], current [A], exponent [1]; returns [s].

    >>> round(peukert_time(120.0, 20.0, 120.0, 1.4), 2)
    0.3
    """
    return rating_time * (capacity / (current * rating_time)) ** exponent


GASSING_SHARE = {"lead-acid-flooded": 20e-3, "lead-acid-agm": 8e-3}
"""Current that makes gas over the capacity, at 2.4 V a cell [1/h] (GASSING)."""


def vent_area_needed(
    series: float,
    capacity: float,
    chemistry: str,
    hour: float,
    air_per_charge: float,
    air_speed: float,
) -> float:
    """Free area of the inlet, and of the outlet, of a space in which lead-acid is charged.

    series: cells [1]; capacity of the pack [C]; chemistry: key of ``GASSING_SHARE``; hour
    3600 s; air_per_charge: 0.05 m3 an ampere hour of gassing current [m3/C]; air_speed:
    0.1 m/s by natural draught.  Gives [m2].  Source: BATTERY_ROOMS, GASSING.
    Example: 6 cells of 100 Ah, valve-regulated: 0.24 m3/h, 6.7 cm2.
    Units: series [1], capacity [C], chemistry [word], hour [s], air_per_charge [m3/C],
    air_speed [m/s]; returns [m2].

    >>> area = vent_area_needed(6, 360e3, "lead-acid-agm", 3600.0, 0.05 / 3600, 0.1)
    >>> round(area * 1e4, 2)
    6.67
    """
    i_gas = GASSING_SHARE[chemistry] * capacity / hour
    return series * i_gas * air_per_charge / air_speed

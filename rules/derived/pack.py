"""The battery pack as a source: voltages, resistance, energy, windows of temperature."""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Leaning,
    Source,
    Way,
    from_memory,
)
from ..formulas.pack import (
    CELL_DATA,
    CHARGE_ENDS,
    SERIES_PARALLEL,
    pack_energy,
    pack_resistance,
)
from .ways import as_stated

LITHIUM = ("li-ion", "lfp")
EXPONENTS = Source(
    "utilitiesbunker.com, Peukert's Law",
    "table: AGM 1.05 .. 1.15, flooded 1.20 .. 1.30; the upper ends are taken",
)
ITS_CHARGER = Assumption(
    None,
    "favourable",
    Source("bound: a charger that is not described keeps to the cells' limit", kind="derived"),
)
NOTHING = Assumption("0 ohm", "favourable", Source("bound: not stated", kind="derived"))


def product(count: float, value: float) -> float:
    """A number of equal things added."""
    return count * value


def charge_over(charge: float, by: float) -> float:
    """A charge over a time is a current, over a current a time."""
    return charge / by


def by_chemistry(
    chemistry: str | tuple[str, ...], value: str, basis: Source, leaning: Leaning = "neutral"
) -> Way:
    """A value that silence is read as for one kind of cell."""
    return Way(
        as_stated,
        {"value": Constant(value, "usual for this chemistry", basis)},
        formula="value",
        when={"battery.chemistry": chemistry},
        assumes=Assumption(None, leaning, basis),
    )


_SERIES = Input("battery.series")
_PARALLEL = Input("battery.parallel")
_CAPACITY = Input("battery.cell.capacity")

DERIVED = (
    Derived(
        "v_cell_full",
        "V",
        "product",
        "one cell at the end of charge",
        (
            by_chemistry("li-ion", "4.20 V", CHARGE_ENDS),
            by_chemistry("lfp", "3.65 V", CHARGE_ENDS),
            by_chemistry("lead-acid-agm", "2.40 V", CHARGE_ENDS),
            by_chemistry("lead-acid-flooded", "2.58 V", CHARGE_ENDS),
            by_chemistry("nimh", "1.5 V", CELL_DATA),
        ),
        stated_at="battery.cell.v_charge",
    ),
    Derived(
        "v_cell_nominal",
        "V",
        "product",
        "one cell: voltage that makes watt-hours of ampere-hours",
        (
            by_chemistry("li-ion", "3.6 V", CELL_DATA),
            by_chemistry("lfp", "3.2 V", CELL_DATA),
            by_chemistry(("lead-acid-agm", "lead-acid-flooded"), "2.0 V", CELL_DATA),
            by_chemistry("nimh", "1.2 V", CELL_DATA),
        ),
        stated_at="battery.cell.v_nominal",
    ),
    Derived(
        "peukert_exponent",
        "1",
        "product",
        "exponent of lead-acid capacity against rate",
        (
            by_chemistry("lead-acid-agm", "1.15", EXPONENTS),
            by_chemistry("lead-acid-flooded", "1.3", EXPONENTS),
        ),
        stated_at="battery.peukert",
    ),
    Derived(
        "i_cell_charge_max",
        "A",
        "product",
        "largest charge current of one cell",
        (
            Way(
                charge_over,
                {"charge": _CAPACITY, "by": Constant("2 h", "usual shortest charge", CELL_DATA)},
                formula="charge / by",
                assumes=Assumption(None, "neutral", CELL_DATA),
            ),
        ),
        stated_at="battery.cell.i_charge",
    ),
    Derived(
        "v_pack_full",
        "V",
        "product",
        "pack at the end of charge, at rest",
        (
            Way(
                product,
                {"count": _SERIES, "value": Input("v_cell_full")},
                formula="count * value",
                when={"battery.charger": "none"},
            ),
            Way(
                product,
                {"count": _SERIES, "value": Input("v_cell_full")},
                formula="count * value",
                assumes=ITS_CHARGER,
            ),
        ),
        stated_at="battery.charger.v",
        sources=(SERIES_PARALLEL,),
    ),
    Derived(
        "v_pack_low",
        "V",
        "product",
        "pack at rest, at the lowest charge for which full power is promised",
        (
            Way(
                product,
                {"count": _SERIES, "value": Input("battery.cell.v_oc_low")},
                formula="count * value",
            ),
        ),
        sources=(SERIES_PARALLEL,),
    ),
    Derived(
        "r_pack",
        "ohm",
        "product",
        "cells, protection and supply lead together",
        (
            Way(
                pack_resistance,
                {
                    "series": _SERIES,
                    "parallel": _PARALLEL,
                    "r_cell": Input("battery.cell.r_internal"),
                    "r_protection": Input("battery.protection.r", default=NOTHING),
                    "r_lead": Input("r_supply_lead", default=NOTHING),
                },
                formula="series / parallel * r_cell + r_protection + r_lead",
            ),
        ),
        sources=(SERIES_PARALLEL,),
    ),
    Derived(
        "capacity_pack",
        "Ah",
        "product",
        "capacity of the pack when new",
        (
            Way(
                product,
                {"count": _PARALLEL, "value": _CAPACITY},
                formula="count * value",
            ),
        ),
        sources=(SERIES_PARALLEL,),
    ),
    Derived(
        "e_pack",
        "Wh",
        "product",
        "energy of the pack when new",
        (
            Way(
                pack_energy,
                {
                    "series": _SERIES,
                    "parallel": _PARALLEL,
                    "capacity": _CAPACITY,
                    "v_nominal": Input("v_cell_nominal"),
                },
                formula="series * parallel * capacity * v_nominal",
            ),
        ),
        sources=(SERIES_PARALLEL,),
    ),
    Derived(
        "shortest_discharge",
        "h",
        "product",
        "shortest time in which the cells may be emptied",
        (
            Way(
                charge_over,
                {"charge": _CAPACITY, "by": Input("battery.cell.i_cont")},
                formula="charge / by",
            ),
            *(
                Way(
                    as_stated,
                    {"value": Constant(hours, "usual for this chemistry", COMMON_PRACTICE)},
                    formula="value",
                    when={"battery.chemistry": chemistry},
                    assumes=Assumption(
                        None, "neutral", from_memory("cell data sheets"), placeholder=True
                    ),
                )
                for chemistry, hours in (
                    (LITHIUM, "0.5 h"),
                    ("nimh", "1 h"),
                    ("lead-acid-agm", "1 h"),
                    ("lead-acid-flooded", "2 h"),
                )
            ),
        ),
    ),
)

"""What one cell stands: what its maker states, never more than its chemistry allows.

A tolerance of a limit does not widen it, and a cell that goes beyond the usual limits of
its chemistry is called so (``battery.cell.made_for``).
"""

from collections.abc import Callable

from ...linter.check import Arguments, Constant, Derived, Input, Source, Way, from_memory
from ..formulas.maths import larger, smaller
from ..formulas.pack import (
    CELL_DATA,
    CHARGE_ENDS,
    CHARGE_WINDOW,
    CYCLIC_CHARGE,
    DEEP_DISCHARGE,
    DISCHARGE_END,
    HIGH_VOLTAGE,
    IRON_PHOSPHATE,
    NICKEL,
    SELF_HEATING,
)
from .pack import LITHIUM, by_chemistry
from .ways import as_stated

LEAD_ACID = ("lead-acid-agm", "lead-acid-flooded")
STARTER = from_memory("starter batteries crank at -29 degC and below in their own tests")
KIND = "battery.chemistry"
MADE_FOR = "battery.cell.made_for"
NO_SENSOR = {"battery.charger.sensor": "none"}
Bound = tuple[str | tuple[str, ...], str, Source]


def beyond(stated_low: float, coldest: float, stated_high: float, hottest: float) -> float:
    """How far a stated window reaches beyond that of the chemistry, at its worse end."""
    return larger(coldest - stated_low, stated_high - hottest)


def worse(charge: float, discharge: float) -> float:
    """The larger of two."""
    return larger(charge, discharge)


def _named(chemistry: str | tuple[str, ...]) -> str:
    """The kinds of cell in words."""
    return chemistry if isinstance(chemistry, str) else ", ".join(chemistry)


def _of_chemistry(
    name: str, unit: str, meaning: str, *bounds: Bound, special: tuple[Way, ...] = ()
) -> Derived:
    """A bound that no maker's statement widens."""
    ways = tuple(
        Way(
            as_stated,
            {"value": Constant(value, f"{meaning}: {_named(chemistry)}", basis)},
            formula="value",
            when={KIND: chemistry},
        )
        for chemistry, value, basis in bounds
    )
    return Derived(name, unit, "product", meaning, (*special, *ways))


def _special(chemistry: str | tuple[str, ...], word: str, value: str, basis: Source) -> Way:
    """The bound of cells that are made for more."""
    return Way(
        as_stated,
        {"value": Constant(value, f"{_named(chemistry)} made for {word}", basis)},
        formula="value",
        when={KIND: chemistry, MADE_FOR: word},
    )


def _end(
    name: str,
    path: str,
    bound: str,
    meaning: str,
    tighter: Callable[[float, float], float],
    *usual: Bound,
) -> Derived:
    """One end of a window: the tighter one of the stated and of the chemistry's own."""
    inputs: Arguments = {"a": Input(path), "b": Input(bound)}
    ways = (by_chemistry(chemistry, value, basis) for chemistry, value, basis in usual)
    stated = Way(tighter, inputs, formula=f"{tighter.__name__} of a and b")
    return Derived(name, "degC", "product", meaning, (stated, *ways))


def _window(name: str, end: str, meaning: str) -> Derived:
    """One end of what the charger lets through; without a sensor all of the air outside."""
    return Derived(
        name,
        "degC",
        "product",
        meaning,
        (
            Way(
                as_stated,
                {"value": Input(f"environment.ambient:{end}")},
                formula="value",
                when=NO_SENSOR,
            ),
            Way(
                as_stated,
                {"value": Input(f"battery.charger.t_window:{end}")},
                formula="value",
            ),
        ),
    )


def _beyond(which: str) -> Way:
    path = f"battery.cell.t_{which}"
    return Way(
        beyond,
        {
            "stated_low": Input(f"{path}:low"),
            "coldest": Input(f"t_{which}_coldest"),
            "stated_high": Input(f"{path}:high"),
            "hottest": Input(f"t_{which}_hottest"),
        },
        formula="larger of coldest - stated_low and stated_high - hottest",
    )


DERIVED = (
    _of_chemistry(
        "v_cell_most",
        "V",
        "highest charge voltage of one cell",
        ("li-ion", "4.20 V", CHARGE_ENDS),
        ("lfp", "3.65 V", CHARGE_ENDS),
        ("lead-acid-agm", "2.50 V", CYCLIC_CHARGE),
        ("lead-acid-flooded", "2.70 V", CYCLIC_CHARGE),
        ("nimh", "1.8 V", CELL_DATA),
        special=(_special("li-ion", "high-voltage", "4.45 V", HIGH_VOLTAGE),),
    ),
    _of_chemistry(
        "v_cell_least",
        "V",
        "lowest voltage to which one cell is discharged",
        ("li-ion", "2.5 V", DISCHARGE_END),
        ("lfp", "2.0 V", DEEP_DISCHARGE),
        (LEAD_ACID, "1.75 V", DEEP_DISCHARGE),
        ("nimh", "1.0 V", DEEP_DISCHARGE),
    ),
    _of_chemistry(
        "t_charge_coldest",
        "degC",
        "coldest cell that may be charged",
        ("li-ion", "0 degC", CHARGE_WINDOW),
        ("lfp", "0 degC", IRON_PHOSPHATE),
        ("nimh", "0 degC", NICKEL),
        (LEAD_ACID, "-40 degC", CELL_DATA),
        special=(_special(LITHIUM, "cold-charge", "-20 degC", CELL_DATA),),
    ),
    _of_chemistry(
        "t_charge_hottest",
        "degC",
        "hottest cell that may be charged",
        ("li-ion", "60 degC", CHARGE_WINDOW),
        ("lfp", "60 degC", IRON_PHOSPHATE),
        ("nimh", "60 degC", CELL_DATA),
        (LEAD_ACID, "60 degC", CELL_DATA),
    ),
    _of_chemistry(
        "t_discharge_coldest",
        "degC",
        "coldest cell that may be discharged",
        ((*LITHIUM, *LEAD_ACID, "nimh"), "-40 degC", CELL_DATA),
    ),
    _of_chemistry(
        "t_discharge_hottest",
        "degC",
        "hottest cell that may be discharged",
        ((*LITHIUM, *LEAD_ACID, "nimh"), "75 degC", SELF_HEATING),
    ),
    Derived(
        "t_beyond_chemistry",
        "K",
        "product",
        "how far stated windows of the cell reach beyond those of its chemistry",
        (
            Way(
                worse,
                {"charge": Input("t_charge_beyond"), "discharge": Input("t_discharge_beyond")},
                formula="larger of charge and discharge",
            ),
            Way(
                as_stated,
                {"value": Input("t_charge_beyond")},
                formula="value",
            ),
            Way(
                as_stated,
                {"value": Input("t_discharge_beyond")},
                formula="value",
            ),
        ),
    ),
    Derived("t_charge_beyond", "K", "product", "the window of charge", (_beyond("charge"),)),
    Derived("t_discharge_beyond", "K", "product", "that of discharge", (_beyond("discharge"),)),
    _end(
        "t_charge_low",
        "battery.cell.t_charge:low",
        "t_charge_coldest",
        "coldest cell that may be charged",
        larger,
        ("li-ion", "0 degC", CHARGE_WINDOW),
        ("lfp", "0 degC", IRON_PHOSPHATE),
        ("nimh", "0 degC", NICKEL),
        (LEAD_ACID, "-20 degC", CELL_DATA),
    ),
    _end(
        "t_charge_high",
        "battery.cell.t_charge:high",
        "t_charge_hottest",
        "hottest cell that may be charged",
        smaller,
        ("li-ion", "45 degC", CHARGE_WINDOW),
        ("lfp", "45 degC", IRON_PHOSPHATE),
        ("nimh", "45 degC", NICKEL),
        (LEAD_ACID, "50 degC", CELL_DATA),
    ),
    _end(
        "t_discharge_low",
        "battery.cell.t_discharge:low",
        "t_discharge_coldest",
        "coldest cell in use",
        larger,
        ((*LITHIUM, "lead-acid-agm"), "-20 degC", CELL_DATA),
        ("nimh", "-10 degC", NICKEL),
        ("lead-acid-flooded", "-40 degC", STARTER),
    ),
    _end(
        "t_discharge_high",
        "battery.cell.t_discharge:high",
        "t_discharge_hottest",
        "hottest cell in use",
        smaller,
        ((*LITHIUM, "nimh", "lead-acid-flooded"), "60 degC", CELL_DATA),
        ("lead-acid-agm", "50 degC", CELL_DATA),
    ),
    _window("t_window_low", "low", "coldest charge let through"),
    _window("t_window_high", "high", "hottest charge let through"),
    Derived(
        "t_full_charge_high",
        "degC",
        "product",
        "hottest charge let through with full voltage and current",
        (
            Way(
                as_stated,
                {"value": Input("battery.charger.t_reduced")},
                formula="value",
            ),
            Way(
                as_stated,
                {"value": Input("t_window_high")},
                formula="value",
            ),
        ),
    ),
)

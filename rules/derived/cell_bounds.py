"""What no cell can be: bounds on the statements about the cells of the pack.

Cells that are taken beyond what they are endanger people, so nobody can permit a statement
beyond one of these bounds.  They follow from the kind of cell alone, whatever the cell is said
to be made for.
"""

from ...linter.check import Arguments, Constant, Derived, Input, Source, Way, derivation
from ..formulas.pack import CELL_DATA, CHARGE_ENDS, CYCLIC_CHARGE, HIGH_VOLTAGE
from .bounds import pair
from .pack import LITHIUM, charge_over
from .ways import as_stated

CELL = "battery.cell"
LEAD_ACID = ("lead-acid-agm", "lead-acid-flooded")
CAPACITY = Input(f"{CELL}.capacity")
HIGHEST = Input("v_cell_highest")
WITHIN = derivation("beyond half of its voltage lost inside, more current gives less power")
SHORTED = Constant("3.6 s", "a thousand capacities an hour, into a short circuit", CELL_DATA)


def current_within(v: float, share: float, r_internal: float) -> float:
    """The current at which a cell loses a share of its voltage inside."""
    return share * v / r_internal


def resistance_of_best(v: float, capacity: float, time: float) -> float:
    """Resistance of a cell that would drive its capacity through a short circuit in a time."""
    return v * time / capacity


def _fastest_charge(chemistry: tuple[str, ...], time: str) -> Way:
    """A whole capacity in the shortest time in which such cells are charged."""
    by = Constant(time, "charge of the fastest cells of the kind", CELL_DATA)
    inputs: Arguments = {"charge": CAPACITY, "by": by}
    return Way(charge_over, inputs, "charge / by", when={"battery.chemistry": chemistry})


def _highest(chemistry: str, value: str, basis: Source) -> Way:
    """The highest voltage of one kind of cell."""
    inputs: Arguments = {
        "value": Constant(value, f"highest voltage of any cell: {chemistry}", basis)
    }
    return Way(as_stated, inputs, "value", when={"battery.chemistry": chemistry})


DERIVED: tuple[Derived, ...] = (
    Derived(
        "v_cell_highest",
        "V",
        "product",
        "the highest voltage of any cell of its chemistry",
        (
            _highest("li-ion", "4.45 V", HIGH_VOLTAGE),
            _highest("lfp", "3.65 V", CHARGE_ENDS),
            _highest("lead-acid-agm", "2.50 V", CYCLIC_CHARGE),
            _highest("lead-acid-flooded", "2.70 V", CYCLIC_CHARGE),
            _highest("nimh", "1.8 V", CELL_DATA),
        ),
        bounds_from_above=(f"{CELL}.v_nominal", f"{CELL}.v_oc_low"),
        bounds_stake="safety",
    ),
    Derived(
        "cell_current_possible",
        "A",
        "product",
        "the current at which a cell loses half of its voltage inside",
        (
            Way(
                current_within,
                {
                    "v": HIGHEST,
                    "share": Constant("0.5", "most power out of a source", WITHIN),
                    "r_internal": Input(f"{CELL}.r_internal"),
                },
                "share v / r_internal",
            ),
        ),
        bounds_from_above=(f"{CELL}.i_cont", f"{CELL}.i_pulse"),
        bounds_stake="safety",
        sources=(WITHIN,),
    ),
    Derived(
        "cell_resistance_least",
        "ohm",
        "product",
        "the least resistance of a cell of that capacity",
        (
            Way(
                resistance_of_best,
                {"v": HIGHEST, "capacity": CAPACITY, "time": SHORTED},
                "v time / capacity",
            ),
        ),
        bounds_from_below=(f"{CELL}.r_internal:low",),
        bounds_stake="safety",
        sources=(CELL_DATA,),
    ),
    Derived(
        "cell_charge_possible",
        "A",
        "product",
        "the charge current of the fastest cells of its kind",
        (_fastest_charge((*LITHIUM, "nimh"), "15 min"), _fastest_charge(LEAD_ACID, "20 min")),
        bounds_from_above=(f"{CELL}.i_charge",),
        bounds_stake="safety",
        sources=(CELL_DATA,),
    ),
    Derived(
        "cell_charge_practice",
        "A",
        "product",
        "the continuous current of the cell: what limits charging comes first",
        (Way(as_stated, {"value": Input(f"{CELL}.i_cont")}, "value"),),
        bounds_from_above=(f"{CELL}.i_charge",),
        bounds_by="practice",
        bounds_stake="safety",
        sources=(CELL_DATA,),
    ),
    pair(
        "cell_full",
        "V",
        "the end of charge of the cell",
        Input(f"{CELL}.v_charge"),
        "a cell at rest, or on the mean of its discharge, is not above its end of charge",
        above=(f"{CELL}.v_nominal", f"{CELL}.v_oc_low"),
        each="product",
        stake="safety",
    ),
)

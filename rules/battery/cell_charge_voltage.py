"""Stated charge voltage of a cell against its chemistry.

A data sheet can be copied from the wrong cell: 4.20 V for lithium iron phosphate, which is
full at 3.65 V, or 4.35 V for a common lithium-ion cell. Everything that is then computed
from it is wrong in the same direction, the charger above all. So a stated charge voltage is
compared with what the chemistry allows, whatever the charger does; its tolerance is left
out, as that of a limit allows nothing.

More than 1.2 % above, the 50 mV for which cells are made, is critical. Cells of cobalt
oxide for 4.35 to 4.45 V exist: say so (``made_for: high-voltage``).
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, from_memory
from ..formulas.pack import CELL_DATA, CHARGE_ENDS
from ..hazards import CHARGING, GAS


def figure(v_stated: float, v_most: float) -> float:
    return v_stated / v_most


CHECK = Check(
    title="Stated cell charge voltage vs. limit of its chemistry",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="v_stated / v_most",
    sentence="Stated cell charge voltage {v_stated}; limit of its chemistry {v_most} ({figure:%}).",
    inputs={
        "v_stated": Input(
            "battery.cell.v_charge:nominal", meaning="stated end of charge, one cell"
        ),
        "v_most": Input("v_cell_most"),
    },
    applies={"supply.source": "battery"},
    limits=AtMost(
        critical="1.012",
        basis={"critical": from_memory("cell data sheets: 4.20 V with 50 mV of tolerance")},
    ),
    levers=(Lever("battery.cell.v_charge", "0.05 V"),),
    sources=(CHARGE_ENDS, CELL_DATA),
    cautions=(
        CHARGING,
        GAS,
    ),
    cases=(
        Case(
            {"v_stated": "4.20 V", "v_most": "3.65 V"},
            gives="1.150685",
            origin="published: utilitiesbunker.com, 4.20 and 3.65 V a cell, wrong cell",
        ),
        Case(
            {"v_stated": "2.60 V", "v_most": "2.50 V"},
            gives="1.04",
            origin="from memory: 15.6 V on a closed lead-acid block, 15 V in cyclic use",
        ),
    ),
    topic=("battery.cell.v_charge",),
    fails="""
supply: {source: battery}
battery: {chemistry: lfp, series: 4, cell: {v_charge: 4.20 V}}
channels:
  main: {rated_power: 40 W}
""",
    passes="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 4, cell: {v_charge: 4.35 V, made_for: high-voltage}}
channels:
  main: {rated_power: 40 W}
""",
)

"""Charge voltage per cell against what fills the cells.

A charger set too low leaves the cells part empty, whatever their capacity: every promise that
rests on it is then missed. Of lithium-ion each 70 mV below 4.20 V costs a tenth of the capacity;
the flat curve of lithium iron phosphate ends near 3.4 V; a lead-acid cell needs 2.2 V, less than
any float charge, to hold its charge at all, and sulphates below it; nickel cells end near 1.4 V.

The charger's voltage, at the low end of its tolerance, for one cell, is set against that voltage.
Below it the pack is not full (minor: some do so for a longer life, and then the stated capacity
has to say so); 2.5 % below it a quarter and more of the charge is missing (major).

What to do first: count the cells in series, then set the charger for their chemistry.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, derivation
from ..formulas.pack import FILLED
from ..hazards import CHARGING

BELOW = derivation("below the voltage that fills the cell")


def figure(charger: float, series: float, v_cell_filled: float) -> float:
    return charger / (series * v_cell_filled)


CHECK = Check(
    title="Charge voltage per cell vs. voltage that fills it",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="charger / (series * v_cell_filled)",
    sentence="Charge voltage {v_cell_filled:*figure} per cell ({charger}, {series:cell|cells});"
    " {v_cell_filled} fills it ({figure:%}).",
    inputs={
        "charger": Input("battery.charger.v"),
        "series": Input("battery.series"),
        "v_cell_filled": Input("v_cell_filled"),
    },
    applies={"supply.source": "battery"},
    limits=AtLeast(major="0.975", minor="1", basis={"major": COMMON_PRACTICE, "minor": BELOW}),
    sources=(FILLED, COMMON_PRACTICE),
    cautions=(CHARGING,),
    cases=(
        Case(
            {"charger": "28 V", "series": 7, "v_cell_filled": "4.10 V"},
            gives="0.97561",
            origin="computed: by hand, 4.00 V a cell over 4.10 V",
        ),
        Case(
            {"charger": "12 V", "series": 6, "v_cell_filled": "2.20 V"},
            gives="0.909091",
            origin="derived: 2.00 V a cell of lead-acid, the voltage at which it rests",
        ),
    ),
    topic=("battery.charger.v",),
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 8, charger: {v: 25 V}}
channels:
  main: {rated_power: 40 W}
""",
    passes="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 6, charger: {v: 25.2 V ± 0.5 %}}
channels:
  main: {rated_power: 40 W}
""",
)

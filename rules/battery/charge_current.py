"""Charge current per cell against its rating.

Cells take charge more slowly than they give it, often half their capacity per hour for
lithium-ion; faster charging plates lithium and heats. The charger's current, at the top of
its tolerance, is shared by the strings in parallel. Removing a string or building the small
version of a pack with the charger of the large one is how it goes wrong.

Above the rating of the cell is major, above 1.5 times it critical: no cell heals from that
plating (common practice). Where the cell's charge current is not stated, half
the capacity per hour is taken (from memory, cells that allow more say so). The figure
does not know of a reduced current at the ends of the temperature window.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..formulas.pack import CELL_DATA, SERIES_PARALLEL
from ..hazards import CHARGING


def figure(charger: float, parallel: float, i_cell: float) -> float:
    return charger / (parallel * i_cell)


CHECK = Check(
    title="Charge current per cell vs. cell limit",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="charger / (parallel * i_cell)",
    sentence="Charge current {i_cell:*figure} per cell ({charger}, {parallel:string|strings});"
    " limit {i_cell} ({figure:%}).",
    inputs={
        "charger": Input("battery.charger.i"),
        "parallel": Input("battery.parallel"),
        "i_cell": Input("i_cell_charge_max"),
    },
    applies={"supply.source": "battery"},
    limits=AtMost(
        critical="1.5",
        major="1",
        basis={
            "critical": COMMON_PRACTICE,
            "major": derivation("above the maker's charge current of a cell"),
        },
    ),
    levers=(Lever("battery.charger.i", "0.1 A"),),
    sources=(SERIES_PARALLEL, CELL_DATA),
    cautions=(CHARGING,),
    cases=(
        Case(
            {"charger": "2.1 A", "parallel": 2, "i_cell": "1.7 A"},
            gives="0.617647",
            origin="common practice: 2 A charger on two strings of 3.5 Ah cells rated 1.7 A",
        ),
        Case(
            {"charger": "5 A", "parallel": 1, "i_cell": "1.75 A"},
            gives="2.857143",
            origin="from memory: 5 A module on one string of 3.5 Ah cells, half their capacity",
        ),
    ),
    topic=("battery.charger.i",),
    asked_from="production",
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 3, parallel: 1, cell: {capacity: 3.5 Ah}, charger: {i: 5 A}}
channels:
  main: {rated_power: 40 W}
""",
    passes="""
supply: {source: battery}
battery:
  {chemistry: li-ion, series: 6, parallel: 2, cell: {i_charge: 1.7 A}, charger: {i: 2 A ± 5 %}}
channels:
  main: {rated_power: 40 W}
""",
)

"""Lowest voltage of a cell when something ends the discharge.

Below about 2 V the copper of a lithium-ion cell dissolves; charged again it deposits as a
short inside, and the cell can burn. A lead-acid cell sulphates, and in a string of nickel
cells the weakest is reversed and vents. So each pack needs something that ends the
discharge in time: the cut-off of its protection; without a protection the lockout of the
amplifier, or that of the converter ahead of it, which must draw next to nothing afterwards.

The figure is that voltage, at its lowest, for one cell, over the lowest end of discharge of
the chemistry: 2.5 V lithium-ion, 2.0 V lithium iron phosphate, 1.75 V lead-acid, 1.0 V
nickel. Data sheets' protection chips at 2.4 V and lead-acid at high rates down to 1.6 V are
usual, so that a little below is a remark; below 92 % is major, below 80 % the cells are
destroyed: critical. Nothing at all that ends the discharge counts as 0 V.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever
from ..formulas.pack import DEEP_DISCHARGE
from ..hazards import CHARGING, also


def figure(v_end: float, series: float, v_least: float) -> float:
    return v_end / (series * v_least)


CHECK = Check(
    title="End of discharge per cell vs. minimum of its chemistry",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="v_end / (series * v_least)",
    sentence="Discharge ends at {v_least:*figure} per cell ({v_end}, {series:cell|cells} in"
    " series); minimum of its chemistry {v_least}.",
    inputs={
        "v_end": Input("v_discharge_end"),
        "series": Input("battery.series"),
        "v_least": Input("v_cell_least"),
    },
    applies={"supply.source": "battery"},
    limits=AtLeast(
        critical="0.8",
        major="0.92",
        minor="1",
        basis={"critical": DEEP_DISCHARGE, "major": COMMON_PRACTICE, "minor": DEEP_DISCHARGE},
    ),
    levers=(Lever("battery.protection.v_cutoff", "0.1 V"), Lever("supply.v_lockout", "0.1 V")),
    sources=(DEEP_DISCHARGE,),
    cautions=(also(CHARGING, "Do not revive cells that were discharged too deep."),),
    cases=(
        Case(
            {"v_end": "12 V", "series": 8, "v_least": "2.5 V"},
            gives="0.6",
            origin="from memory: lithium-ion down to 2.5 V; eight cells cut off at 1.5 V each",
        ),
        Case(
            {"v_end": "10.5 V", "series": 6, "v_least": "1.75 V"},
            gives="1",
            origin="from memory: data sheets of lead-acid blocks end at 10.5 V",
        ),
    ),
    topic=("battery.protection", "battery.protection.v_cutoff"),
    asked_from="prototype",
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 8, protection: {v_cutoff: 12 V}}
channels:
  main: {rated_power: 40 W}
""",
    passes="""
supply: {source: battery, converter: step-up, v_lockout: {min: 10.5 V, max: 11.1 V}}
battery: {chemistry: lead-acid-agm, series: 6, protection: none}
channels:
  main: {rated_power: 40 W}
""",
)

"""Charge voltage per cell against what the cells allow.

A lithium cell charged above its voltage gives off gas, loses its separator's margin and in
the end burns. Lead-acid and nickel cells give off hydrogen and boil dry. The charger's
voltage, at the top of its tolerance, is divided by the cells in series and set against the
cell's charge voltage as stated, but never more than its chemistry allows: 4.20 V for
lithium-ion, 3.65 V for lithium iron phosphate, 2.50 V for closed and 2.70 V for open
lead-acid cells, 1.8 V for nickel. The tolerance of a stated lithium limit does not widen it.
It catches the wrong count of cells, the lithium-ion charger on lithium iron phosphate and
the adjustable module with its trimmer.

Lithium cells are made for their voltage with about 50 mV of tolerance, 1.2 %: more than
that is critical. Within it but more than 0.6 % above is minor: no room is left for a second
error, such as cells out of balance (common practice).
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, from_memory
from ..formulas.pack import CHARGE_ENDS
from ..hazards import CHARGING, GAS


def figure(charger: float, series: float, v_cell_limit: float) -> float:
    return charger / (series * v_cell_limit)


CHECK = Check(
    title="Charge voltage per cell vs. cell limit",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="charger / (series * v_cell_limit)",
    sentence="Charge voltage {v_cell_limit:*figure} per cell ({charger}, {series:cell|cells});"
    " limit {v_cell_limit} ({figure:%}).",
    inputs={
        "charger": Input("battery.charger.v"),
        "series": Input("battery.series"),
        "v_cell_limit": Input("v_cell_limit"),
    },
    applies={"supply.source": "battery"},
    limits=AtMost(
        critical="1.012",
        minor="1.006",
        basis={
            "critical": from_memory("cell data sheets: 4.20 V with 50 mV of tolerance"),
            "minor": COMMON_PRACTICE,
        },
    ),
    sources=(CHARGE_ENDS,),
    cautions=(
        CHARGING,
        GAS,
    ),
    cases=(
        Case(
            {"charger": "16.8 V", "series": 4, "v_cell_limit": "3.65 V"},
            gives="1.150685",
            origin="published: utilitiesbunker.com, 4.20 and 3.65 V a cell, wrong charger",
        ),
        Case(
            {"charger": "25.326 V", "series": 6, "v_cell_limit": "4.20 V"},
            gives="1.005",
            origin="derived: 25.2 V + 0.5 % on six cells of 4.20 V",
        ),
    ),
    topic=("battery.charger.v",),
    asked_from="production",
    fails="""
supply: {source: battery}
battery: {chemistry: lfp, series: 4, charger: {v: 16.8 V}}
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

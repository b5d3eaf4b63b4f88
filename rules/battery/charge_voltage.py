"""Charge voltage per cell against what the cells allow.

A lithium cell charged above its voltage gives off gas, loses its separator's margin and in
the end burns. The charger's voltage, at the top of its tolerance, is divided by the cells
in series and set against the upper end of the cell's own charge voltage (4.20 V for
lithium-ion, 3.65 V for lithium iron phosphate where nothing is stated). It catches the
wrong count of cells, the lithium-ion charger on lithium iron phosphate and the adjustable
module with its trimmer.

Cells are made for their voltage with about 50 mV of tolerance, 1.2 %: more than that is
critical. Within it but more than 0.6 % above is minor: no room is left for a second error,
such as cells out of balance (common practice). Other chemistries are charged by curves that
one voltage does not describe and are left out.
"""

from typing import Any

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Caution, Check, Input, Lever, from_memory
from ..formulas.pack import CHARGE_ENDS


def figure(charger: Any, series: Any, v_cell_limit: Any) -> Any:
    return charger / (series * v_cell_limit)


CHECK = Check(
    title="Charge voltage per cell against its limit",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="charger / (series * v_cell_limit)",
    sentence="{charger} on {series:cell|cells} in series are {figure} times the {v_cell_limit}"
    " that a cell allows.",
    inputs={
        "charger": Input("battery.charger.v", "V", "end-of-charge voltage of the charger"),
        "series": Input("battery.series", "1", "cells in series"),
        "v_cell_limit": Input("v_cell_limit", "V", "charge voltage that one cell allows"),
    },
    applies={"supply.source": "battery", "battery.chemistry": ("li-ion", "lfp")},
    limits=AtMost(
        critical="1.012",
        minor="1.006",
        basis={
            "critical": from_memory("cell data sheets: 4.20 V with 50 mV of tolerance"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("battery.charger.v", "0.05 V"),),
    sources=(CHARGE_ENDS,),
    cautions=(
        Caution(
            "WARNING",
            "Overcharged lithium cells can vent and burn. Use a charger made for this pack,"
            " with a protection circuit that stops each cell by itself.",
        ),
    ),
    cases=(
        Case(
            {"charger": "16.8 V", "series": 4, "v_cell_limit": "3.65 V"},
            gives="1.150685",
            origin="published: 4.20 and 3.65 V from 'Battery charge algorithms', wrong charger",
        ),
        Case(
            {"charger": "25.326 V", "series": 6, "v_cell_limit": "4.242 V"},
            gives="0.995049",
            origin="derived: 25.2 V + 0.5 % on six cells of 4.20 V + 1 %",
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

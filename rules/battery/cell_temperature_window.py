"""Stated temperature windows of a cell against its chemistry.

No statement makes a common lithium cell chargeable in frost: below 0 degrees lithium plates
on its anode. Above 60 degrees no published scheme charges it at all, and from 80 degrees on
it heats itself. A window that reaches beyond belongs to another cell, or somebody has
written the storage or discharge window into the field for charging.

The figure is how far the stated windows, of charge and of discharge, reach beyond those of
the chemistry, at the worse end. Above 0 K is critical: every check that follows would rest
on it. Cells made for charging down to -20 degrees exist: say so (``made_for: cold-charge``).
"""

from ...linter.check import AtMost, Case, Check, Input
from ..formulas.pack import CELL_DATA, CHARGE_WINDOWS, SELF_HEATING
from ..hazards import CHARGING


def figure(t_beyond: float) -> float:
    return t_beyond


CHECK = Check(
    title="Stated cell temperature window vs. limits of its chemistry",
    figure=figure,
    unit="K",
    each="product",
    stake="safety",
    formula="t_beyond, larger one of charge and discharge",
    sentence="The stated temperature window of the cell ends {figure:+beyond|inside} the limits of"
    " its chemistry.",
    inputs={"t_beyond": Input("t_beyond_chemistry")},
    applies={"supply.source": "battery"},
    limits=AtMost(critical="0 K", basis={"critical": CHARGE_WINDOWS}),
    sources=(CHARGE_WINDOWS, SELF_HEATING, CELL_DATA),
    cautions=(CHARGING,),
    cases=(
        Case(
            {"t_beyond": "18 K"},
            gives="18 K",
            origin="computed: TI BQ25887 SLUSD89B, register 08h begins at 0 degC; -18 stated",
        ),
        Case(
            {"t_beyond": "-15 K"},
            gives="-15 K",
            origin="computed: the same register, up to 60 degrees; 45 stated",
        ),
    ),
    topic=("battery.cell.t_charge", "battery.cell.t_discharge"),
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 3, cell: {t_charge: -18 degC .. 45 degC}}
channels:
  main: {rated_power: 40 W}
""",
    passes="""
supply: {source: battery}
battery:
  chemistry: li-ion
  series: 3
  cell: {t_charge: -18 degC .. 45 degC, made_for: cold-charge, t_discharge: -20 degC .. 60 degC}
channels:
  main: {rated_power: 40 W}
""",
)

"""Coldest ambient against the cells' window for discharge.

Cells state the temperatures between which they may be discharged, lithium-ion mostly from
-20 degrees. Below that their resistance is many times that of a warm cell, a heavy load
drives the voltage under the cut-off at once, and the maker answers for nothing. The pack is
taken to start at the coldest ambient; it warms only after a while of playing.

Colder than the window is major: the product fails in its stated range. Either the
ambient is promised too low, or the cells are of the wrong kind; some lithium iron phosphate
and lead-acid types start lower.
"""

from ...linter.check import AtLeast, Case, Check, Input, derivation
from ..formulas.pack import CELL_DATA


def figure(ambient: float, t_low: float) -> float:
    return ambient - t_low


CHECK = Check(
    title="Lowest ambient vs. discharge limit of the cells",
    figure=figure,
    unit="K",
    each="product",
    stake="rating",
    formula="ambient - t_low",
    sentence="Lowest ambient {ambient}, {figure:+above|below} the cells' discharge limit of"
    " {t_low}.",
    inputs={
        "ambient": Input("environment.ambient"),
        "t_low": Input("t_discharge_low"),
    },
    applies={"supply.source": "battery"},
    limits=AtLeast(
        major="0 K", basis={"major": derivation("outside the maker's window nothing is assured")}
    ),
    sources=(CELL_DATA,),
    cases=(
        Case(
            {"ambient": "-5 degC", "t_low": "-20 degC"},
            gives="15 K",
            origin="from memory: lithium-ion cells are mostly rated from -20 degrees",
        ),
        Case(
            {"ambient": "-30 degC", "t_low": "-20 degC"},
            gives="-10 K",
            origin="from memory: the same cells outdoors at -30 degrees",
        ),
    ),
    topic=("battery.cell.t_discharge", "environment.ambient"),
    fails="""
environment: {ambient: -30 degC .. 40 degC}
supply: {source: battery}
battery: {chemistry: li-ion, cell: {t_discharge: -20 degC .. 60 degC}}
channels:
  main: {rated_power: 40 W}
""",
    passes="""
environment: {ambient: -5 degC .. 38 degC}
supply: {source: battery}
battery: {chemistry: li-ion, cell: {t_discharge: -20 degC .. 60 degC}}
channels:
  main: {rated_power: 40 W}
""",
)

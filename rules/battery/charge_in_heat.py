"""Hottest charge that is let through, against the cells' window.

Up to 45 degrees lithium cells are charged normally. Between 45 and 60 degrees the
practice of the charger makers is to go on with a lower voltage or current, above 60 to
stop. A charger that lets the full charge through beyond the cells' window ages them fast,
and with the warmth of an amplifier in the same box that is every summer evening.

So above the cells' window is minor, because a reduced charge may be meant there; more than
15 K above it, beyond what any published scheme allows, is major. The upper end of the
window is the one at which all charging stops.
"""

from typing import Any

from ...linter.check import AtLeast, Case, Caution, Check, Input, Lever
from ..formulas.pack import CHARGE_WINDOW


def figure(t_charge_high: Any, t_window_high: Any) -> Any:
    return t_charge_high - t_window_high


CHECK = Check(
    title="Hottest charge against the cells' window",
    figure=figure,
    unit="K",
    each="product",
    stake="safety",
    formula="t_charge_high - t_window_high",
    sentence="Charging is let through up to {t_window_high}, {figure:+below|above} the"
    " {t_charge_high} up to which the cells may be charged.",
    inputs={
        "t_charge_high": Input("t_charge_high", "degC", "hottest charge of the cells"),
        "t_window_high": Input("t_window_high", "degC", "hottest charge that is let through"),
    },
    applies={"supply.source": "battery", "battery.chemistry": ("li-ion", "lfp")},
    limits=AtLeast(
        major="-15 K", minor="0 K", basis={"major": CHARGE_WINDOW, "minor": CHARGE_WINDOW}
    ),
    levers=(Lever("battery.charger.t_window", "1 K"),),
    sources=(CHARGE_WINDOW,),
    cautions=(
        Caution(
            "WARNING",
            "Lithium cells charged hot can vent and burn. Follow the cell maker's window.",
        ),
    ),
    cases=(
        Case(
            {"t_charge_high": "45 degC", "t_window_high": "60 degC"},
            gives="-15 K",
            origin="published: TI BQ25887 SLUSD89B, register 08h: reduced to 60, then none",
        ),
        Case(
            {"t_charge_high": "45 degC", "t_window_high": "43 degC"},
            gives="2 K",
            origin="published: the normal window of TI BQ25887 SLUSD89B less 2 K of sensor error",
        ),
    ),
    topic=("battery.charger.t_window",),
    asked_from="production",
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, charger: {sensor: cell, t_window: 3 degC .. 65 degC}}
channels:
  main: {rated_power: 40 W}
""",
    passes="""
supply: {source: battery}
battery: {chemistry: li-ion, charger: {sensor: cell, t_window: 3 degC .. 43 degC}}
channels:
  main: {rated_power: 40 W}
""",
)

"""Coldest charge that is let through, against the cells' window.

Standard lithium-ion and lithium iron phosphate cells may be charged from 0 degrees up.
Colder than that lithium plates on the anode instead of going into it; the cell loses
capacity and can short internally later, without warning. The lower end of the window in
which the charger lets current flow must lie at or above the lower end that the cells
allow. A charger's data sheet often has it as an option that is off by default.

Below is critical. Cells made for cold charging exist, down to -20 degrees: say so
(``made_for: cold-charge``) and state their window; without that word a stated window does
not go below that of the chemistry. Nickel cells build up gas when charged in frost and are
judged alike. Without a sensor the coldest air in use is taken.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever
from ..formulas.pack import CHARGE_WINDOWS
from ..hazards import CHARGING


def figure(t_window_low: float, t_charge_low: float) -> float:
    return t_window_low - t_charge_low


CHECK = Check(
    title="Lowest charge temperature vs. cell limit",
    figure=figure,
    unit="K",
    each="product",
    stake="safety",
    formula="t_window_low - t_charge_low",
    sentence="Charging is allowed down to {t_window_low}, {figure:+above|below} the cell limit of"
    " {t_charge_low}.",
    inputs={
        "t_window_low": Input("t_window_low"),
        "t_charge_low": Input("t_charge_low"),
    },
    applies={"supply.source": "battery", "battery.chemistry": ("li-ion", "lfp", "nimh")},
    limits=AtLeast(critical="0 K", basis={"critical": CHARGE_WINDOWS}),
    levers=(Lever("battery.charger.t_window", "1 K"),),
    sources=(CHARGE_WINDOWS,),
    cautions=(CHARGING,),
    cases=(
        Case(
            {"t_window_low": "0 degC", "t_charge_low": "0 degC"},
            gives="0 K",
            origin="published: TI BQ25887 SLUSD89B, register 08h begins at 0 degC",
        ),
        Case(
            {"t_window_low": "5 degC", "t_charge_low": "0 degC"},
            gives="5 K",
            origin="published: LFP-26650-3300 specification, charge from 0 degC; 5 degC assumed",
        ),
        Case(
            {"t_window_low": "-10 degC", "t_charge_low": "0 degC"},
            gives="-10 K",
            origin="derived: a charger that starts at -10 degrees against the same register",
        ),
    ),
    topic=("battery.charger.t_window",),
    asked_from="prototype",
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, charger: {sensor: cell, t_window: -10 degC .. 45 degC}}
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

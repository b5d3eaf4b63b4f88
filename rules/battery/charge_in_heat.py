"""Hottest charge that is let through, against the cells' window.

Up to 45 degrees lithium cells are charged normally. Between 45 and 60 degrees the
practice of the charger makers is to go on with a lower voltage or current
(``charger.t_reduced``), above 60 to stop. A full charge beyond the cells' window drives
them towards their own heating, and with the warmth of an amplifier in the same box that is
every summer evening. Lead-acid cells run away thermally above 50 degrees (from
memory): their charge current rises with the heat that it makes.

The figure is the smaller of two margins: from the hottest full charge to the cells' window,
and from the end of all charging to what the chemistry allows at all. Below zero is major.
More than 5 K below, which no sensor's error explains, is critical. Without a sensor the
hottest air in use is taken.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever
from ..formulas.maths import smaller
from ..formulas.pack import CHARGE_WINDOWS
from ..hazards import CHARGING


def figure(
    t_charge_high: float, t_full_high: float, t_hottest: float, t_window_high: float
) -> float:
    return smaller(t_charge_high - t_full_high, t_hottest - t_window_high)


CHECK = Check(
    title="Highest charge temperature vs. cell limit",
    figure=figure,
    unit="K",
    each="product",
    stake="safety",
    formula="smaller of t_charge_high - t_full_high and t_hottest - t_window_high",
    sentence="Full charge up to {t_full_high}, any charge up to {t_window_high}:"
    " {figure:+below|above} the cell limits ({t_charge_high}, {t_hottest}).",
    inputs={
        "t_full_high": Input("t_full_charge_high"),
        "t_hottest": Input("t_charge_hottest"),
        "t_charge_high": Input("t_charge_high"),
        "t_window_high": Input("t_window_high"),
    },
    applies={"supply.source": "battery"},
    limits=AtLeast(
        critical="-5 K", major="0 K", basis={"critical": COMMON_PRACTICE, "major": CHARGE_WINDOWS}
    ),
    levers=(Lever("battery.charger.t_window", "1 K"), Lever("battery.charger.t_reduced", "1 K")),
    sources=(CHARGE_WINDOWS,),
    cautions=(CHARGING,),
    cases=(
        Case(
            {
                "t_charge_high": "45 degC",
                "t_full_high": "45 degC",
                "t_hottest": "60 degC",
                "t_window_high": "60 degC",
            },
            gives="0 K",
            origin="published: TI BQ25887 SLUSD89B, register 08h: full to 45, reduced to 60",
        ),
        Case(
            {
                "t_charge_high": "45 degC",
                "t_full_high": "43 degC",
                "t_hottest": "60 degC",
                "t_window_high": "43 degC",
            },
            gives="2 K",
            origin="computed: the 45 degC of the same register, 2 K of sensor error assumed",
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

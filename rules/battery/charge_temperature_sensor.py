"""Where the temperature is sensed that lets charging start.

A lithium cell that is charged below freezing plates metallic lithium, which stays and may
short the cell days later; above 45 degrees it must be charged with less or not at all.
Only a sensor at the cells can tell. A sensor on the board reads the amplifier's warmth and
lets a cold pack be charged; no sensor lets everything through.

None at all is critical. On the board is minor: it may do if board and cells share one
small box and charging starts long after switch-off. The figure counts 0 for none, 1 on the
board, 2 at the cells. Lead-acid and nickel cells are left out: they end the charge by other
means and tolerate the cold better.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    from_memory,
)
from ..formulas.pack import CHARGE_WINDOW
from ..hazards import CHARGING

NEARNESS = {"none": 0.0, "board": 1.0, "cell": 2.0}


def figure(sensor: str) -> float:
    return NEARNESS[sensor]


CHECK = Check(
    title="Location of the charger's temperature sensor",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="0 if sensor is none, 1 if board, 2 if cell",
    sentence="{sensor:?No temperature sensor in the charger|The charger's temperature sensor is"
    " at: #}.",
    inputs={"sensor": Input("battery.charger.sensor")},
    applies={"supply.source": "battery", "battery.chemistry": ("li-ion", "lfp")},
    limits=AtLeast(
        critical="1",
        minor="2",
        basis={"critical": CHARGE_WINDOW, "minor": COMMON_PRACTICE},
    ),
    levers=(Lever("battery.charger.sensor", ("cell",)),),
    sources=(CHARGE_WINDOW, from_memory("IEC 62368-1", "Annex M: charging safeguards")),
    cautions=(CHARGING,),
    cases=(
        Case(
            {"sensor": "none"},
            gives="0",
            origin="computed: no sensor, the lowest of the ranks",
        ),
        Case(
            {"sensor": "cell"},
            gives="2",
            origin="derived: highest of the ranks; TI BQ25887 SLUSD89B, register 08h, charges by "
            "the temperature of the cells",
        ),
    ),
    topic=("battery.charger",),
    asked_from="prototype",
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, charger: {sensor: none}}
channels:
  main: {rated_power: 40 W}
""",
    passes="""
supply: {source: battery}
battery: {chemistry: li-ion, charger: {sensor: cell}}
channels:
  main: {rated_power: 40 W}
""",
)

"""How a rechargeable pack is charged.

Every chemistry that is known here is rechargeable, so somebody will charge the pack. Where
the product holds no charger, the right one is named all the same: its voltage, its current
and its temperatures decide whether the pack burns, wherever the charger is. ``none``
leaves the choice to the owner, and chargers for other cells fit many a connector.

None is major. The figure is 1 where a charger is stated, else 0. First fix: describe the
charger that goes with the product, or make the pack removable to a charger of its maker.
"""

from ...linter.check import AtLeast, Case, Check, Input, from_memory
from ..hazards import CHARGING

SAFEGUARDS = from_memory("IEC 62368-1, annex M", "charging belongs to the safeguards of a battery")


def figure(charger: str) -> float:
    return 1.0 if charger == "fitted" else 0.0


CHECK = Check(
    title="Charger of a rechargeable pack",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="1 if charger is stated, else 0",
    sentence="{charger:?No charger for the rechargeable pack|Charger of the rechargeable pack:"
    " stated}.",
    inputs={"charger": Input("battery.charger")},
    applies={"supply.source": "battery"},
    limits=AtLeast(major="1", basis={"major": SAFEGUARDS}),
    sources=(SAFEGUARDS,),
    cautions=(CHARGING,),
    cases=(
        Case(
            {"charger": "none"},
            gives="0",
            origin="common practice: a pack sold without a charger is charged by any charger",
        ),
        Case(
            {"charger": "fitted"},
            gives="1",
            origin="from memory: IEC 62368-1, annex M: charger and battery are tested together",
        ),
    ),
    topic=("battery",),
    asked_from="prototype",
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 3, charger: none}
channels:
  main: {rated_power: 40 W}
""",
    passes="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 3, charger: {v: 12.6 V}}
channels:
  main: {rated_power: 40 W}
""",
)

"""Openings of the space in which a lead-acid battery is charged.

At the end of its charge a lead-acid battery splits water: hydrogen leaves it, an open one
in bulk, a valve-regulated one in small amounts, and in bulk once its valves have opened.
Four per cent of it in air explode from the spark of a relay. A sealed box collects it.

The practice of battery rooms holds for compartments in products too: 0.05 m3 of air for
each ampere hour of gassing current and cell, through an inlet and an outlet with air of
0.1 m/s. The gassing current is that at 2.4 V a cell: 20 mA for an ampere hour of an open
battery, 8 mA of a valve-regulated one.

The figure is the free area of each opening over the one needed. Below 1 is critical. Where
only a sealed enclosure is stated the battery is taken to be in it. First fix: a battery
bay of its own, vented above and below, without anything in it that sparks.
"""

from ...linter.check import AtLeast, Case, Check, Constant, Input, Lever, derivation
from ..formulas.pack import BATTERY_ROOMS, GASSING, vent_area_needed
from ..hazards import GAS


def figure(
    vent_area: float,
    series: float,
    capacity: float,
    chemistry: str,
    hour: float,
    air_per_charge: float,
    air_speed: float,
) -> float:
    return vent_area / vent_area_needed(
        series, capacity, chemistry, hour, air_per_charge, air_speed
    )


BOX = """
supply: {source: battery}
battery: {chemistry: lead-acid-agm, series: 6, cell: {capacity: 18 Ah}}
thermal: {enclosure: {openings: sealed}}
channels:
  main: {rated_power: 40 W}
"""

CHECK = Check(
    title="Vent area vs. area needed for hydrogen (lead-acid)",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="vent_area / (series * share of capacity by chemistry / hour * air_per_charge"
    " / air_speed)",
    sentence="Vent openings {vent_area}, {figure:% of} the area needed for hydrogen"
    " ({series:cell|cells},"
    " {capacity}).",
    inputs={
        "vent_area": Input("vent_area_seen"),
        "series": Input("battery.series"),
        "capacity": Input("capacity_pack"),
        "chemistry": Input("battery.chemistry"),
        "hour": Constant("1 h", "unit of the gassing share", derivation("definition")),
        "air_per_charge": Constant("1.3889e-5 m3/C", "air for a charge of gas", BATTERY_ROOMS),
        "air_speed": Constant("0.1 m/s", "natural draught", BATTERY_ROOMS),
    },
    applies={
        "supply.source": "battery",
        "battery.chemistry": ("lead-acid-agm", "lead-acid-flooded"),
    },
    limits=AtLeast(critical="1", basis={"critical": BATTERY_ROOMS}),
    levers=(Lever("battery.vent_area", "0.5 cm2"),),
    sources=(BATTERY_ROOMS, GASSING),
    cautions=(GAS,),
    cases=(
        Case(
            {
                "vent_area": "6.667 cm2",
                "series": 6,
                "capacity": "100 Ah",
                "chemistry": "lead-acid-agm",
            },
            gives="1",
            origin="computed: EN 50272-3 as quoted by Exide, by hand: 0.05 x 6 x 0.8 A are 0.24 "
            "m3/h",
            tolerance=2e-3,
        ),
        Case(
            {
                "vent_area": "0 cm2",
                "series": 6,
                "capacity": "18 Ah",
                "chemistry": "lead-acid-flooded",
            },
            gives="0",
            origin="derived: no opening carries nothing off",
        ),
    ),
    topic=("battery.vent_area", "thermal.enclosure"),
    asked_from="prototype",
    fails=BOX,
    passes=BOX.replace("series: 6,", "series: 6, vent_area: 4 cm2,"),
)

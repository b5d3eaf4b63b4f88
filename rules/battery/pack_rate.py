"""Rated power against the energy of the pack.

A quick sum that needs few facts: rated output and other loads, through a converter if there
is one and with no other loss, over the energy of the pack, gives the rate at which the pack
would be emptied. Times the shortest time in which its cells may be emptied it must stay
below one. A single cell behind a step-up module looks fine in volts and amperes of the
module and fails here.

Where the cell's continuous current is stated, that time is its capacity over the current;
else what cells of the chemistry usually allow (half an hour for lithium, one to two hours
for the others, from memory), which is a stand-in: power cells do far better. So above 1 is
only minor; above 2 the pack does not fit the power, major. The currents themselves are
judged by checks of their own when the cell's data are there.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.pack import CELL_DATA, SERIES_PARALLEL


def figure(p_source: float, e_pack: float, shortest: float) -> float:
    return p_source * shortest / e_pack


CHECK = Check(
    title="Discharge time at rated power vs. shortest rated discharge",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="p_source * shortest / e_pack",
    sentence="Rated power ({p_source}) empties the {e_pack} pack in {shortest:/figure}; shortest"
    " rated discharge of its cells {shortest}.",
    inputs={
        "p_source": Input("p_source_least"),
        "e_pack": Input("e_pack"),
        "shortest": Input("shortest_discharge"),
    },
    applies={"supply.source": "battery"},
    limits=AtMost(major="2", minor="1", basis={"major": CELL_DATA, "minor": CELL_DATA}),
    levers=(
        Lever("battery.parallel", "1", within=3),
        Lever("battery.series", "1", within=2),
        Lever("rated_power", "1 W"),
    ),
    sources=(
        SERIES_PARALLEL,
        derivation("energy over power is the time until the pack is empty"),
        Source("reddit r/diyaudio 1i3kotu", "30 W, 3599 mAh: squeaks; more cells are advised"),
    ),
    cases=(
        Case(
            {"p_source": "35.294 W", "e_pack": "12.956 Wh", "shortest": "0.5 h"},
            gives="1.36207",
            origin="computed: 30 W and 3599 mAh of reddit r/diyaudio 1i3kotu; 3.6 V, 85 % and"
            " half an hour assumed",
        ),
        Case(
            {"p_source": "80 W", "e_pack": "151.2 Wh", "shortest": "0.5 h"},
            gives="0.26455",
            origin="common practice: portable loudspeaker, 2 x 40 W on twelve cells of 3.5 Ah",
        ),
    ),
    topic=("battery.cell.capacity",),
    asked_from="prototype",
    fails="""
supply: {source: battery, rails: single, converter: step-up, converter_efficiency: 85 %}
battery: {chemistry: li-ion, series: 1, parallel: 1, cell: {capacity: 3599 mAh}}
channels:
  mono: {rated_power: 30 W, rated_load: 4 ohm}
""",
    passes="""
supply: {source: battery, rails: single}
battery: {chemistry: li-ion, series: 6, parallel: 2, cell: {capacity: 3.5 Ah}}
channels:
  left: {rated_power: 40 W, rated_load: 4 ohm}
  right: {rated_power: 40 W, rated_load: 4 ohm}
""",
)

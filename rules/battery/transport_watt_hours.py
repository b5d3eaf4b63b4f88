"""Energy of one pack against the limits of passenger air travel.

Lithium batteries are carried by passengers up to 100 Wh each without asking, above that up
to 160 Wh with the operator's approval and two spares at most, above that not at all as
baggage. The limit holds for each battery: two removable packs of 76 Wh travel where one of
151 Wh needs a letter. The energy is that of the largest capacity printed, at nominal
voltage, as it must be marked on the pack.

It is asked only where the product is said to travel in the cabin. Above 160 Wh is major: the
claim fails. Above 100 Wh is minor: true only with approval. Every lithium pack that is
shipped also needs the test summary of UN 38.3. Rules change yearly: ask the operator.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever
from ..formulas.pack import AIR_TRAVEL, SERIES_PARALLEL


def figure(e_pack: float, packs: float) -> float:
    return e_pack / packs


CHECK = Check(
    title="Energy per pack vs. air-travel limits",
    figure=figure,
    unit="Wh",
    each="product",
    stake="rating",
    formula="e_pack / packs",
    sentence="Energy per pack {figure} ({packs:pack|packs}, {e_pack} in all); the cabin takes"
    " 100 Wh, on approval 160 Wh.",
    inputs={
        "e_pack": Input("e_pack"),
        "packs": Input("battery.packs"),
    },
    applies={
        "supply.source": "battery",
        "battery.chemistry": ("li-ion", "lfp"),
        "claims.air_travel": "cabin",
    },
    limits=AtMost(major="160 Wh", minor="100 Wh", basis={"major": AIR_TRAVEL, "minor": AIR_TRAVEL}),
    levers=(Lever("battery.packs", "1"), Lever("battery.parallel", "1", within=3)),
    sources=(AIR_TRAVEL, SERIES_PARALLEL),
    cases=(
        Case(
            {"e_pack": "151.2 Wh", "packs": 1},
            gives="151.2 Wh",
            origin="published: Lithium Batteries e-book 2024, p. 35: 100 Wh; the pack is assumed",
        ),
        Case(
            {"e_pack": "151.2 Wh", "packs": 2},
            gives="75.6 Wh",
            origin="published: Lithium Batteries e-book 2024, p. 35: for each; packs are assumed",
        ),
    ),
    topic=("claims.air_travel",),
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 6, parallel: 2, cell: {capacity: 3.5 Ah}}
channels:
  main: {rated_power: 40 W}
claims: {air_travel: cabin}
""",
    passes="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 6, parallel: 2, packs: 2, cell: {capacity: 3.5 Ah}}
channels:
  main: {rated_power: 40 W}
claims: {air_travel: cabin}
""",
)

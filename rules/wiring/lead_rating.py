"""Stated rating of the supply lead against what its copper carries.

Copper of a given area makes the same heat whatever is printed beside it. A table of chassis
wiring in free air gives the current at which a wire rises by some 35 K. Insulation for
200 degrees allows four times that rise, which is twice the current; no insulation allows more.
A rating beyond belongs to another wire, or to another unit.

The figure is the rating over twice the table. Above 1 is critical: no wire of that copper
carries it. Above 0.75 is major: only the most heat-resistant insulation in free air does,
and its terminals do not (common practice). Everything else counts with the tighter one of
rating and copper. First fix: the area that the current needs.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever
from ..derived.wiring import HOTTEST, WIRE_TABLE
from ..formulas.conductors import LEAD_SIZES
from ..hazards import CONDUCTOR


def figure(i_rated: float, i_most: float) -> float:
    return i_rated / i_most


CHECK = Check(
    title="Stated supply lead rating vs. its copper",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="i_rated / i_most; i_most: twice the chassis wiring table at the area",
    sentence="Stated lead rating {i_rated}; its copper carries {i_most} with the hottest"
    " insulation ({figure:%}).",
    inputs={
        "i_rated": Input("wiring.supply_lead.i_rated"),
        "i_most": Input("i_lead_most"),
    },
    limits=AtMost(
        critical="1", major="0.75", basis={"critical": HOTTEST, "major": COMMON_PRACTICE}
    ),
    levers=(Lever("wiring.supply_lead.area", LEAD_SIZES),),
    sources=(WIRE_TABLE, HOTTEST),
    cautions=(CONDUCTOR,),
    cases=(
        Case({"i_rated": "22 A", "i_most": "44 A"}, gives="0.5",
             origin="computed: HyperPhysics, AWG 16 as chassis wire, 22 A, and twice that"),
        Case({"i_rated": "40 A", "i_most": "14 A"}, gives="2.857143",
             origin="computed: HyperPhysics, AWG 22 as chassis wire, 7 A, twice; 40 A assumed"),
    ),
    topic=("wiring.supply_lead.i_rated",),
    fails="""
wiring: {supply_lead: {length: 0.4 m, area: 0.14 mm2, i_rated: 40 A}}
channels: {main: {rated_power: 50 W}}
""",
    passes="""
wiring: {supply_lead: {length: 0.4 m, area: 2.5 mm2, i_rated: 30 A}}
channels: {main: {rated_power: 50 W}}
""",
)  # fmt: skip

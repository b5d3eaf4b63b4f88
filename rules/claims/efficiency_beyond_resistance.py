"""Claimed efficiency against what cold resistances alone leave.

Load and path are a divider: switches that conduct, inductor and wire take their share of every
watt, before any switching, gate charge, core or idle loss.  Taken cold, at their data-sheet
values and for the best channel, they bound the efficiency from above; a claim beyond it is
one that physics forbids for the parts that are stated.  What a part adds by warming up and all
other losses are judged by efficiency-plausibility.

The figure is the claim less the bound.  One point is left for reading a graph; beyond it the
finding holds at every milestone.  A resistance that the spec does not state takes nothing here:
that can fail the check, never pass it.  First fix: measure at rated power, or claim what the
resistances and the other losses leave.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..derived.ways import left_out

DIVIDER = derivation("divider of the load and the resistances in series with it")
NOTHING_KNOWN = left_out("100 %", "every resistance")


def figure(efficiency: float, possible: float) -> float:
    return efficiency - possible


STAGE = """
channels:
  main:
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: discrete
      device: {r_ds_on: {typ: 50 mohm, max: 60 mohm}}
    filter: {type: lc, inductor: {dcr: 40 mohm}}
claims: {efficiency: 97 %}
"""

CHECK = Check(
    title="Claimed efficiency vs. cold resistances",
    figure=figure,
    unit="%",
    each="product",
    stake="performance",
    formula="efficiency - possible",
    sentence="Claimed efficiency {efficiency}; load and cold resistances alone leave {possible}.",
    inputs={
        "efficiency": Input("claims.efficiency"),
        "possible": Input("efficiency_possible_whole", default=NOTHING_KNOWN),
    },
    limits=AtMost(major="1 %", minor="0 %", basis={"major": COMMON_PRACTICE, "minor": DIVIDER}),
    levers=(Lever("claims.efficiency", "1 %"),),
    sources=(DIVIDER,),
    cases=(
        Case(
            {"efficiency": "98 %", "possible": "96.386 %"},
            gives="1.614 %",
            origin="derived: 4 ohm of 4.15 ohm, with two switches of 15 mohm and coils of 60 mohm",
        ),
        Case(
            {"efficiency": "90 %", "possible": "95.694 %"},
            gives="-5.694 %",
            origin="computed: 4 ohm behind two switches of 50 mohm and coils of 40 mohm, nodal",
        ),
    ),
    topic=("claims.efficiency",),
    forbidden=True,
    fails=STAGE,
    passes=STAGE.replace("97 %", "90 %"),
)

"""Series capacitor of a tweeter against the direct voltage of a fault.

A capacitor in series with a tweeter is trusted to keep direct current from the voice coil
when a switch of the stage fails shorted.  Then the whole peak that the stage can give lies
across the capacitor, for as long as the product stays on.  If its rating is lower, the
capacitor breaks down and hands the fault on to the coil, so that the loudspeaker burns behind
a part that seemed to protect it.

The voltage is the highest rail for a half-bridge on two rails and for a bridge, half the rail for
a half-bridge behind an output capacitor. Where this capacitor stands in for the output capacitor
of a half-bridge on a single supply, it is the whole rail. Music adds less than that: the
capacitor sees only what lies below its corner. Above the rating is critical: a shorted switch is
the fault that it is there for; above 80 % minor, as for film capacitors elsewhere. First fix: the
next voltage rating, which costs cents.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..hazards import COIL


def figure(v_fault: float, v_rated: float) -> float:
    """Direct voltage of the fault over the rating."""
    return v_fault / v_rated


STAGE = """
supply: {source: dc-source, rails: single, v_rail: 36 V}
channels:
  main:
    output_stage: {topology: full-bridge}
    loudspeaker: {c_series: {c: 6.8 uF, v_rated: RATING}}
"""

CHECK = Check(
    title="Series capacitor voltage in a DC fault vs. rating",
    figure=figure,
    unit="%",
    each="channel",
    stake="safety",
    formula="v_fault / v_rated",
    sentence="A shorted switch puts {v_fault} across the series capacitor; rated {v_rated}"
    " ({figure:%}).",
    inputs={
        "v_fault": Input("v_series_fault"),
        "v_rated": Input("loudspeaker.c_series.v_rated"),
    },
    applies={"loudspeaker.c_series": "fitted"},
    limits=AtMost(
        critical="100 %",
        minor="80 %",
        basis={
            "critical": derivation("rating of the capacitor, reached after a first fault"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever(
            "loudspeaker.c_series.v_rated",
            ("25 V", "35 V", "50 V", "63 V", "100 V", "160 V", "250 V", "400 V", "630 V"),
        ),
    ),
    sources=(derivation("one leg stuck at a rail, the other at the opposite one or at ground"),),
    cautions=(COIL,),
    cases=(
        Case(
            {"v_fault": "36 V", "v_rated": "50 V"},
            gives="72 %",
            origin="derived: bridge on 36 V with one leg at the rail and the other at ground",
        ),
        Case(
            {"v_fault": "35 V", "v_rated": "100 V"},
            gives="35 %",
            origin="computed: split rails of 35 V as on the IRAUDAMP7D board, capacitor of 100 V",
        ),
    ),
    topic=("loudspeaker.c_series",),
    asked_from="prototype",
    fails=STAGE.replace("RATING", "35 V"),
    passes=STAGE.replace("RATING", "63 V"),
)

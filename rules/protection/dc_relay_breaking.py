"""Whether the relay in the loudspeaker lead breaks the direct current of a fault.

A relay for 10 A and 250 V is so for alternating current, whose zero puts the arc out.  On
direct current most contacts break 30 V; above it the arc burns between the open contacts,
welds them or burns the relay, and the voice coil burns on.  A detector that acts in time
behind such a relay protects nothing.

The figure is the larger one of the fault voltage over the voltage that the contact breaks,
and of the fault current (that voltage over the cold voice coils) over the current that it
breaks.  Both are ratings: above 1 is critical.  First fix: contacts in series, a relay
rated for direct voltage, or two transistors back to back.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation
from ..derived.load import PARALLEL, SERIES
from ..formulas.maths import larger
from ..hazards import COIL

RATING = derivation("breaking voltage and current of a contact are absolute limits")
LOADED = derivation("Ohm's law: rail over the coils, leads and source left out")
SPLIT = Source(
    "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
    "p. 4, table 1: two rails of 35 V; p. 25: direct voltage detected at 4 V",
)


def figure(
    v_fault: float, v_break: float, r_e: float, series: float, parallel: float, i_break: float
) -> float:
    i_fault = v_fault * parallel / (r_e * series)
    return larger(v_fault / v_break, i_fault / i_break)


SPLIT_RAILS = """
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage: {topology: half-bridge, devices: discrete}
    loudspeaker: {z_rated: 4 ohm, r_e: 3.2 ohm}
protection: {dc_detector: {action: disconnect-load, independent: yes, v_break: 30 V, i_break: 10 A}}
"""

CHECK = Check(
    title="DC fault vs. relay breaking rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="larger of v_fault / v_break and v_fault parallel / (r_e series) / i_break",
    sentence="Relay must break {v_fault} DC into {r_e} coils; rated {v_break}, {i_break}"
    " ({figure:%}).",
    inputs={
        "v_fault": Input("v_ideal", meaning="direct voltage at the load, upper bound"),
        "v_break": Input("protection.dc_detector.v_break"),
        "r_e": Input("r_e"),
        "series": SERIES,
        "parallel": PARALLEL,
        "i_break": Input("protection.dc_detector.i_break"),
    },
    applies={
        "dc_reaches_load": "yes",
        "line": "none",
        "protection.dc_detector.action": "disconnect-load",
    },
    limits=AtMost(critical="1", basis={"critical": RATING}),
    levers=(Lever("protection.dc_detector.v_break", ("60 V", "80 V", "100 V", "125 V")),),
    sources=(RATING, LOADED, SPLIT),
    cautions=(COIL,),
    cases=(
        Case(
            {
                "v_fault": "35 V",
                "v_break": "30 V",
                "r_e": "3.2 ohm",
                "series": 1,
                "parallel": 1,
                "i_break": "16 A",
            },
            gives="1.166667",
            origin="computed: IRAUDAMP7D-100, rails of 35 V; contact of 30 V, 16 A assumed",
        ),
        Case(
            {
                "v_fault": "50 V",
                "v_break": "100 V",
                "r_e": "6.4 ohm",
                "series": 1,
                "parallel": 2,
                "i_break": "10 A",
            },
            gives="1.5625",
            origin="computed: two coils of 6.4 ohm by nodal solution: 15.625 A",
        ),
        Case(
            {
                "v_fault": "50 V",
                "v_break": "100 V",
                "r_e": "6.4 ohm",
                "series": 2,
                "parallel": 1,
                "i_break": "2 A",
            },
            gives="1.953125",
            origin="computed: 50 V over two coils of 6.4 ohm one after the other: 3.90625 A",
        ),
    ),
    topic=("protection.dc_detector.action",),
    fails=SPLIT_RAILS,
    passes=SPLIT_RAILS.replace("v_break: 30 V, i_break: 10 A", "v_break: 100 V, i_break: 30 A"),
)

"""Pumped rail against the voltage rating of the bulk capacitors.

An electrolytic capacitor above its rated voltage heats, gasses and vents. Whatever lifts
the rail, it lies on these capacitors first: the highest voltage of the source plus the
energy that the amplifier returns at its lowest notes. An over-voltage trip ends the
pumping, so with a trip the rise is counted up to it; but a trip stops the amplifier and
not the source, so the highest voltage of the source counts in any case.  Where the source
alone is above the rating bulk-capacitor-voltage says so; this check then judges only what
the pumping adds.

A rating is an absolute limit, so exceeding it is critical; a critical that rests on an
assumed phase of the loudspeaker or an assumed source is reported as major. First fix:
the next rated voltage, or a trip below it.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from ..formulas.maths import larger
from ..formulas.pumping import BRIDGE_PUMPING, HALF_BRIDGE_PUMPING
from ..hazards import CAPACITOR


def figure(v_rail_peak: float, v_rated: float, v_rail: float) -> float:
    return v_rail_peak / larger(v_rated, v_rail)


CHECK = Check(
    title="Pumped rail vs. bulk capacitor rating",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="v_rail_peak / larger of v_rated and v_rail",
    sentence="Bus pumping lifts the rail to {v_rail_peak}; bulk capacitors rated {v_rated}.",
    inputs={
        "v_rail_peak": Input("v_rail_peak"),
        "v_rated": Input("supply.bulk.v_rated"),
        "v_rail": Input("v_rail_high"),
    },
    limits=AtMost(
        critical="1", basis={"critical": derivation("rated voltage of a capacitor is absolute")}
    ),
    levers=(
        Lever(
            "supply.bulk.v_rated",
            ("16 V", "25 V", "35 V", "50 V", "63 V", "80 V", "100 V", "160 V", "200 V", "250 V"),
        ),
        Lever("supply.bulk.c", "E6"),
    ),
    sources=(HALF_BRIDGE_PUMPING, BRIDGE_PUMPING),
    cautions=(CAPACITOR,),
    cases=(
        Case(
            {"v_rail_peak": "77.8 V", "v_rated": "63 V", "v_rail": "50 V"},
            gives="1.23492",
            origin="computed: switched simulation, 50 V rail, 4 ohm, 20 Hz, 1000 uF (27.81 V)",
        ),
        Case(
            {"v_rail_peak": "40.25 V", "v_rated": "100 V", "v_rail": "35 V"},
            gives="0.4025",
            origin="computed: IRAUDAMP7D, fig. 29: a swing of 5.25 V put on 35 V; capacitors 100 V",
        ),
    ),
    topic=("supply.bulk.v_rated",),
    asked_from="prototype",
    fails="""
supply:
  source: dc-source
  rails: split
  v_rail: 50 V
  sinks_current: no
  c_source: 0 F
  bulk: {c: 1000 uF, v_rated: 63 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {m_max: 90 %}
    loudspeaker: {phase: 0 deg}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 30 V, bulk: {c: 4700 uF, v_rated: 50 V}}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: full-bridge}
    modulator: {m_max: 95 %}
""",
)

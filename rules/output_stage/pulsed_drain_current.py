"""Largest drain current of one device against its pulsed rating.

At the crest of a clipped signal into the lowest load a switch carries the load current and
part of the ripple on it.  The pulsed rating is set by bond wires and safe operating area;
beyond it the data sheet promises nothing.

It is meant for music into a working load; what a short circuit adds is judged by
trip-below-destruction.  The lowest load is the stated minimum of the loudspeaker, or four
fifths of its rated impedance.  Devices in parallel are taken to share evenly, which needs a
symmetrical layout.  First fixes: a level limiter, a larger device, a higher minimum load.
The limits: beyond 100 % is beyond an absolute rating; 80 % leaves room for uneven sharing
and for a hot device.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..hazards import FIRST_POWER_UP


def figure(i_leg_peak: float, parallel: float, i_dm: float) -> float:
    """Largest current of one device over its pulsed rating."""
    return i_leg_peak / (parallel * i_dm)


CHECK = Check(
    title="Peak drain current vs. pulsed rating",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="i_leg_peak / (parallel i_dm)",
    sentence="Peak drain current {i_dm:*figure} per device ({i_leg_peak} per leg); pulsed rating"
    " {i_dm} ({figure:%}).",
    inputs={
        "i_leg_peak": Input("i_leg_peak"),
        "parallel": Input("output_stage.parallel"),
        "i_dm": Input("output_stage.device.i_dm"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtMost(
        critical="100 %",
        minor="80 %",
        basis={
            "critical": derivation("absolute maximum rating of the device"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever(
            "output_stage.device.i_dm",
            ("20 A", "30 A", "40 A", "60 A", "80 A", "100 A", "150 A", "200 A"),
        ),
        Lever("output_stage.parallel", ("2", "3", "4")),
    ),
    sources=(derivation("load current and ripple through the conducting switch"),),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {"i_leg_peak": "8.842 A", "parallel": 1.0, "i_dm": "60 A"},
            "14.74 %",
            "computed: 50 V at depth 0.95 into 6.4 ohm with half of 2.841 A of ripple, simulated",
        ),
        Case(
            {"i_leg_peak": "30 A", "parallel": 2.0, "i_dm": "20 A"},
            "75 %",
            "derived: two devices share 30 A evenly",
        ),
    ),
    topic=("output_stage.device",),
    asked_from="production",
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, devices: discrete, device: {i_dm: 12 A}}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 0.47 uF}, c_ground: none}
    loudspeaker: {z_rated: 4 ohm, z_min: 3.4 ohm}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, devices: discrete, device: {i_dm: 60 A}}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 0.47 uF}, c_ground: none}
    loudspeaker: {z_rated: 4 ohm, z_min: 3.4 ohm}
""",
)

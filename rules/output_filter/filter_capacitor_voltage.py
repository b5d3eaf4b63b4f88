"""Voltage across the filter capacitor at the load.

The capacitor sees what the load sees, and in a half-bridge on a single supply half the
rail besides: its output swings from ground to the rail. In a full bridge the whole swing
lies across it, of either sign. A filter that peaks at the top of the band lifts the
voltage there. Film capacitors carry this as alternating voltage, and their permitted
alternating voltage falls with frequency; ceramic ones lose capacitance long before they
fail. A capacitor beyond its rating fails short, across the load or the rail. The carrier
adds one or two percent and is left out. Cure: the next rating; a 63 V part costs what a
50 V part costs.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.lc import ladder_gain
from ..formulas.maths import larger
from ..hazards import CAPACITOR


def figure(
    v_ideal: float,
    v_swing: float,
    topology: str,
    rails: str,
    band_high: float,
    l_total: float,
    c_total: float,
    load_high: float,
    v_rated: float,
) -> float:
    """Peak voltage across the capacitor over its rating."""
    gain = ladder_gain(
        band_high, l_total, c_total, load_high, 0 * load_high, 0 * l_total, 0 * c_total
    )
    lifted = v_ideal * larger(gain, 1)
    resting = v_swing / 2 if topology == "half-bridge" and rails == "single" else 0 * v_swing
    return (resting + lifted) / v_rated


CHECK = Check(
    title="Filter capacitor voltage vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="(resting + v_ideal times the gain of l_total, c_total, load_high at band_high where"
    " that is above 1) / v_rated; resting = v_swing/2 for topology half-bridge with rails"
    " single, else 0",
    sentence="Capacitor across the load sees {v_rated:*figure}; rated {v_rated} ({figure:%}).",
    inputs={
        "v_ideal": Input("v_ideal"),
        "v_swing": Input("v_swing"),
        "topology": Input("output_stage.topology"),
        "rails": Input("supply.rails"),
        "band_high": Input("band_high"),
        "l_total": Input("l_total"),
        "c_total": Input("c_total"),
        "load_high": Input("load_high"),
        "v_rated": Input("filter.c_across.v_rated"),
    },
    applies={"filter_kind": "lc"},
    limits=AtMost(
        critical="1",
        minor="0.8",
        basis={"critical": derivation("rated voltage of the part"), "minor": COMMON_PRACTICE},
    ),
    levers=(
        Lever(
            "filter.c_across.v_rated",
            ("16 V", "25 V", "35 V", "50 V", "63 V", "100 V", "160 V", "250 V", "400 V"),
        ),
    ),
    cautions=(CAPACITOR,),
    sources=(
        derivation("terminal voltages of each topology"),
        Source(
            "SB Electronics, film capacitor terminology",
            "web page: the allowed voltage falls with frequency by self-heating",
        ),
    ),
    cases=(
        Case(
            {
                "v_ideal": "12 V",
                "v_swing": "24 V",
                "topology": "half-bridge",
                "rails": "single",
                "band_high": "20 kHz",
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "load_high": "4 ohm",
                "v_rated": "24 V",
            },
            gives="1",
            origin="computed: node equations in time, output from 0 to the 24 V rail",
        ),
        Case(
            {
                "v_ideal": "25 V",
                "v_swing": "50 V",
                "topology": "half-bridge",
                "rails": "split",
                "band_high": "20 kHz",
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "load_high": "8 ohm",
                "v_rated": "50 V",
            },
            gives="0.59648",
            origin="computed: node equations with matrices, +1.532 dB at 20 kHz into 8 ohm",
        ),
    ),
    topic=("filter.c_across",),
    asked_from="production",
    peaks_inside=("filter.inductor.l", "filter.c_across.c", "filter.c_ground.c"),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {inductor: {l: 22 uH}, c_across: {c: 680 nF, v_rated: 16 V, dielectric: polyester}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {inductor: {l: 22 uH}, c_across: {c: 470 nF, v_rated: 400 V, dielectric: polyester}}
""",
)

"""Peak of the filter with nothing connected.

Without a load only the resistance in the path damps the filter: 22 uH, 0.68 uF and 30
milliohm resonate at 41 kHz with a gain of 190. A few millivolts of noise at the corner,
an ultrasonic input or a nervous loop then drive amperes through the switches and many
times the rail across the capacitor; unloaded stages have been destroyed that way, and
integrated ones run hot. Every L-C output does it, so the
check asks only where running without load is a stated use. The usual 10 ohm with 100 nF
does not help: it leaves 30 dB and works against radio frequency only. Cure: a series R-C
whose capacitor is as large as the filter's, a loop around the filter, or a low-pass at
the input below two thirds of the corner.
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
from ..derived.filter import R_PATH_AT_MOST
from ..formulas.lc import open_load_gain
from ..formulas.maths import log10
from ..hazards import STAGE_LOST


def figure(
    l_total: float, c_total: float, r_path: float, r_damper: float, c_damper: float
) -> float:
    """Largest gain without load, in dB."""
    return 20 * log10(open_load_gain(l_total, c_total, r_path, r_damper, c_damper))


CHECK = Check(
    title="Filter peak without load",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="20 log10 of the largest gain of l_total with r_path, c_total and, across it,"
    " r_damper in series with c_damper",
    sentence="Filter peaks by {figure} without load ({l_total}, {c_total}).",
    inputs={
        "l_total": Input("l_total"),
        "c_total": Input("c_total"),
        "r_path": R_PATH_AT_MOST,
        "r_damper": Input("r_damper"),
        "c_damper": Input("c_damper"),
    },
    applies={
        "filter_kind": "lc",
        "filter.second_stage": "none",
        "filter_in_loop": "no",
        "open_load": "yes",
    },
    limits=AtMost(
        major="20 dB",
        minor="12 dB",
        basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE},
    ),
    levers=(Lever("filter.damper.c", "E6"), Lever("filter.damper.r", "E12")),
    cautions=(STAGE_LOST,),
    sources=(
        derivation("undamped resonance: gain sqrt(l/c)/r"),
        Source("e2e.ti.com thread 50646", "hot without a load: the load is part of the filter"),
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 29: 30 to 60 kHz input resonates the filter",
        ),
    ),
    cases=(
        Case(
            {
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "r_path": "30 mohm",
                "r_damper": "1 ohm",
                "c_damper": "0 F",
            },
            gives="45.56 dB",
            origin="computed: node equations on a fine grid of frequencies",
        ),
        Case(
            {
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "r_path": "30 mohm",
                "r_damper": "10 ohm",
                "c_damper": "100 nF",
            },
            gives="29.08 dB",
            origin="computed: node equations on a fine grid of frequencies",
            tolerance=0.005,
        ),
    ),
    topic=("open_load",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    open_load: yes
    rated_power: 20 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: integrated, device: {r_ds_on: 70 mohm}}
    lead: none
    modulator: {feedback: before-filter}
    filter: {inductor: {l: 10 uH, dcr: 20 mohm}, c_across: {c: 680 nF, dielectric: polypropylene}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    open_load: yes
    rated_power: 20 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: integrated, device: {r_ds_on: 70 mohm}}
    lead: none
    modulator: {feedback: before-filter}
    filter:
      inductor: {l: 10 uH, dcr: 20 mohm}
      c_across: {c: 680 nF, dielectric: polypropylene}
      damper: {r: 6R8, c: 1 uF}
""",
)

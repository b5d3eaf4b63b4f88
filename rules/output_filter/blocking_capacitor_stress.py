"""Voltage of the capacitor in series with the load.

It rests at half the rail and carries the bass besides: the load current builds up an
alternating voltage that is largest at the lowest frequency. At its own corner that is
as large as the load's voltage; more than the rail it never sees, because the switch node
stays between ground and rail. With the highest rail and full level the sum must stay
below the rated voltage; electrolytic capacitors vent when they do not, and one that
fails short puts half the rail on the voice coil. 1.25 times the resting voltage is the
trade's minimum, which the limit of 0.8 reproduces where bass is small. Watch the polarity:
the positive end belongs to the stage. Cure: the next rated voltage.
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
from ..formulas.maths import PI, smaller
from ..hazards import CAPACITOR


def figure(
    v_rail_high: float, i_rated_peak: float, band_low: float, c_block: float, v_rated: float
) -> float:
    """Resting voltage and bass swing, at most the rail, over the rating."""
    swing = smaller(i_rated_peak / (2 * PI * band_low * c_block), v_rail_high / 2)
    return (v_rail_high / 2 + swing) / v_rated


CHECK = Check(
    title="Output capacitor voltage vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="(v_rail_high/2 + i_rated_peak/(2 pi band_low c_block), at most v_rail_high) / v_rated",
    sentence="Output capacitor sees {v_rated:*figure} (half of {v_rail_high} plus bass); rated"
    " {v_rated} ({figure:%}).",
    inputs={
        "v_rail_high": Input("v_rail_high"),
        "i_rated_peak": Input("i_rated_peak"),
        "band_low": Input("band_low"),
        "c_block": Input("filter.c_block.c"),
        "v_rated": Input("filter.c_block.v_rated"),
    },
    applies={"output_stage.topology": "half-bridge", "supply.rails": "single"},
    limits=AtMost(
        critical="1",
        minor="0.8",
        basis={
            "critical": derivation("rated voltage of the part"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("filter.c_block.v_rated", ("10 V", "16 V", "25 V", "35 V", "50 V", "63 V")),),
    cautions=(CAPACITOR,),
    sources=(derivation("half the rail and the reactance at the lowest frequency"),),
    cases=(
        Case(
            {
                "v_rail_high": "24 V",
                "i_rated_peak": "2 A",
                "band_low": "39.79 Hz",
                "c_block": "1000 uF",
                "v_rated": "20 V",
            },
            gives="1",
            origin="computed: network in time at its corner, 12 V and 8 V peak",
        ),
        Case(
            {
                "v_rail_high": "12 V",
                "i_rated_peak": "1.225 A",
                "band_low": "200 Hz",
                "c_block": "470 uF",
                "v_rated": "10 V",
            },
            gives="0.8074",
            origin="published: XMOS, iPod Dock note 1.0: 12 V, 3 W, EEU-FM1A471 of 470 uF and, "
            "by its code 1A, 10 V; 200 Hz assumed, sum by hand",
            tolerance=2e-3,
        ),
    ),
    topic=("filter.c_block",),
    asked_from="production",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    band: 40 Hz .. 20 kHz
    rated_power: 12 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {c_block: {c: 1000 uF, v_rated: 16 V}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    band: 40 Hz .. 20 kHz
    rated_power: 12 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {c_block: {c: 1000 uF, v_rated: 35 V}}
""",
)

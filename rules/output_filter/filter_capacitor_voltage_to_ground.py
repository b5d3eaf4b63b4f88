"""Voltage across the filter capacitors to ground.

Each terminal of a bridge on a single supply rests at half the rail and swings from ground
to the rail; on a split supply it swings from one rail to the other about ground. The
capacitor from the terminal to ground sees the full rail in both cases, although the load
between the terminals sees no direct voltage at all. Ceramic parts are usual here and lose
much of their capacitance at their rated voltage; that is judged by the corner, which takes
what is left at the working voltage. Here the rating itself counts: beyond it the
capacitor fails short and puts a rail on the loudspeaker.
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
from ..hazards import CAPACITOR, also


def figure(v_rail_high: float, v_rated: float) -> float:
    """Peak to ground over the rating: one rail, whether single or split."""
    return v_rail_high / v_rated


CHECK = Check(
    title="Voltage of capacitors to ground vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="v_rail_high / v_rated",
    sentence="Capacitors to ground see {v_rail_high}; rated {v_rated} ({figure:%}).",
    inputs={
        "v_rail_high": Input("v_rail_high"),
        "v_rated": Input("filter.c_ground.v_rated"),
    },
    applies={"filter.c_ground": "fitted"},
    limits=AtMost(
        critical="1",
        minor="0.8",
        basis={"critical": derivation("rated voltage of the part"), "minor": COMMON_PRACTICE},
    ),
    levers=(
        Lever(
            "filter.c_ground.v_rated",
            ("16 V", "25 V", "35 V", "50 V", "63 V", "100 V", "160 V", "250 V"),
        ),
    ),
    cautions=(also(CAPACITOR, "A shorted one puts the rail on the loudspeaker."),),
    sources=(derivation("a terminal reaches each rail of its leg, and no more"),),
    cases=(
        Case(
            {"v_rail_high": "24 V", "v_rated": "24 V"},
            gives="1",
            origin="computed: node equations in time, each terminal from 0 to the rail",
        ),
        Case(
            {"v_rail_high": "30 V", "v_rated": "50 V"},
            gives="0.6",
            origin="common practice: 50 V parts on a bridge of 30 V; ratio by hand",
        ),
    ),
    topic=("filter.c_ground",),
    asked_from="production",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 30 V}
channels:
  main:
    output_stage: {topology: full-bridge}
    filter: {c_ground: {c: 680 nF, v_rated: 25 V, dielectric: ceramic-class-2}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 30 V}
channels:
  main:
    output_stage: {topology: full-bridge}
    filter: {c_ground: {c: 680 nF, v_rated: 50 V, dielectric: ceramic-class-2}}
""",
)

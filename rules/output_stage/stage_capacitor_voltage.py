"""Voltage of the small capacitors of the stage against their ratings.

The capacitor close to the switches sits across the whole leg, both rails of a split
supply, and that of a snubber sees the node swing as far.  The one of a damper at the output
sees the load's peak, or the whole swing where it goes to ground on a single supply.  A
capacitor of 50 V that was meant for one rail of 35 V fails as a short, across the supply.

The figure is the largest of the ratios of those that are fitted; a rating that is not stated
leaves its ratio out, which can fail the check and never pass it.  Ringing is left out: class
2 ceramics and films are used up to four fifths.  First fix: the next rated voltage.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..derived.ways import left_out
from ..formulas.maths import larger
from ..hazards import CAPACITOR

RATED = ("25 V", "50 V", "100 V", "200 V", "250 V", "400 V", "630 V")
UNRATED = left_out(float("inf"), "a capacitor of unknown rating")


def figure(
    v_static_peak: float, v_damper: float, v_c_local: float, v_snubber: float, v_r_damper: float
) -> float:
    """The largest share of a rating."""
    leg = larger(v_static_peak / v_c_local, v_static_peak / v_snubber)
    return larger(leg, v_damper / v_r_damper)


_BASE = """
supply: {source: dc-source, rails: split, v_rail: 35 V, sinks_current: yes}
channels:
  main:
    output_stage: {topology: half-bridge, devices: discrete, c_local: 1 uF, v_c_local: RATING}
    filter: {type: lc, damper: none}
"""

CHECK = Check(
    title="Local, snubber and damper capacitor voltage vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="largest of v_static_peak / v_c_local, v_static_peak / v_snubber and"
    " v_damper / v_r_damper",
    sentence="Stage capacitors see {figure:% of} rating ({v_static_peak} leg, {v_damper} damper;"
    " rated: local {v_c_local}, snubber {v_snubber}, damper {v_r_damper}).",
    inputs={
        "v_static_peak": Input("v_static_peak"),
        "v_damper": Input("v_damper"),
        "v_c_local": Input("output_stage.v_c_local", default=UNRATED),
        "v_snubber": Input("snubber_rating", default=UNRATED),
        "v_r_damper": Input("damper_rating", default=UNRATED),
    },
    limits=AtMost(
        critical="1",
        minor="0.8",
        basis={"critical": derivation("rated voltage of the part"), "minor": COMMON_PRACTICE},
    ),
    levers=(
        Lever("output_stage.v_c_local", RATED),
        Lever("output_stage.snubber.v_rated", RATED),
        Lever("filter.damper.v_rated", RATED),
    ),
    sources=(derivation("Kirchhoff: leg, snubber and damper between the rails"),),
    cautions=(CAPACITOR,),
    cases=(
        Case(
            {
                "v_static_peak": "70 V",
                "v_damper": "35 V",
                "v_c_local": "50 V",
                "v_snubber": "200 V",
                "v_r_damper": "100 V",
            },
            "1.4",
            "derived: two rails of 35 V on 50 V",
        ),
        Case(
            {
                "v_static_peak": "70 V",
                "v_damper": "35 V",
                "v_c_local": "100 V",
                "v_snubber": "100 V",
                "v_r_damper": "400 V",
            },
            "0.7",
            "computed: nodal solution of a half-bridge on two rails of 35 V, 70 V on 100 V",
        ),
    ),
    topic=("output_stage.c_local", "output_stage.snubber", "filter.damper"),
    fails=_BASE.replace("RATING", "50 V"),
    passes=_BASE.replace("RATING", "100 V"),
)

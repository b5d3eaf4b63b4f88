"""Rise of the fault current through the inductor.

The inductor is what gives the over-current protection time: behind it a fault rises by
the voltage over the inductance, before it by nothing but the stray inductance of the loop.
A bridge whose terminal touches ground puts the whole swing of a node across one inductor (a
short across its load rises half as fast); a half bridge into a shorted lead puts half of
its swing there. What counts is how far the current runs on during the response of the protection.
If it runs on by half of the trip the inductor is nearly saturated by then and the true
current is higher still; whether the switches survive is judged elsewhere. Faults before
the inductor need a protection that acts within a microsecond on the switch itself.
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
from ..hazards import FIRST_POWER_UP


def figure(n_legs: float, v_swing: float, l_leg: float, t_response: float, i_trip: float) -> float:
    """Current gained during the response over the trip current."""
    return n_legs * v_swing / 2 / l_leg * t_response / i_trip


CHECK = Check(
    title="Fault current rise after the trip vs. trip current",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="n_legs v_swing / 2 / l_leg t_response / i_trip",
    sentence="Fault current rises by {i_trip:*figure} within {t_response} of the {i_trip} trip"
    " ({l_leg}).",
    inputs={
        "n_legs": Input("n_legs"),
        "v_swing": Input("v_swing"),
        "l_leg": Input("filter.inductor.l"),
        "t_response": Input("output_stage.over_current.t_response"),
        "i_trip": Input("output_stage.over_current.i_trip"),
    },
    applies={"filter_kind": "lc"},
    limits=AtMost(
        major="1", minor="0.5", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(
        Lever("output_stage.over_current.t_response", "50 ns"),
        Lever("filter.inductor.l", "E6"),
    ),
    cautions=(FIRST_POWER_UP,),
    sources=(
        derivation("slope of an inductor's current"),
        Source(
            "M. Wulf, 300 W Class D amplifier, documentation V. 1.0, 2019",
            "section 3: stages of a first prototype destroyed in short-circuit tests",
        ),
    ),
    cases=(
        Case(
            {
                "n_legs": 1.0,
                "v_swing": "100 V",
                "l_leg": "22 uH",
                "t_response": "500 ns",
                "i_trip": "12 A",
            },
            gives="0.094697",
            origin="computed: slope of 2.273 A/us by numerical integration, by hand to the ratio",
        ),
        Case(
            {
                "n_legs": 2.0,
                "v_swing": "48 V",
                "l_leg": "15 uH",
                "t_response": "500 ns",
                "i_trip": "10 A",
            },
            gives="0.16",
            origin="published: M. Wulf, docu.pdf and schematic 2019: 48 V, 15 uH, 500 ns, 10 A; "
            "by hand",
        ),
    ),
    topic=("output_stage.over_current.t_response",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 50 V}
channels:
  main:
    output_stage: {topology: full-bridge, over_current: {i_trip: 10 A, t_response: 2 us}}
    filter: {inductor: {l: 8.2 uH}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    output_stage: {topology: half-bridge, over_current: {i_trip: 23 A, t_response: 500 ns}}
    filter: {inductor: {l: 22 uH}}
""",
)

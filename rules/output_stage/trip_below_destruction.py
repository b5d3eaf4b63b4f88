"""Largest current in a short circuit against the pulsed rating of the device.

From the moment the current crosses the threshold until the switches are off it keeps
rising: V / L times the response time.  With 50 V on 22 uH that is 2.3 A in a microsecond;
once the inductor saturates, several times as much.  The top must stay below the pulsed
drain current.

A half-bridge drives a shorted lead with half its swing; a bridge whose terminal touches
ground or a rail with all of it, through one inductor.  The inductance is what is left of it
at the trip current, at most at twice the saturation current.  A short ahead of the inductor
is limited by the inductance of the loop alone and needs sensing of the switch voltage
within a microsecond: no threshold behind the inductor helps.  First fixes: a faster
comparator, a lower trip, an inductor that saturates later, a larger device.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtMost,
    Case,
    Check,
    Constant,
    Input,
    Lever,
    derivation,
)
from ..formulas.maths import clip
from ..formulas.ringing import inductance_at
from ..hazards import FIRST_POWER_UP


def figure(
    i_trip: float,
    t_response: float,
    v_swing: float,
    n_legs: float,
    l: float,  # noqa: E741
    i_sat: float,
    drop: float,
    parallel: float,
    i_dm: float,
    most: float,
) -> float:
    """Top of the short-circuit current over the pulsed rating."""
    deep = i_sat * clip(i_trip / i_sat, 0.0, most)
    slope = n_legs * v_swing / 2 / inductance_at(l, deep, i_sat, drop)
    return (i_trip + slope * t_response) / (parallel * i_dm)


SLOPE = derivation("V / L through one inductor: half the swing, for a bridge the whole")

CHECK = Check(
    title="Short-circuit current vs. pulsed rating",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="(i_trip + n_legs v_swing / 2 t_response / left) / (parallel i_dm), "
    "left = l / (1 + drop / (1 - drop) (i_trip / i_sat)^2), the ratio at most `most`",
    sentence="Fault current reaches {i_dm:*figure} per device ({i_trip} trip, {t_response},"
    " {v_swing}, {l}); pulsed rating {i_dm} ({figure:%}).",
    inputs={
        "i_trip": Input("output_stage.over_current.i_trip"),
        "t_response": Input("output_stage.over_current.t_response"),
        "v_swing": Input("v_swing"),
        "n_legs": Input("n_legs"),
        "l": Input("filter.inductor.l"),
        "i_sat": Input(
            "i_sat_hot",
            default=Assumption(
                "1 MA", "favourable", derivation("an inductor that does not saturate")
            ),
        ),
        "drop": Input(
            "filter.inductor.i_sat_drop", default=Assumption("30 %", "neutral", COMMON_PRACTICE)
        ),
        "parallel": Input("output_stage.parallel"),
        "i_dm": Input("output_stage.device.i_dm"),
        "most": Constant("2", "saturation beyond which the curve is not followed", COMMON_PRACTICE),
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
        Lever("output_stage.over_current.i_trip", "0.5 A"),
        Lever("output_stage.over_current.t_response", "50 ns"),
    ),
    sources=(SLOPE,),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {
                "i_trip": "14.4 A",
                "t_response": "500 ns",
                "v_swing": "100 V",
                "n_legs": 1.0,
                "l": "22 uH",
                "i_sat": "1 MA",
                "drop": "30 %",
                "parallel": 1.0,
                "i_dm": "60 A",
            },
            "25.89 %",
            "computed: half-bridge on 50 V simulated into a short: 2.273 A in a "
            "microsecond, top 15.54 A",
        ),
        Case(
            {
                "i_trip": "10 A",
                "t_response": "1 us",
                "v_swing": "25.2 V",
                "n_legs": 2.0,
                "l": "10 uH",
                "i_sat": "1 MA",
                "drop": "30 %",
                "parallel": 1.0,
                "i_dm": "50 A",
            },
            "25.04 %",
            "derived: bridge terminal to ground, 2.52 A in a microsecond",
        ),
        Case(
            {
                "i_trip": "30 A",
                "t_response": "1 us",
                "v_swing": "100 V",
                "n_legs": 2.0,
                "l": "10 uH",
                "i_sat": "1 MA",
                "drop": "30 %",
                "parallel": 2.0,
                "i_dm": "50 A",
            },
            gives="40 %",
            origin="derived: bridge terminal to ground, 10 A in a microsecond, 40 A on two devices",
        ),
    ),
    topic=("output_stage.over_current",),
    asked_from="production",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 48 V}
channels:
  main:
    output_stage:
      topology: full-bridge
      devices: discrete
      over_current: {i_trip: 20 A, t_response: 2 us}
      device: {i_dm: 25 A}
    filter: {type: lc, inductor: {l: 10 uH}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 48 V}
channels:
  main:
    output_stage:
      topology: full-bridge
      devices: discrete
      over_current: {i_trip: 16 A, t_response: 500 ns}
      device: {i_dm: 52 A}
    filter: {type: lc, inductor: {l: 15 uH}}
""",
)

"""Peak voltage across an open switch, with ringing, against its rating.

Each turn-off leaves current in the inductance of the power loop, which rings with the
capacitance of the open switch on top of the rail.  A loop of 10 nH that gives up 10 A into
300 pF would rise by 58 V if nothing damped it.

A measured overshoot is worth more than any formula: state it as ``output_stage.v_overshoot``
with ``from: measured`` (probe with a spring tip, full bandwidth, at the switch itself).  Without
it the figure rests on the loop inductance and the edge, or on a quarter of the swing; such a
placeholder never makes this finding critical.  First fixes: a shorter loop with a film or
ceramic capacitor at the switches, a slower turn-on, a snubber.  Short peaks may come nearer
to the rating than steady voltage, hence one milder limit at 90 %.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..hazards import FIRST_POWER_UP


def figure(v_static_peak: float, v_overshoot: float, v_dss: float) -> float:
    """Peak across an open switch over its rating."""
    return (v_static_peak + v_overshoot) / v_dss


CHECK = Check(
    title="Switch voltage with ringing vs. rating",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="(v_static_peak + v_overshoot) / v_dss",
    sentence="Switch voltage with ringing {v_dss:*figure} ({v_static_peak} plus {v_overshoot});"
    " rated {v_dss} ({figure:%}).",
    inputs={
        "v_static_peak": Input("v_static_peak"),
        "v_overshoot": Input("v_overshoot"),
        "v_dss": Input("output_stage.device.v_dss"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtMost(
        critical="100 %",
        minor="90 %",
        basis={
            "critical": derivation("absolute maximum rating of the device"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever(
            "output_stage.device.v_dss",
            ("40 V", "60 V", "80 V", "100 V", "150 V", "200 V", "250 V", "300 V", "500 V"),
        ),
        Lever("output_stage.l_loop", "0.5 nH"),
    ),
    sources=(derivation("voltages in series across the open switch; L-C loop of the leg"),),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {"v_static_peak": "114 V", "v_overshoot": "15 V", "v_dss": "150 V"},
            "86 %",
            "computed: rails of 50 V + 10 % in series, 4 V of pumping, 15 V of ringing: "
            "129 V, summed by hand",
        ),
        Case(
            {"v_static_peak": "55 V", "v_overshoot": "12 V", "v_dss": "80 V"},
            "83.75 %",
            "computed: bridge on 50 V + 10 % with 12 V of ringing: 67 V, summed by hand",
        ),
    ),
    topic=("output_stage.device",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 50 V, sinks_current: yes}
channels:
  main:
    output_stage:
      topology: full-bridge
      devices: discrete
      v_overshoot: {value: 14 V, from: measured}
      device: {v_dss: 60 V}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 50 V, sinks_current: yes}
channels:
  main:
    output_stage:
      topology: full-bridge
      devices: discrete
      v_overshoot: {value: 14 V, from: measured}
      device: {v_dss: 80 V}
""",
)

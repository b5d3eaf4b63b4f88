"""Snubber resistor against the impedance of the ringing loop.

A series R-C across the node takes the ringing out only if its resistor is near the
characteristic impedance of the loop, sqrt(L / C).  Much smaller, the capacitor just lowers
the frequency; much larger, the loop does not see it.

The figure says how far apart the two are, whichever is larger.  Loop inductance and output
capacitance are rarely known well, so a factor of two passes.  Better than any calculation:
measure the ringing frequency, add a capacitor across the node until it halves; the
capacitance present is a third of the one added, and the inductance follows from the
frequency.  First fix: the nearest E24 value of sqrt(L / C), then look at the waveform.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.maths import larger
from ..formulas.ringing import ringing_impedance


def figure(r: float, l_loop: float, c_oss: float, parallel: float) -> float:
    """Ratio of snubber resistor and loop impedance, whichever is larger on top."""
    z = ringing_impedance(l_loop, parallel * c_oss)
    return larger(r / z, z / r)


CHECK = Check(
    title="Snubber resistor vs. loop impedance",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="larger of r / z and z / r, z = sqrt(l_loop / (parallel c_oss))",
    sentence="Snubber resistor {r} is a factor of {figure} off the impedance of the {l_loop} loop.",
    inputs={
        "r": Input("output_stage.snubber.r"),
        "l_loop": Input("output_stage.l_loop"),
        "c_oss": Input("c_oss_swing"),
        "parallel": Input("output_stage.parallel"),
    },
    applies={"output_stage.devices": "discrete", "output_stage.snubber": "fitted"},
    limits=AtMost(minor="2", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("output_stage.snubber.r", "E24"),),
    sources=(
        derivation("damping of an L-C loop by a series R-C"),
        Source(
            "Analog Devices, RC snubbing for the lab",
            "add capacitance until the ringing frequency halves; no page given",
        ),
    ),
    cases=(
        Case(
            {
                "r": "10 ohm",
                "l_loop": "10 nH",
                "c_oss": "300 pF",
                "parallel": 1.0,
            },
            "1.732",
            "computed: 91.89 MHz halved by 900 pF gives 300 pF, 10 nH, 5.774 ohm",
        ),
        Case(
            {
                "r": "5.774 ohm",
                "l_loop": "10 nH",
                "c_oss": "300 pF",
                "parallel": 1.0,
            },
            "1",
            "derived: resistor at the loop's own impedance",
        ),
        Case(
            {"r": "2 ohm", "l_loop": "10 nH", "c_oss": "300 pF", "parallel": 3.0},
            gives="1.66667",
            origin="derived: 10 nH and 900 pF are 3.3333 ohm, above the resistor",
        ),
    ),
    peaks_inside=("output_stage.snubber.r", "output_stage.l_loop"),
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      l_loop: 10 nH
      snubber: {c: 1 nF, r: 47 ohm}
      device: {q_oss: 30 nC, v_c_oss: 100 V}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      l_loop: 10 nH
      snubber: {c: 1 nF, r: 5.6 ohm}
      device: {q_oss: 30 nC, v_c_oss: 100 V}
""",
)

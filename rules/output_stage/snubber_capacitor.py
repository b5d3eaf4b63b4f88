"""Snubber capacitor against the capacitance that rings.

A snubber damps only what its capacitor can take over.  With a capacitor as large as that of
the open switch 70 % of the overshoot remain, with three to four times as much about 40 %,
with ten times 26 %; the heat in its resistor grows in proportion all the while.

Three to four times is the usual choice.  Less than the switch's own capacitance is hardly a
snubber, so that is where the one limit is, as a minor one: whether the ringing matters
is judged by device-voltage-ringing, and whether the resistor withstands the heat by
snubber-dissipation.  What rings is the small-signal capacitance at the rail, half of the
output charge over the swing.  First fix: three times that, rounded up in the E6 series,
class 1 ceramic, as close to the switches as the local capacitor.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.constants import LEAST_C_OSS
from ..formulas.maths import larger

DAMPING = derivation("differential equation of a stepped L-C with a series R-C across it")


def figure(c: float, c_oss: float, parallel: float, c_least: float) -> float:
    """Snubber capacitor over the capacitance of the open switch."""
    return c / larger(parallel * c_oss, c_least)


CHECK = Check(
    title="Snubber capacitor vs. ringing capacitance",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="c / (parallel c_oss), that at least c_least",
    sentence="Snubber capacitor {c}; ringing capacitance {c:/figure} ({figure:%}).",
    inputs={
        "c": Input("output_stage.snubber.c"),
        "c_oss": Input("c_oss_swing"),
        "parallel": Input("output_stage.parallel"),
        "c_least": LEAST_C_OSS,
    },
    applies={"output_stage.devices": "discrete", "output_stage.snubber": "fitted"},
    limits=AtLeast(minor="1", basis={"minor": DAMPING}),
    levers=(Lever("output_stage.snubber.c", "E6"),),
    sources=(DAMPING,),
    cases=(
        Case(
            {"c": "900 pF", "c_oss": "300 pF", "parallel": 1.0},
            "3",
            "computed: the ringing frequency halves with 900 pF added to 300 pF",
        ),
        Case(
            {"c": "300 pF", "c_oss": "300 pF", "parallel": 2.0},
            "0.5",
            "derived: two devices in parallel ring with twice the capacitance",
        ),
    ),
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      snubber: {c: 100 pF, r: 10 ohm}
      device: {q_oss: 30 nC, v_c_oss: 100 V}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      snubber: {c: 1 nF, r: 5.6 ohm}
      device: {q_oss: 30 nC, v_c_oss: 100 V}
""",
)

"""Pop at switch-on.

A voltage step at the output when the stage starts to switch is heard as a pop.  It is
compared with the sensitivity as if it were a tone of that voltage, which is a rule of
thumb: a step is short, but the ear waits for it.  50 dB at a metre is plainly audible in a
quiet room (minor); 70 dB is as loud as speech at that distance and startles everybody (major).

What to do first: hold the output muted until the input and the output capacitor have
settled, and start switching at half the supply; then cancel the offset.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, derivation
from ..formulas.acoustics import V_SENSITIVITY, network_level


def figure(sensitivity: float, turn_on_step: float, parallel: float, v_reference: float) -> float:
    return network_level(sensitivity, turn_on_step, parallel, v_reference)


CHECK = Check(
    title="Switch-on pop",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="sensitivity + 20 log10(turn_on_step parallel / v_reference)",
    sentence="Switch-on pop {figure} at 1 m ({turn_on_step} step on loudspeakers of"
    " {sensitivity}).",
    inputs={
        "sensitivity": Input("sensitivity_2v83"),
        "turn_on_step": Input("turn_on_step"),
        "parallel": Input("loudspeaker.parallel"),
        "v_reference": V_SENSITIVITY,
    },
    limits=AtMost(
        major="70 dB", minor="50 dB", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    otherwise="a start that mutes until the output capacitor is charged and the offset cancelled",
    sources=(derivation("sensitivity scaled with the voltage"), COMMON_PRACTICE),
    cases=(
        Case(
            {
                "sensitivity": "88 dB",
                "turn_on_step": "50 mV",
                "parallel": 1,
                "v_reference": "2.828427 V",
            },
            gives="52.948 dB",
            origin="computed: sound power of 50 mV in 8 ohm, 88 dB for 1 W",
        ),
        Case(
            {
                "sensitivity": "101 dB",
                "turn_on_step": "28.284 mV",
                "parallel": 2,
                "v_reference": "2.828427 V",
            },
            gives="67.02 dB",
            origin="derived: 40 dB below 2.83 V, plus 6.02 dB for two in phase",
        ),
    ),
    topic=("loudspeaker",),
    fails="""
channels:
  main:
    turn_on_step: 500 mV
    loudspeaker: {z_rated: 8 ohm, sensitivity: 90 dB, sensitivity_basis: 2.83-volt}
""",
    passes="""
channels:
  main:
    turn_on_step: 20 mV
    loudspeaker: {z_rated: 8 ohm, sensitivity: 90 dB, sensitivity_basis: 2.83-volt}
""",
)

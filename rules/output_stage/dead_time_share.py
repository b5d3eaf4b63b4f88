"""Dead time as a share of the switching period.

During the dead time the load current, not the modulator, decides where the switch node
is.  The longer it is against the period, the more of the output is lost and distorted,
and the earlier the modulator runs out of pulse width.  A driver with a fixed dead time made
for motor control (520 ns) eats an eighth of a period of 250 kHz in each half of it.

This is a first, coarse look that needs two numbers; dead-time-distortion says what the
share means for the distortion claimed, and a loop with much gain may live with more.  First
fixes: a driver with adjustable or shorter dead time, a lower carrier.  The limits are
practice: published audio presets of 15 to 45 ns at 400 kHz are 0.6 to 1.8 %, and a design
of 6 % had strong crossover distortion in its author's own simulation.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source


def figure(dead_time: float, carrier: float) -> float:
    """One dead interval over the period."""
    return dead_time * carrier


CHECK = Check(
    title="Dead time vs. period",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="dead_time carrier",
    sentence="Dead time {dead_time}, {figure} of a period at {carrier}.",
    inputs={
        "dead_time": Input("gate_drive.dead_time"),
        "carrier": Input("modulator.carrier"),
    },
    applies={"dead_time_judged": "yes"},
    limits=AtMost(
        major="5 %", minor="3 %", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(
        Lever("gate_drive.dead_time", "5 ns"),
        Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),
    ),
    sources=(
        Source(
            "IRS20124S data sheet PD60240, International Rectifier", "p. 1: presets of 15 to 45 ns"
        ),
        Source(
            "J. Estefania Vilumbrales, thesis, Universidad de Cantabria, 2017",
            "annexes p. 26, figs. B.5 and B.6, simulated: 350 ns at 165 kHz "
            "distorts visibly, 30 ns does not",
        ),
    ),
    cases=(
        Case(
            {"dead_time": "520 ns", "carrier": "150 kHz"},
            "7.8 %",
            "computed: by hand, Group 14, University of Moratuwa, report 2026: 520 ns, 150 kHz",
        ),
        Case(
            {"dead_time": "520 ns", "carrier": "250 kHz"},
            "13 %",
            "published: NBitWonder notebook, entries 011, 015: IRS2004, 520 ns, 250 kHz; by hand",
        ),
    ),
    asked_from="prototype",
    fails="""
channels:
  main:
    output_stage: {devices: discrete}
    gate_drive: {dead_time: 520 ns}
    modulator: {carrier: 250 kHz}
""",
    passes="""
channels:
  main:
    output_stage: {devices: discrete}
    gate_drive: {dead_time: 45 ns}
    modulator: {carrier: 400 kHz}
""",
)

"""Phase margin of the loop with its delay.

A loop that takes its signal at the switch node and rolls off like one integrator at its
crossover has 90 degrees to spare, less what the delay of modulator, driver and switches
takes: 360 degrees times crossover times delay. Below 45 degrees the loop rings on every
step and its noise peaks; below 30 small spreads make it oscillate. The check does not
concern self-oscillating stages, which have no margin by intention, nor a loop that takes
its signal behind the filter: there the filter adds up to 180 degrees that a compensation
must win back, and such a loop is designed against every load and no load by simulation,
not by one formula.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Constant,
    Input,
    Lever,
    derivation,
)
from ..formulas.maths import PI


def figure(loop_crossover: float, loop_delay: float, integrator: float) -> float:
    """Phase left at the crossover."""
    return integrator - 2 * PI * loop_crossover * loop_delay


CHECK = Check(
    title="Phase margin of the loop",
    figure=figure,
    unit="deg",
    each="channel",
    stake="performance",
    formula="integrator - 360 deg loop_crossover loop_delay",
    sentence="Phase margin {figure} ({loop_delay} delay, {loop_crossover} crossover).",
    inputs={
        "loop_crossover": Input("modulator.loop_crossover"),
        "loop_delay": Input("modulator.loop_delay"),
        "integrator": Constant(
            "90 deg",
            "phase margin of an integrator without delay",
            derivation("an integrator lags by 90 of 180 degrees"),
        ),
    },
    applies={
        "modulator.type": ("natural-sampling", "uniform-sampling"),
        "modulator.feedback": "before-filter",
    },
    limits=AtLeast(
        major="30 deg",
        minor="45 deg",
        basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE},
    ),
    levers=(Lever("modulator.loop_crossover", "1 kHz"),),
    sources=(derivation("phase of a pure delay: 2 pi f t"),),
    cases=(
        Case(
            {"loop_crossover": "100 kHz", "loop_delay": "1.25 us"},
            gives="45 deg",
            origin="computed: phase of exp(-s t)/s at the crossover with complex numbers",
        ),
        Case(
            {"loop_crossover": "70 kHz", "loop_delay": "180 ns"},
            gives="85.464 deg",
            origin="derived: 90 - 360 0.07 0.18",
        ),
    ),
    topic=("modulator.loop_delay",),
    fails="""
channels:
  main:
    modulator: {type: natural-sampling, feedback: before-filter, loop_crossover: 100 kHz,
      loop_delay: 2 us}
""",
    passes="""
channels:
  main:
    modulator: {type: natural-sampling, feedback: before-filter, loop_crossover: 70 kHz,
      loop_delay: 200 ns}
""",
)

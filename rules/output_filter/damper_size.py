"""Resistor of the damper against its best value.

A series R-C across the output damps the filter where no load does. For a given capacitor
there is one best resistor: a larger one leaves the filter ringing on its own capacitor, a
smaller one makes the two capacitors one and moves the resonance down. With a capacitor
as large as the filter's the best is 1.73 times the square root of L over C and leaves
9.5 dB; with twice, 1.22 times and 6 dB. The curve is flat: within a factor of two of the
best the peak grows by little. The check asks only where running without load is a stated
use, because elsewhere a small R-C is meant against radio frequency and follows other
rules. Cure: the resistor of the formula, rounded to the E12 series.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    from_memory,
)
from ..formulas.lc import damper_resistance
from ..formulas.maths import larger


def figure(
    damper_r: float, damper_c: float, connection: str, n_legs: float, l_total: float, c_total: float
) -> float:
    """Ratio to the best resistor, whichever way is larger than one."""
    in_series = n_legs if connection == "each-terminal" else 1
    best = damper_resistance(l_total, c_total, damper_c / in_series)
    return larger(damper_r * in_series / best, best / (damper_r * in_series))


CHECK = Check(
    title="Damper resistor vs. optimum",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="ratio of damper_r to sqrt(l_total/c_total) sqrt((1+n)(2+n)/2)/n,"
    " n = damper_c/c_total (connection each-terminal: damper_r times n_legs, damper_c over"
    " n_legs), or its inverse where that is larger",
    sentence="Damper resistor {damper_r} (with {damper_c}) is a factor of {figure} off the"
    " optimum.",
    inputs={
        "damper_r": Input("filter.damper.r"),
        "damper_c": Input("filter.damper.c"),
        "connection": Input("filter.damper.connection"),
        "n_legs": Input("n_legs"),
        "l_total": Input("l_total"),
        "c_total": Input("c_total"),
    },
    applies={"filter_kind": "lc", "filter.second_stage": "none", "open_load": "yes"},
    limits=AtMost(minor="2", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("filter.damper.r", "E12"),),
    sources=(
        from_memory("Erickson and Maksimovic, Fundamentals of Power Electronics, input filters"),
    ),
    cases=(
        Case(
            {
                "damper_r": "9.852 ohm",
                "damper_c": "0.68 uF",
                "connection": "across",
                "n_legs": 1.0,
                "l_total": "22 uH",
                "c_total": "0.68 uF",
            },
            gives="1",
            origin="computed: numerical search for the lowest peak, 1.732 sqrt(l/c)",
        ),
        Case(
            {
                "damper_r": "4.926 ohm",
                "damper_c": "1.36 uF",
                "connection": "each-terminal",
                "n_legs": 2.0,
                "l_total": "22 uH",
                "c_total": "0.68 uF",
            },
            gives="1",
            origin="derived: two dampers to ground are in series for the load",
        ),
    ),
    topic=("open_load",),
    fails="""
channels:
  main:
    open_load: yes
    output_stage: {topology: half-bridge}
    filter:
      inductor: {l: 22 uH}
      c_across: {c: 680 nF, dielectric: polypropylene}
      damper: {r: 47 ohm, c: 680 nF}
""",
    passes="""
channels:
  main:
    open_load: yes
    output_stage: {topology: half-bridge}
    filter:
      inductor: {l: 22 uH}
      c_across: {c: 680 nF, dielectric: polypropylene}
      damper: {r: 10 ohm, c: 680 nF}
""",
)

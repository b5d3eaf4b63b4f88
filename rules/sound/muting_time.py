"""Muting time against the settling of the input.

At switch-on the coupling capacitor charges through the input resistance; until it has
settled the output carries the rest of it, and unmuting then pops.  Five time constants
leave less than one percent.

What to do first: a longer mute, or a smaller coupling capacitor where the band allows it.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation


def figure(mute_time: float, r_in: float, c_in: float) -> float:
    return mute_time / (r_in * c_in)


CHECK = Check(
    title="Muting time vs. input settling",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="mute_time / (r_in c_in)",
    sentence="Muting lasts {mute_time}, {figure} time constants of the input ({r_in}, {c_in}).",
    inputs={
        "mute_time": Input("signal.mute_time"),
        "r_in": Input("signal.r_in"),
        "c_in": Input("signal.c_in"),
    },
    limits=AtLeast(minor="5", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("signal.mute_time", "50 ms"),),
    sources=(derivation("exp(-5) = 0.7 % of the step is left"), COMMON_PRACTICE),
    cases=(
        Case(
            {"mute_time": "100 ms", "r_in": "20 kohm", "c_in": "1 uF"},
            gives="5",
            origin="computed: numerical charging, 0.67 % left after 100 ms, as of exp(-5)",
        ),
        Case(
            {"mute_time": "22 ms", "r_in": "10 kohm", "c_in": "2.2 uF"},
            gives="1",
            origin="derived: 36.8 % left after one time constant",
        ),
    ),
    topic=("signal.mute_time",),
    fails="signal: {mute_time: 50 ms, r_in: 22 kohm, c_in: 2.2 uF}",
    passes="signal: {mute_time: 400 ms, r_in: 22 kohm, c_in: 2.2 uF}",
)

"""Ripple of the source in the output, against the distortion claimed.

Without feedback a class-D stage multiplies its output by the rail: a ripple of a share r
of the rail puts two sidebands of r/2 beside a tone, together r / root 2. Feedback divides
them by one plus the loop gain near the tone. The figure sets that against the THD+N that
the product claims at 1 kHz, where the sidebands of mains or converter ripple are counted.

It asks for the ripple of the source itself, peak to peak; a pack that is the rail has
none. What the music makes of the rail is judged as rail ripple. With a carrier whose
amplitude follows the rail the check does not apply: how well it follows is a matter of
the circuit. Hum at idle is another thing: a bridge and equal rails cancel it.

Above the claim is major: the ripple alone uses it up. Above half of it minor, since
dead time and noise want their part (common practice).
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation


def figure(v_ripple: float, v_rail: float, loop_gain: float, thd: float) -> float:
    share = v_ripple / (2 * v_rail)
    return share / (2**0.5 * (1 + loop_gain)) / thd


CHECK = Check(
    title="Distortion from source ripple vs. claim",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="v_ripple / (2 v_rail) / (root 2 (1 + loop_gain)) / thd",
    sentence="Source ripple {v_ripple} on {v_rail} makes {thd:*figure} distortion; claimed {thd}"
    " ({loop_gain:?no loop gain|loop gain #} at 1 kHz).",
    inputs={
        "v_ripple": Input("supply.ripple"),
        "v_rail": Input("v_rail_low"),
        "loop_gain": Input("loop_gain_1k"),
        "thd": Input("claims.thd"),
    },
    applies={"rail_feed": ("source", "converter"), "modulator.feed_forward": "no"},
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={
            "major": derivation("the ripple alone is more than the claim"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("supply.ripple", "5 mV"),),
    sources=(
        Source(
            "International Rectifier, class-D audio tutorial, 2003",
            "comparison with class AB, no page given: gain proportional to the rail, 0 dB",
        ),
        derivation("spectrum of (1 + r cos w1 t) sin w2 t: two lines of r/2"),
    ),
    cases=(
        Case(
            {"v_ripple": "5 V", "v_rail": "50 V", "loop_gain": 0, "thd": "1 %"},
            gives="3.53553",
            origin="computed: spectrum of the product of tone and rail, 5 % gives 3.536 %",
        ),
        Case(
            {"v_ripple": "5 V", "v_rail": "50 V", "loop_gain": 100, "thd": "0.1 %"},
            gives="0.350053",
            origin="computed: spectrum, 5 % ripple with 40 dB of loop gain gives 0.0350 %",
        ),
    ),
    topic=("claims.thd",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V, ripple: 1 V}
channels:
  main:
    output_stage: {topology: full-bridge}
    modulator: {feedback: none, feed_forward: no}
claims: {thd: 0.1 %}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V, ripple: 100 mV}
channels:
  main:
    output_stage: {topology: full-bridge}
    modulator: {feedback: after-filter, loop_crossover: 100 kHz, loop_order: 1, loop_corner: 1 kHz,
      feed_forward: no}
claims: {thd: 0.1 %}
""",
)

"""Corner of a series capacitor against the resonance of the tweeter behind it.

A capacitor in series with a tweeter is a first-order high-pass: 6 dB an octave, which
holds the excursion just constant above the resonance and no more.  A corner at or below
the resonance lets the tweeter work where it moves most, and the resonance peak of its
impedance raises the voltage across it there.  An octave of distance is the usual least.

It does not apply to a woofer, whose band begins below 1.5 times its resonance: the capacitor
is no high-pass for it, and what it takes from the bass is judged by bass-response.  The corner is
reckoned with the rated impedance.  What to do first: the next smaller
capacitor, or a steeper filter ahead of the amplifier.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.maths import PI


def figure(c: float, z_driver: float, f_s: float) -> float:
    return 1 / (2 * PI * z_driver * c * f_s)


TWEETER = """
channels:
  main:
    loudspeaker: {z_rated: 8 ohm, f_s: 900 Hz, c_series: {c: 33 uF, v_rated: 100 V}}
"""

CHECK = Check(
    title="Series capacitor corner vs. tweeter resonance",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="1 / (2 pi z_driver c f_s)",
    sentence="Series capacitor corner {f_s:*figure} ({c}, {z_driver}); tweeter resonance {f_s}"
    " ({figure:%}).",
    inputs={
        "c": Input("loudspeaker.c_series.c"),
        "z_driver": Input("z_driver"),
        "f_s": Input("loudspeaker.f_s"),
    },
    applies={"resonance_kept_out": "yes"},
    limits=AtLeast(
        major="1", minor="2", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(Lever("loudspeaker.c_series.c", "E6"),),
    sources=(derivation("corner of a series R-C"), COMMON_PRACTICE),
    cases=(
        Case(
            {"c": "6.8 uF", "z_driver": "8 ohm", "f_s": "1000 Hz"},
            gives="2.92564",
            origin="computed: frequency where a complex divider is 3.01 dB down, by bisection",
        ),
        Case(
            {"c": "2.2 uF", "z_driver": "10 kohm", "f_s": "7.234 Hz"},
            gives="1",
            origin="computed: the same bisection, 10 kohm and 2.2 uF",
        ),
    ),
    topic=("loudspeaker.c_series",),
    fails=TWEETER,
    passes=TWEETER.replace("c: 33 uF", "c: 6.8 uF"),
)

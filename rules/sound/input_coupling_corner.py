"""Corner of the input coupling against the low end of the band.

The coupling capacitor and the input resistance are a first-order high-pass.  At the low
end of the band it should take away no more than a decibel, which asks for a corner at half
of it; at the corner itself it takes 3 dB.  The classic slip is a low-value input resistor
behind a capacitor chosen for a high one (1 uF into 2.2 kohm: 72 Hz, found on a finished
board).

What to do first: the next larger capacitor.  Not too large: the time constant also has to
settle before the output is unmuted.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.maths import PI

SLIP = Source(
    "NBitWonder notebook",
    "entry 030: 72 Hz with 2.2 kohm, 30 kohm is the remedy; parts list: 1 uF",
)


def figure(r_in: float, c_in: float, band_low: float) -> float:
    return 1 / (2 * PI * r_in * c_in * band_low)


CHECK = Check(
    title="Input coupling corner vs. low band edge",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="1 / (2 pi r_in c_in band_low)",
    sentence="Input coupling corner {band_low:*figure} ({c_in}, {r_in}); low band edge {band_low}"
    " ({figure:%}).",
    inputs={
        "r_in": Input("signal.r_in"),
        "c_in": Input("signal.c_in"),
        "band_low": Input("band_low"),
    },
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={
            "major": derivation("3 dB are lost at the low end of the band"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("signal.c_in", "E6"),),
    sources=(SLIP, derivation("corner of a series R-C")),
    cases=(
        Case(
            {"r_in": "2.2 kohm", "c_in": "1 uF", "band_low": "72 Hz"},
            gives="1",
            tolerance=6e-3,
            origin="published: 72 Hz, NBitWonder notebook, entry 030",
        ),
        Case(
            {"r_in": "10 kohm", "c_in": "2.2 uF", "band_low": "20 Hz"},
            gives="0.36172",
            origin="computed: frequency where a complex divider is 3.01 dB down, by bisection",
        ),
    ),
    topic=("signal.c_in", "signal.r_in"),
    fails="""
signal: {r_in: 2.2 kohm, c_in: 1 uF}
channels:
  main: {band: 20 Hz .. 20 kHz}
""",
    passes="""
signal: {r_in: 30 kohm, c_in: 1 uF}
channels:
  main: {band: 20 Hz .. 20 kHz}
""",
)

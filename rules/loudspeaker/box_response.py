"""Response of the loudspeaker in its box at the bottom of the band against the claim.

What a product promises as its range of frequencies is heard behind its loudspeaker.  Below the
resonance of a sealed box the level falls by 12 dB an octave, below the tuning of a vented one by
24, and the high-pass that protects the cone comes on top.  A driver of 30 Hz in a box that is
too small for it has its bass at 50 Hz, whatever the amplifier passes.

The figure is what box and high-pass take together at the lowest frequency of the band beyond
the claimed deviation, from the data of the driver, small signals, half space.  It is minor: an
equaliser ahead of the amplifier or a room may lift the bass again, and no field says so; but
the promise is not shown then.  3 dB more than claimed are let pass, what the data of drivers are
uncertain.  From 20 dB on it is major: no equaliser has a hundred times the power to lift it.  Both
are common practice without a source.  First fix: a band that says what is left, or a larger box.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever
from ..formulas.driver import SMALL_CLOSED, SMALL_VENTED


def figure(box_loss: float, response: float, band_low: float) -> float:
    """Loss beyond the claim; band_low tells where it lies."""
    return (box_loss - response) * (band_low / band_low)


BOXED = """
channels:
  sub:
    band: LOW .. 180 Hz
    loudspeaker: {z_rated: 8 ohm, f_s: 32 Hz, q_ms: 6, q_es: 0.42, v_as: 120 L, high_pass: none,
      enclosure: {type: sealed, v_b: 90 L}}
claims: {response: 3 dB}
"""

CHECK = Check(
    title="Box response at the low band edge vs. claimed response",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="box_loss - response, box_loss at band_low",
    sentence="Box and high-pass attenuate {band_low} by {box_loss}; claimed {response}, no"
    " equaliser counted.",
    inputs={
        "box_loss": Input("box_loss"),
        "response": Input("claims.response"),
        "band_low": Input("band_low"),
    },
    applies={"response_claimed": "yes", "box_known": "yes", "loudspeaker.piezo": "none"},
    limits=AtMost(
        major="20 dB", minor="3 dB", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(Lever("loudspeaker.enclosure.v_b", "1 L"), Lever("claims.response", "0.5 dB")),
    sources=(SMALL_CLOSED, SMALL_VENTED),
    cases=(
        Case(
            {"box_loss": "11.028 dB", "response": "3 dB", "band_low": "28 Hz"},
            gives="8.028 dB",
            origin="computed: by hand, f_c 48.9 Hz, Q 0.6: u = 0.573, 20 log10(u^2 / abs(1 - u^2"
            " + j u / 0.6))",
        ),
        Case(
            {"box_loss": "3.01 dB", "response": "3 dB", "band_low": "40 Hz"},
            gives="0.01 dB",
            origin="computed: Butterworth alignment of a vented box at its tuning",
        ),
    ),
    topic=("loudspeaker.enclosure",),
    fails=BOXED.replace("LOW", "28 Hz"),
    passes=BOXED.replace("LOW", "48 Hz"),
)

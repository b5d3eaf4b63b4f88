"""Bass loss of the capacitors in the signal path, where no deviation is claimed.

A band is claimed, but not how level the product is within it. That the ends of a band are
3 dB down is what most data sheets mean by it, so more is a minor that asks for the claim; with
the deviation stated, bass-response answers. From 10 dB on it is major all the same: the
standard for loudspeakers ends the effective range of frequencies where the level is 10 dB down.
Input and output capacitor have stricter checks of their own against the same band; this one
adds the capacitor ahead of the loudspeaker, and all of them up. Cure: larger capacitors, or a band
that says what is left.
"""

from dataclasses import replace

from ...linter.check import Case, Input
from .bass_response import CHECK as CLAIMED
from .treble_response_unclaimed import UNCLAIMED


def figure(bass_loss: float, band_low: float) -> float:
    """Loss at the low end of the band; band_low tells where that is."""
    return bass_loss * (band_low / band_low)


CHECK = replace(
    CLAIMED,
    title="Bass loss at the low band edge, no deviation claimed",
    figure=figure,
    unit="dB",
    formula="bass_loss at band_low",
    sentence="Capacitors in the signal path take {bass_loss} at {band_low}; no deviation claimed.",
    inputs={"bass_loss": Input("bass_loss"), "band_low": Input("band_low")},
    applies={**CLAIMED.applies, "response_claimed": "no"},
    limits=UNCLAIMED,
    cases=(
        Case(
            {"bass_loss": "3.0103 dB", "band_low": "58 Hz"},
            gives="3.01 dB",
            origin="published: CS4525 data sheet table 19, 680 uF into 4 ohm: 3 dB at 58 Hz",
        ),
        Case(
            {"bass_loss": "12.3832 dB", "band_low": "30 Hz"},
            gives="12.3832 dB",
            origin="computed: node equations at 30 Hz of 1 uF into 10 kohm, and of 1 mF ahead of"
            " two loudspeakers of 4 ohm in parallel, each behind 1.5 mF",
        ),
    ),
    fails=CLAIMED.fails.replace("claims: {response: 3 dB}", ""),
    passes=CLAIMED.passes.replace("claims: {response: 3 dB}", ""),
)

"""Stated high-pass against the claimed response at the bottom of the band.

A product that claims its band within 3 dB keeps the claim behind its high-pass or not at all.  The
figure is what the high-pass takes at the lowest frequency of the band, Butterworth as everywhere
here, beyond the deviation that is claimed and the 3 dB that a box may lift there.  More is
major: a corner of 40 Hz and second order takes 7 dB from 28 Hz, and the cone that it protects no
longer does what it is sold for.

Where no deviation is claimed, high-pass-in-band answers.  What to do first: a steeper high-pass
with a lower corner, or a band that says what is left.
"""

from dataclasses import replace

from ...linter.check import AtMost, Case, Constant, Input, Lever
from .high_pass_in_band import BASS, LIFTS, lost
from .high_pass_in_band import CHECK as UNCLAIMED


def figure(f_high_pass: float, order: float, band_low: float, response: float, box: float) -> float:
    """Loss beyond what is claimed and what a box may lift."""
    return lost(f_high_pass, order, band_low) - box - response


CHECK = replace(
    UNCLAIMED,
    title="High-pass loss at the low band edge vs. claimed response",
    figure=figure,
    formula="10 log10(1 + (f_high_pass / band_low)^(2 order)) - box - response",
    sentence="High-pass at {f_high_pass} (order {order}) attenuates {band_low} by"
    " {figure:+more|less} than the claimed {response} and {box} of box lift.",
    inputs={
        **UNCLAIMED.inputs,
        "response": Input("claims.response"),
        "box": Constant("3 dB", "lift of a box at the low end of its band", LIFTS),
    },
    applies={"response_claimed": "yes"},
    limits=AtMost(major="0 dB", basis={"major": LIFTS}),
    levers=(*UNCLAIMED.levers, Lever("claims.response", "0.5 dB")),
    cases=(
        Case(
            {
                "f_high_pass": "50 Hz",
                "order": 2,
                "band_low": "25 Hz",
                "response": "3 dB",
                "box": "3 dB",
            },
            gives="6.304 dB",
            origin="computed: scipy Butterworth high-pass of second order, 50 Hz, at 25 Hz",
        ),
        Case(
            {
                "f_high_pass": "224 Hz",
                "order": 1,
                "band_low": "25 Hz",
                "response": "6 dB",
                "box": "3 dB",
            },
            gives="10.1002 dB",
            origin="computed: divider of 1 ohm behind a capacitor of 0.71051 mF, at 25 Hz",
        ),
    ),
    fails=BASS + "claims: {response: 3 dB}\n",
    passes=BASS.replace("f: 60 Hz", "f: 20 Hz") + "claims: {response: 3 dB}\n",
)

"""Stated high-pass against the bottom of the stated band.

A high-pass that protects the cone is no fix when it takes away the bass that the product
promises: a subwoofer for 25 Hz behind a corner of 224 Hz is mute where it is
sold.  The figure is what the high-pass alone takes at the lowest frequency of the band,
Butterworth as everywhere here; a corner at that frequency takes 3 dB at any order.  A corner
above the top of the band takes more than that from all of it.

A band that is not stated leaves it open; with a claimed response high-pass-response answers.
What the box adds or takes is left out, so 3 dB more are let pass than a corner at the end of
the band takes: a box of high Q lifts as much there. Where the order is not stated the first is
taken: it takes more than the others below its corner and less above.

What to do first: a steeper high-pass with a lower corner, or a band that says what is left.
"""

from math import inf

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..derived.excursion import STATED_HIGH_PASS
from ..formulas.acoustics import power_decibel


def lost(f_high_pass: float, order: float, band_low: float) -> float:
    """Loss of a Butterworth high-pass."""
    return power_decibel(1 + (f_high_pass / band_low) ** (2 * order))


def figure(f_high_pass: float, order: float, band_low: float) -> float:
    return lost(f_high_pass, order, band_low)


LIFTS = derivation("3 dB at the corner, and 3 dB that a box may lift there")


# a band that is not stated promises nothing: open, not a failure
NO_BAND = Assumption(inf, "floor", derivation("bound: a band far above the high-pass"))
BASS = """
channels:
  sub:
    band: 25 Hz .. 200 Hz
    loudspeaker: {z_rated: 8 ohm, high_pass: {f: 60 Hz, order: 2}}
"""

CHECK = Check(
    title="High-pass loss at the low band edge",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="10 log10(1 + (f_high_pass / band_low)^(2 order))",
    sentence="High-pass at {f_high_pass} attenuates the low band edge, {band_low}, by {figure}.",
    inputs={
        **STATED_HIGH_PASS,
        "band_low": Input("band:low", meaning="low end of the band", default=NO_BAND),
    },
    applies={"response_claimed": "no"},
    limits=AtMost(
        major="10 dB",
        minor="6 dB",
        basis={
            "major": COMMON_PRACTICE,
            "minor": LIFTS,
        },
    ),
    levers=(Lever("loudspeaker.high_pass.f", "1 Hz"),),
    sources=(derivation("Butterworth high-pass"),),
    cases=(
        Case(
            {"f_high_pass": "50 Hz", "order": 2, "band_low": "25 Hz"},
            gives="12.304 dB",
            origin="computed: scipy Butterworth high-pass of second order, 50 Hz, at 25 Hz",
        ),
        Case(
            {"f_high_pass": "224 Hz", "order": 1, "band_low": "25 Hz"},
            gives="19.1002 dB",
            origin="computed: divider of 1 ohm behind a capacitor of 0.71051 mF, at 25 Hz",
        ),
    ),
    topic=("loudspeaker.high_pass.f",),
    fails=BASS,
    passes=BASS.replace("f: 60 Hz", "f: 26 Hz"),
)

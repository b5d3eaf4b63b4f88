"""Treble response of the filter over the rated loads, where no deviation is claimed.

Nobody claims a level response by saying nothing: a filter that is 3 dB off with one of its
rated loads works, and its maker may know why. So 3 dB up or down within the band is a minor that
asks for the claim; with the deviation stated, treble-response answers. From 10 dB on it is
major all the same: the standard for loudspeakers ends the effective range of frequencies where the
level is 10 dB down, which the ear takes for half as loud, and a peak of 10 dB is a tenfold
power at one tone. It does not apply where the loop takes its signal behind the filter. Cure:
state the deviation that the product may have, or inductor and capacitor for the middle of the
rated loads.
"""

from dataclasses import replace

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Input, from_memory
from .treble_response import CHECK as CLAIMED


def figure(treble_deviation: float, f_deviation: float) -> float:
    """Largest deviation in the band; f_deviation tells where it lies."""
    return treble_deviation * (f_deviation / f_deviation)


UNCLAIMED = AtMost(
    major="10 dB",
    minor="3 dB",
    basis={
        "major": from_memory("IEC 60268-5: effective frequency range of a loudspeaker, 10 dB"),
        "minor": COMMON_PRACTICE,
    },
)

CHECK = replace(
    CLAIMED,
    title="Treble deviation over the rated loads, none claimed",
    figure=figure,
    unit="dB",
    formula="treble_deviation at f_deviation",
    sentence="Response deviates by {treble_deviation} at {f_deviation} over the rated loads; no"
    " deviation claimed.",
    inputs={
        "treble_deviation": Input("treble_deviation"),
        "f_deviation": Input("f_deviation"),
    },
    applies={**CLAIMED.applies, "response_claimed": "no"},
    limits=UNCLAIMED,
    cases=(
        Case(
            {"treble_deviation": "3.0103 dB", "f_deviation": "30 kHz"},
            gives="3.01 dB",
            origin="published: MAX4295 data sheet p. 11, Butterworth for 30 kHz: half the power",
        ),
        Case(
            {"treble_deviation": "1.532 dB", "f_deviation": "20 kHz"},
            gives="1.532 dB",
            origin="computed: node equations solved with matrices, 22 uH and 0.68 uF into 8 ohm",
        ),
    ),
    fails=CLAIMED.fails.replace("claims: {response: 3 dB}", ""),
    passes=CLAIMED.passes.replace("claims: {response: 3 dB}", ""),
)

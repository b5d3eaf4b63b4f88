"""Treble response of the filter with the real voice coil, where no deviation is claimed.

The inductance of a voice coil takes the load from the filter in the treble, and the response
rises toward the corner. A coil of 0.5 mH behind 33 uH and 1 uF does so by some decibels, in
products that sell; where no deviation is claimed 3 dB are a minor that asks for the claim, as for
treble-response-unclaimed, and 10 dB a major, where the standard for loudspeakers ends the
effective range. It speaks only where the coil's inductance is stated and the loop does not take
its signal behind the filter. Cure: a series R-C across the loudspeaker that keeps its impedance
level, or a higher corner.
"""

from dataclasses import replace

from ...linter.check import Case, Check, Input
from .treble_response_loudspeaker import CHECK as CLAIMED
from .treble_response_unclaimed import UNCLAIMED


def figure(treble_deviation_coil: float, f_deviation_coil: float) -> float:
    """Deviation with the network of coils; f_deviation_coil tells where."""
    return treble_deviation_coil * (f_deviation_coil / f_deviation_coil)


CHECK: Check = replace(
    CLAIMED,
    title="Treble deviation with the voice coil, none claimed",
    figure=figure,
    unit="dB",
    formula="treble_deviation_coil at f_deviation_coil",
    sentence="Response deviates by {treble_deviation_coil} at {f_deviation_coil} with the voice"
    " coil; no deviation claimed.",
    inputs={
        "treble_deviation_coil": Input("treble_deviation_coil"),
        "f_deviation_coil": Input("f_deviation_coil"),
    },
    applies={**CLAIMED.applies, "response_claimed": "no"},
    limits=UNCLAIMED,
    cases=(
        Case(
            {"treble_deviation_coil": "1.859 dB", "f_deviation_coil": "20 kHz"},
            gives="1.859 dB",
            origin="computed: node equations solved with matrices, coil of 6.5 ohm and 0.5 mH",
        ),
        Case(
            {"treble_deviation_coil": "0.5225 dB", "f_deviation_coil": "20 kHz"},
            gives="0.5225 dB",
            origin="computed: node equations solved with matrices, coil of 6.5 ohm and 0.1 mH",
        ),
    ),
    fails=CLAIMED.fails.replace("claims: {response: 3 dB}", ""),
    passes=CLAIMED.passes.replace("claims: {response: 3 dB}", ""),
)

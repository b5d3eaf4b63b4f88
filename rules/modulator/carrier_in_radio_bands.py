"""Harmonics of the carrier in the medium-wave band.

The carrier's harmonics radiate from loudspeaker leads and rails. Carriers between 400
and 500 kHz put the second to fourth harmonic into the medium-wave band, 525 to 1705 kHz
with the sidebands of both world regions. For a separate hi-fi that is of no consequence
and not reported. Where the receiver sits in the same box, or in a vehicle a metre away,
stations vanish under tones; a spec that states `am_receiver: none` has no receiver there.
Makers of car amplifiers answer with 2.1 MHz, above the band, or with a carrier that moves:
then no station is ever hit, and the check does not apply.
The figure is the number of harmonics in the band at the worst carrier in its tolerance, those
up to the tenth: harmonics fall with their order, and the filter of a slow carrier, whose corner
lies as much lower, stops the high ones. A subwoofer at 50 kHz disturbs no reception.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Constant,
    Input,
    Lever,
    Source,
    from_memory,
)
from ..formulas.maths import larger, smaller


def figure(carrier: float, low: float, high: float, order: float) -> float:
    """Whole multiples of the carrier between the ends of the band, none beyond the order."""
    return larger(smaller(high / carrier // 1, order) + (-low / carrier) // 1 + 1, 0.0)


CHECK = Check(
    title="Carrier harmonics in the medium-wave band",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="whole multiples of carrier between low and high, up to order",
    sentence="{figure:harmonic|harmonics} of the {carrier} carrier in the medium-wave band, beside"
    " a receiver.",
    inputs={
        "carrier": Input("modulator.carrier"),
        "low": Constant("525 kHz", "lower end of the band", from_memory("ITU, both regions")),
        "high": Constant("1705 kHz", "upper end of the band", from_memory("ITU, both regions")),
        "order": Constant("10", "highest harmonic that is heard in a receiver", COMMON_PRACTICE),
    },
    applies={"am_reception": "yes", "modulator.carrier_shift": "no"},
    limits=AtMost(
        major="0",
        basis={
            "major": Source(
                "TI SSZTAK1; TPA3116D2 data sheet SLOS708C",
                "harmonics lie in the AM band; table 6: carrier and second harmonic straddle the "
                "part of it that is tuned",
            )
        },
    ),
    levers=(
        Lever("modulator.carrier", "50 kHz", {"output_stage.devices": "discrete"}),
        Lever("modulator.carrier_shift", ("yes",)),
    ),
    sources=(
        Source(
            "TAS6421-Q1 data sheet; TPA6304-Q1 data sheet",
            "first page: 2.1 MHz for vehicles, no interference with AM",
        ),
        Source("US 6587670", "abstract: class-D carriers disturb AM reception"),
    ),
    cases=(
        Case(
            {"carrier": "2.1 MHz"},
            gives="0",
            origin="published: TAS6421-Q1, carrier above the band",
        ),
        Case(
            {"carrier": "400 kHz"},
            gives="3",
            origin="computed: 800, 1200 and 1600 kHz counted by hand",
        ),
        Case(
            {"carrier": "50 kHz"},
            gives="0",
            origin="computed: 550 kHz is the eleventh",
        ),
    ),
    topic=("environment.am_receiver", "environment.place"),
    peaks_inside=("modulator.carrier",),
    fails="""
environment: {am_receiver: in-product}
channels:
  main: {modulator: {carrier: 400 kHz, carrier_shift: no}}
""",
    passes="""
environment: {am_receiver: in-product}
channels:
  main: {modulator: {carrier: 2.1 MHz, carrier_shift: no}}
""",
)

"""Switching frequency of a self-oscillating stage at rated power.

A self-oscillating stage slows down as its output approaches a rail: the frequency falls
as 1 - M^2 and reaches zero at clipping. That is normal and much copied boards live with
it. It becomes a fault where the frequency at rated power comes near the corner of the
filter, which then passes the carrier or even amplifies it, or near the audio band, where
loop and listener notice it. The limits are 1.5 times the corner and 3 times the band: a
400 kHz reference board at depth 0.885 (87 kHz against a 49.5 kHz corner) passes. First
fix: a higher rail for the same power, a higher idle frequency, a lower corner.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source
from ..formulas.maths import larger


def figure(f_carrier_low: float, f_corner: float, band_high: float) -> float:
    """Lowest switching frequency over the higher of its two limits."""
    return f_carrier_low / larger(1.5 * f_corner, 3 * band_high)


CHECK = Check(
    title="Self-oscillation frequency at rated power vs. minimum",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="f_carrier_low / larger of 1.5 f_corner and 3 band_high",
    sentence="Self-oscillation drops to {f_carrier_low} at rated power; minimum"
    " {f_carrier_low:/figure} (corner {f_corner}, band to {band_high}).",
    inputs={
        "f_carrier_low": Input("f_carrier_low"),
        "f_corner": Input("f_corner"),
        "band_high": Input("band_high"),
    },
    applies={"modulator.type": "self-oscillating"},
    limits=AtLeast(minor="1", basis={"minor": COMMON_PRACTICE}),
    levers=(
        Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),
        Lever("filter.inductor.l", "E6"),
    ),
    sources=(
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 22: about 400 kHz at idle; p. 21: highest at idle, changes with the duty cycle",
        ),
    ),
    cases=(
        Case(
            {"f_carrier_low": "86.7 kHz", "f_corner": "49.5 kHz", "band_high": "20 kHz"},
            gives="1.1677",
            origin="computed: 35 V, 4 ohm, 120 W board, (1 - 0.885^2) 400 kHz by hand",
        ),
        Case(
            {"f_carrier_low": "45 kHz", "f_corner": "25 kHz", "band_high": "20 kHz"},
            gives="0.75",
            origin="derived: three times 20 kHz governs",
        ),
    ),
    topic=("modulator.carrier",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    rated_power: 145 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {type: self-oscillating, carrier: 300 kHz}
    filter: {inductor: {l: 22 uH}, c_across: {c: 470 nF, dielectric: polypropylene}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    rated_power: 120 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {type: self-oscillating, carrier: 450 kHz}
    filter: {inductor: {l: 22 uH}, c_across: {c: 470 nF, dielectric: polypropylene}}
""",
)

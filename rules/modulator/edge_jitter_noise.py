"""Jitter of the edges against the noise that is claimed.

An edge that comes too early or too late adds the full swing for that time. A hundred
picoseconds sound like nothing; on a 100 V swing at 400 kHz they make 1.8 mV of noise in
the audio band. What counts is jitter that differs from edge to edge: of the oscillator,
the comparator, the level shifter. Where one comparator drives both legs of a bridge the
errors of both legs add; in a three-level bridge the edges are independent and add in
squares. A loop around the modulator reduces
what arises in comparator, driver and carrier by its gain; the gain at the top of the band
is taken for the whole band, which is on the safe side. Where loop or crossover are not
stated, no loop is assumed.
"""

from ...linter.check import Assumption, AtMost, Case, Check, Input, Lever, derivation
from ..formulas.modulation import jitter_noise


def figure(
    v_swing: float,
    n_legs: float,
    levels: str,
    carrier: float,
    jitter: float,
    band_high: float,
    loop_gain_treble: float,
    noise: float,
) -> float:
    """Noise of the edges in the band over the noise that is claimed."""
    legs = n_legs**0.5 if levels == "three-level" else n_legs
    open_loop = jitter_noise(v_swing, legs, carrier, jitter, band_high)
    return open_loop / (1 + loop_gain_treble) / noise


CHECK = Check(
    title="Noise from edge jitter vs. claim",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="n_legs v_swing carrier jitter sqrt(2) sqrt(2 band_high/carrier)"
    " / (1 + loop_gain_treble) / noise;"
    " levels three-level: sqrt(n_legs) in place of n_legs",
    sentence="Edge jitter of {jitter} makes {noise:*figure} of noise ({v_swing} swing); claimed"
    " {noise} ({figure:%}).",
    inputs={
        "v_swing": Input("v_swing"),
        "n_legs": Input("n_legs"),
        "levels": Input("levels"),
        "carrier": Input("modulator.carrier"),
        "jitter": Input("modulator.jitter"),
        "band_high": Input("band_high"),
        "loop_gain_treble": Input(
            "loop_gain_treble",
            default=Assumption(0.0, "adverse", derivation("without a loop nothing is reduced")),
        ),
        "noise": Input("claims.noise"),
    },
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={
            "major": derivation("the claim is used up by the edges alone"),
            "minor": derivation("half of the claim, a quarter of its power, is used up"),
        },
    ),
    levers=(Lever("modulator.jitter", "5 ps"),),
    sources=(derivation("two edges a period, each a pulse of swing times time error, white"),),
    cases=(
        Case(
            {
                "v_swing": "100 V",
                "n_legs": 1.0,
                "levels": "two-level",
                "carrier": "400 kHz",
                "jitter": "100 ps",
                "band_high": "20 kHz",
                "loop_gain_treble": 0.0,
                "noise": "1.789 mV",
            },
            gives="1",
            origin="computed: spectrum of 65 536 jittered periods, 1.771 mV (form 1.789)",
            tolerance=0.015,
        ),
        Case(
            {
                "v_swing": "24 V",
                "n_legs": 2.0,
                "levels": "three-level",
                "carrier": "400 kHz",
                "jitter": "50 ps",
                "band_high": "20 kHz",
                "loop_gain_treble": 0.0,
                "noise": "0.30358 mV",
            },
            gives="1",
            origin="derived: half the jitter, 0.24 of the swing, sqrt(2) for two legs",
        ),
        Case(
            {
                "v_swing": "50 V",
                "n_legs": 2.0,
                "levels": "two-level",
                "carrier": "400 kHz",
                "jitter": "100 ps",
                "band_high": "20 kHz",
                "loop_gain_treble": 0.0,
                "noise": "1.789 mV",
            },
            gives="1",
            origin="derived: bridge of half the swing, both legs on one edge, as the first case",
            tolerance=0.015,
        ),
    ),
    topic=("modulator.jitter",),
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage: {topology: half-bridge}
    modulator: {carrier: 400 kHz, jitter: 100 ps}
claims: {noise: 200 uV}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage: {topology: half-bridge}
    modulator: {carrier: 400 kHz, jitter: 5 ps}
claims: {noise: 200 uV}
""",
)

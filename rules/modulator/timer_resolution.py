"""Clock of the counter against the noise that is claimed.

A digital modulator can set its edges only to whole clock periods. 100 MHz against a
carrier of 400 kHz leaves 250 steps, eight bits: the rounding is noise, spread up to half
the carrier, and what falls into the audio band is 59 dB below full level. Noise shaping
moves most of it above the band: about 15 dB better for the first order at this ratio, 27
dB for the second. The formula holds for one step that moves the pulse as a whole (an
up-and-down counter whose two edges move together has steps twice as coarse). The claim is
usually A-weighted, which takes about 2 dB off white noise and more off shaped noise; that
is left as margin. First fix: noise shaping, then a faster clock.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from ..formulas.modulation import timer_noise


def figure(
    v_ideal: float,
    carrier: float,
    clock: float,
    noise_shaping: float,
    band_high: float,
    noise: float,
) -> float:
    """Rounding noise in the band over the noise that is claimed."""
    return timer_noise(v_ideal, carrier, clock, noise_shaping, band_high) / noise


CHECK = Check(
    title="Noise from the counter clock vs. claim",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="2 v_ideal carrier/(clock sqrt(12)) pi^L/sqrt(2 L + 1) / r^(L + 1/2) / noise,"
    " L = noise_shaping, r = carrier/(2 band_high)",
    sentence="A {clock} counter ({carrier}, noise shaping order {noise_shaping}) makes"
    " {noise:*figure} of noise; claimed {noise} ({figure:%}).",
    inputs={
        "v_ideal": Input("v_ideal"),
        "carrier": Input("modulator.carrier"),
        "clock": Input("modulator.clock"),
        "noise_shaping": Input("modulator.noise_shaping"),
        "band_high": Input("band_high"),
        "noise": Input("claims.noise"),
    },
    applies={"modulator.type": "uniform-sampling"},
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={
            "major": derivation("the claim is used up by the rounding alone"),
            "minor": derivation("half of the claim, a quarter of its power, is used up"),
        },
    ),
    levers=(Lever("modulator.clock", "1 MHz"), Lever("modulator.noise_shaping", ("1", "2", "3"))),
    sources=(
        derivation("white rounding noise up to half the carrier, each order shapes by pi f / r"),
    ),
    cases=(
        Case(
            {
                "v_ideal": "1.41421 V",
                "carrier": "400 kHz",
                "clock": "100 MHz",
                "noise_shaping": 0.0,
                "band_high": "20 kHz",
                "noise": "1 V",
            },
            gives="0.0010328",
            origin="computed: 250 steps of 11.31 mV, 1/sqrt(12) of one, a tenth of its power below "
            "20 kHz",
        ),
        Case(
            {
                "v_ideal": "1.41421 V",
                "carrier": "400 kHz",
                "clock": "100 MHz",
                "noise_shaping": 2.0,
                "band_high": "20 kHz",
                "noise": "1 V",
            },
            gives="4.52e-5",
            origin="computed: error-feedback simulation, 86.08 dB (form 85.91)",
            tolerance=0.03,
        ),
    ),
    topic=("modulator.clock", "claims.noise"),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    output_stage: {topology: full-bridge}
    modulator: {type: uniform-sampling, carrier: 400 kHz, clock: 100 MHz, noise_shaping: 0}
claims: {noise: 200 uV}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    output_stage: {topology: full-bridge}
    modulator: {type: uniform-sampling, carrier: 400 kHz, clock: 400 MHz, noise_shaping: 3}
claims: {noise: 200 uV}
""",
)

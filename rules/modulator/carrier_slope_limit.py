"""Slope of the signal against slope of the carrier.

A comparator that compares the audio signal with a triangle makes one pulse per period only
while the signal changes more slowly than the carrier. A full-scale tone at the top of the
band has the slope 2 pi f; a triangle between minus one and one has 4 times the carrier,
a sawtooth twice. Beyond the limit pulses are lost or doubled: rough distortion and
switching losses that nobody reckoned with. Music rarely holds full level in the treble,
test tones and clipped percussion do. Self-oscillating and uniformly sampled modulators
are not concerned: the first has no fixed carrier, the second holds its sample. First
fix: a higher carrier, or a triangle in place of the sawtooth.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.maths import PI


def figure(carrier: float, m_max: float, band_high: float, waveform: str) -> float:
    """Carrier over the lowest carrier that the slope allows."""
    share = PI if waveform == "sawtooth" else PI / 2
    return carrier / (share * m_max * band_high)


CHECK = Check(
    title="Carrier slope vs. signal slope",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="carrier / (pi/2 m_max band_high); waveform sawtooth: pi in place of pi/2",
    sentence="Carrier slope ({carrier}, {waveform}) is {figure} times that of a full-scale tone at"
    " {band_high}.",
    inputs={
        "carrier": Input("modulator.carrier"),
        "m_max": Input("m_max", unit="%"),
        "band_high": Input("band_high"),
        "waveform": Input("modulator.waveform"),
    },
    applies={"modulator.type": "natural-sampling"},
    limits=AtLeast(
        major="1", basis={"major": derivation("equal slopes of full-scale tone and carrier")}
    ),
    levers=(Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),),
    sources=(
        derivation("sawtooth of amplitude 1 and slope 2 carrier: carrier above pi times the tone"),
        derivation("slope 2 pi f against 4 carrier of a triangle of amplitude 1"),
    ),
    cases=(
        Case(
            {
                "carrier": "62.83 kHz",
                "m_max": "100 %",
                "band_high": "20 kHz",
                "waveform": "sawtooth",
            },
            gives="1",
            origin="computed: by hand, slope of a sawtooth against that of a sine",
        ),
        Case(
            {
                "carrier": "31.416 kHz",
                "m_max": "100 %",
                "band_high": "20 kHz",
                "waveform": "triangle",
            },
            gives="1",
            origin="derived: slope of the triangle is 4 times its frequency per amplitude",
        ),
    ),
    topic=("modulator.carrier",),
    fails="""
channels:
  main:
    band: 20 Hz .. 20 kHz
    modulator: {type: natural-sampling, waveform: sawtooth, carrier: 50 kHz, m_max: 95 %}
""",
    passes="""
channels:
  main:
    band: 20 Hz .. 20 kHz
    modulator: {type: natural-sampling, waveform: triangle, carrier: 300 kHz, m_max: 95 %}
""",
)

"""Distortion of uniform sampling.

A digital modulator takes one sample a period and turns it into a pulse. The pulse's edges
then do not lie where the signal would have crossed the carrier, and the difference is
harmonic distortion inside the audio band, without any fault of the power stage. With one
moving edge (sawtooth) the second harmonic is large: 6 % of a tone at a twentieth of the
carrier. With both edges moving it is mild. Natural sampling has none of it. Digital
modulators that are any good therefore estimate the natural crossing point ahead of the
counter; the spec cannot express that, so if yours does, record it as a deviation. The
figure is taken at 1 kHz, where distortion is claimed, and grows with frequency.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.constants import TEST_TONE
from ..formulas.modulation import uniform_harmonic


def figure(tone: float, carrier: float, m_max: float, waveform: str, thd: float) -> float:
    """Second and third harmonic over the distortion that is claimed."""
    second = uniform_harmonic(2, tone, carrier, m_max, waveform)
    third = uniform_harmonic(3, tone, carrier, m_max, waveform)
    return (second**2 + third**2) ** 0.5 / m_max / thd


CHECK = Check(
    title="Distortion of uniform sampling vs. claim",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="sqrt(h2^2 + h3^2)/m_max / thd; h_n from tone, carrier, m_max and waveform:"
    " q = n tone/carrier, triangle (4/(pi q)) J_n(q pi m_max/2) sin((q+n) pi/2),"
    " sawtooth (2/(pi q)) J_n(q pi m_max)",
    sentence="Uniform sampling ({waveform}, {carrier}) makes {thd:*figure} distortion; claimed"
    " {thd} ({figure:%}).",
    inputs={
        "tone": TEST_TONE,
        "carrier": Input("modulator.carrier"),
        "m_max": Input("m_max", unit="%"),
        "waveform": Input("modulator.waveform"),
        "thd": Input("claims.thd"),
    },
    applies={"modulator.type": "uniform-sampling"},
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={
            "major": derivation("the claim is used up by the modulator alone"),
            "minor": derivation("half of the claim is used up by the modulator alone"),
        },
    ),
    levers=(Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),),
    sources=(
        derivation("double Fourier series of uniform sampling, confirmed with exact edges"),
        Source(
            "Song and Sarwate, EURASIP J. Signal Processing 2003",
            "abstract: natural sampling has no harmonics in the band",
        ),
    ),
    cases=(
        Case(
            {
                "tone": "20 kHz",
                "carrier": "400 kHz",
                "m_max": "80 %",
                "waveform": "sawtooth",
                "thd": "6.25 %",
            },
            gives="1.0",
            origin="computed: exact Fourier sums of the edges, h2 0.0500 at ratio 20",
            tolerance=0.02,
        ),
        Case(
            {
                "tone": "20 kHz",
                "carrier": "400 kHz",
                "m_max": "80 %",
                "waveform": "triangle",
                "thd": "0.5113 %",
            },
            gives="1.0",
            origin="computed: exact Fourier sums of the edges, h2 0.003926, h3 0.001149",
            tolerance=0.001,
        ),
    ),
    topic=("claims.thd",),
    fails="""
channels:
  main:
    modulator: {type: uniform-sampling, waveform: sawtooth, carrier: 300 kHz, m_max: 90 %}
claims: {thd: 0.05 %}
""",
    passes="""
channels:
  main:
    modulator: {type: uniform-sampling, waveform: triangle, carrier: 300 kHz, m_max: 90 %}
claims: {thd: 0.05 %}
""",
)

"""Carrier against the limit of hearing.

A subwoofer channel can be modulated with a carrier of 22 kHz and the ratio of carrier to
band is still a hundred. But the carrier itself, its residual in the loudspeaker and the
magnetic forces in the inductor are then at the edge of hearing, and pets and the young
hear them; beat tones with other converters fall into the audible band. The filter would
also have to stop a frequency at which the loudspeaker still radiates. 40 kHz keeps an
octave of distance. For a self-oscillating stage the lowest frequency at rated power
counts, because that is where it sings. First fix: raise the carrier; switching loss at
such frequencies is small.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source


def figure(carrier: float) -> float:
    """Switching frequency without signal itself."""
    return carrier


CHECK = Check(
    title="Idle switching frequency vs. hearing range",
    figure=figure,
    unit="Hz",
    each="channel",
    stake="performance",
    formula="carrier",
    sentence="Idle switching frequency {carrier}.",
    inputs={
        "carrier": Input("modulator.carrier"),
    },
    limits=AtLeast(major="40 kHz", basis={"major": COMMON_PRACTICE}),
    levers=(Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),),
    sources=(
        Source(
            "J. Benfell, ECEN405 class-D amplifier project", "README: 22 kHz carrier, 200 Hz band"
        ),
    ),
    cases=(
        Case(
            {"carrier": "22 kHz"},
            gives="22 kHz",
            origin="published: J. Benfell, ECEN405 README: triangle of 22 kHz, to be caught",
        ),
        Case(
            {"carrier": "400 kHz"},
            gives="400 kHz",
            origin="published: IRAUDAMP7D rev. 2.9, p. 4: self-oscillating at 400 kHz",
        ),
    ),
    topic=("modulator.carrier",),
    fails="""
channels:
  main: {band: 20 Hz .. 200 Hz, modulator: {type: natural-sampling, carrier: 22 kHz}}
""",
    passes="""
channels:
  main: {band: 20 Hz .. 200 Hz, modulator: {type: natural-sampling, carrier: 100 kHz}}
""",
)

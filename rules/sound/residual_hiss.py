"""Residual noise at the listener.

The amplifier's own noise is always there, at the same level, whatever the volume control
says.  With sensitive loudspeakers close to the ear it is heard as hiss in every pause: a
horn of 110 dB makes 100 uV audible at a metre.  A quiet room has 20 to 30 dB(A), and hiss
is heard below that, because it is steady: 15 dB(A) passes unnoticed, 25 does not, and some
products sell with it.  From 35 dB(A) on it masks quiet speech, which no amplifier may.

Measure the noise behind a sharp 20 kHz low-pass (the carrier otherwise hides it) and
A-weighted.  What to do first: less gain; each decibel of gain is a decibel of hiss.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
    from_memory,
)
from ..formulas.acoustics import ONE_METRE, V_SENSITIVITY, distance_loss, network_level

METHOD = Source(
    "Audio Precision, class-D amplifier measurement page",
    "a passive low-pass ahead of the analyser",
)

SPEECH = from_memory("WHO, Guidelines for community noise, 1999: 35 dB(A) indoors, for speech")


def figure(
    noise: float,
    sensitivity: float,
    parallel: float,
    nearest_listener: float,
    v_reference: float,
    one_metre: float,
) -> float:
    level = network_level(sensitivity, noise, parallel, v_reference)
    return level - distance_loss(nearest_listener, one_metre)


HORN = """
safety: {nearest_listener: 1 m}
channels:
  main:
    loudspeaker: {z_rated: 8 ohm, sensitivity: 110 dB, sensitivity_basis: 2.83-volt}
claims: {noise: 300 uV}
"""

CHECK = Check(
    title="Hiss at the listener",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="sensitivity + 20 log10(noise parallel / v_reference)"
    " - 20 log10(nearest_listener / one_metre)",
    sentence="Hiss {figure} at {nearest_listener} ({noise} on loudspeakers of {sensitivity}).",
    inputs={
        "noise": Input("claims.noise"),
        "sensitivity": Input("sensitivity_2v83"),
        "parallel": Input("loudspeaker.parallel"),
        "nearest_listener": Input("safety.nearest_listener"),
        "v_reference": V_SENSITIVITY,
        "one_metre": ONE_METRE,
    },
    limits=AtMost(major="35 dB", minor="15 dB", basis={"major": SPEECH, "minor": COMMON_PRACTICE}),
    levers=(Lever("claims.noise", "10 uV"),),
    sources=(METHOD, derivation("sensitivity scaled with the noise voltage")),
    cases=(
        Case(
            {
                "noise": "100 uV",
                "sensitivity": "110 dB",
                "parallel": 1,
                "nearest_listener": "1 m",
                "v_reference": "2.828427 V",
                "one_metre": "1 m",
            },
            gives="20.969 dB",
            origin="computed: sound power of 100 uV in 8 ohm, 110 dB for 1 W",
        ),
        Case(
            {
                "noise": "300 uV",
                "sensitivity": "88 dB",
                "parallel": 1,
                "nearest_listener": "0.5 m",
                "v_reference": "2.828427 V",
                "one_metre": "1 m",
            },
            gives="14.532 dB",
            origin="computed: sound power of 300 uV in 8 ohm, 88 dB for 1 W, at 0.5 m",
        ),
        Case(
            {
                "noise": "100 uV",
                "sensitivity": "110 dB",
                "parallel": 3,
                "nearest_listener": "2 m",
                "v_reference": "2.828427 V",
                "one_metre": "1 m",
            },
            gives="24.491 dB",
            origin="derived: first case, three in phase 9.542 dB more, 2 m away 6.021 dB less",
        ),
    ),
    topic=("claims.noise",),
    fails=HORN,
    passes=HORN.replace("noise: 300 uV", "noise: 20 uV"),
)

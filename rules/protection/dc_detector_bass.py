"""Delay of the direct-voltage detector: slow enough for the bass.

Half a period of the lowest note is direct voltage for as long as it lasts.  A detector that
takes longer than that to act at full direct voltage cannot be fired by a note, whatever is
inside it.  A detector that counts time fires as soon as it is quicker.  One with a simple
low-pass withstands more: its threshold is small against the rail.  A clean sine fires it when the
delay falls below the period over 2 pi, a clipped one below a quarter of the period.

The figure is the delay over the shortest one that lets the lowest note of the channel pass:
half a period for detectors that count time or watch duty or oscillation, a quarter of a
period behind a low-pass, which a clipped note then just fails to trip.  Below 1 the detector
stops the music: major.  Below 2 is minor; that is half a period where the spec does not say
what the detector looks at and a low-pass is taken, in its favour.  First fix: a longer
delay, up to half a second.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation


def figure(t_trip: float, band_low: float, senses: str) -> float:
    periods = 0.25 if senses == "filtered-output" else 0.5
    return band_low * t_trip / periods


BASS = """
protection: {dc_detector: {v_trip: 2 V, t_trip: 5 ms}}
channels:
  main:
    rated_power: 50 W
    band: 20 Hz .. 200 Hz
"""

CHECK = Check(
    title="DC detector delay vs. lowest note",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="band_low t_trip / 0.25 where senses is filtered-output, else / 0.5",
    sentence="DC detector ({senses}) delay {t_trip}; the lowest note, {band_low}, needs"
    " {t_trip:/figure} at least.",
    inputs={
        "t_trip": Input("protection.dc_detector.t_trip"),
        "band_low": Input("band_low"),
        "senses": Input("detector_senses"),
    },
    limits=AtLeast(
        major="1",
        minor="2",
        basis={
            "major": derivation(
                "a square wave behind a low-pass of small threshold trips it when"
                " 4 f t is below 1; half a period is direct voltage to a timer"
            ),
            "minor": derivation("half a period where it is not said that a low-pass helps"),
        },
    ),
    levers=(Lever("protection.dc_detector.t_trip", "10 ms"),),
    sources=(
        derivation("sine and square wave through a first-order low-pass, checked by simulation"),
    ),
    cases=(
        Case(
            {"t_trip": "25 ms", "band_low": "20 Hz", "senses": "timed-output"},
            gives="1",
            origin="derived: half a period of 20 Hz lasts 25 ms",
        ),
        Case(
            {"t_trip": "12.5 ms", "band_low": "20 Hz", "senses": "filtered-output"},
            gives="1",
            origin="computed: simulated low-pass of small threshold, square wave of 20 Hz",
        ),
    ),
    topic=("protection.dc_detector.t_trip",),
    fails=BASS,
    passes=BASS.replace("t_trip: 5 ms", "t_trip: 300 ms"),
)

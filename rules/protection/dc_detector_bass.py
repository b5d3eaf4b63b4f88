"""Delay of the direct-voltage detector: slow enough for the bass.

Half a period of the lowest note is direct voltage for as long as it lasts.  A detector that
takes longer than that to act at full direct voltage cannot be fired by a note, whatever is
inside it.  A detector that counts time fires as soon as it is quicker.  One with a simple
low-pass stands more: its threshold is small against the rail, and it fires only when the
delay falls below the period over 2 pi.

The figure is the delay over half the period of the lowest note of the channel.  Below 1 a
detector that counts time fires: minor, as the spec does not say which kind it is.  Below
1 / pi even a low-pass fires at full level: major, the music stops.  First cure: a longer
delay, up to half a second.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation


def figure(t_trip: float, band_low: float) -> float:
    return 2 * band_low * t_trip


BASS = """
protection: {dc_detector: {v_trip: 2 V, t_trip: 5 ms}}
channels:
  main:
    rated_power: 50 W
    band: 20 Hz .. 200 Hz
"""

CHECK = Check(
    title="Bass against the delay of the direct-voltage detector",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="2 band_low t_trip",
    sentence="The detector acts after {t_trip}, {figure} times half a period of the lowest note,"
    " {band_low}.",
    inputs={
        "t_trip": Input("protection.dc_detector.t_trip"),
        "band_low": Input("band_low"),
    },
    limits=AtLeast(
        major="0.31831",
        minor="1",
        basis={
            "major": derivation("low-pass of small threshold: trips when 2 pi f t is below 1"),
            "minor": derivation("half a period is direct voltage while it lasts"),
        },
    ),
    levers=(Lever("protection.dc_detector.t_trip", "10 ms"),),
    sources=(derivation("a sine through a first-order low-pass, checked by simulation"),),
    cases=(
        Case(
            {"t_trip": "25 ms", "band_low": "20 Hz"},
            gives="1",
            origin="derived: half a period of 20 Hz lasts 25 ms",
        ),
        Case(
            {"t_trip": "7.9577 ms", "band_low": "20 Hz"},
            gives="0.31831",
            origin="computed: simulated low-pass of small threshold just trips at 20 Hz",
        ),
    ),
    topic=("protection.dc_detector.t_trip",),
    fails=BASS,
    passes=BASS.replace("t_trip: 5 ms", "t_trip: 300 ms"),
)

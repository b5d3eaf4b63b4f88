"""Threshold of the direct-voltage detector against the offset that the stage always has.

Every stage leaves some millivolts of direct voltage on its loudspeaker, and a detector that
trips below them disconnects the loudspeaker for good, or chatters. On the bench that is found
within a minute, and the usual remedy there is to disable the detector, which then protects
nobody. A detector with a threshold of a few millivolts belongs into a part that trims its
offset; beside another stage its number is mostly a slip of the unit.

The figure is the largest offset over the lowest threshold. Above 1 is major: the amplifier does
not play. Above a half is minor, since offsets drift with temperature and age (common practice,
no source). A detector that watches duty or oscillation has no threshold in volts. First fix:
a higher threshold, far below what hurts the voice coil, or a trimmed offset.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation

TRIPS = derivation("a detector whose threshold lies below a steady voltage trips at once")


def figure(dc_offset: float, v_trip: float) -> float:
    return dc_offset / v_trip


DETECTOR = """
protection: {dc_detector: {v_trip: 15 mV, t_trip: 300 ms}}
channels: {main: {rated_power: 50 W, dc_offset: 20 mV}}
"""

CHECK = Check(
    title="Steady DC offset vs. DC detector threshold",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="dc_offset / v_trip",
    sentence="Steady DC offset {dc_offset}; DC detector threshold {v_trip} ({figure:%}).",
    inputs={
        "dc_offset": Input("dc_offset"),
        "v_trip": Input("protection.dc_detector.v_trip"),
    },
    applies={"detector_senses": ("filtered-output", "timed-output")},
    limits=AtMost(major="1", minor="0.5", basis={"major": TRIPS, "minor": COMMON_PRACTICE}),
    levers=(Lever("protection.dc_detector.v_trip", "0.5 V"), Lever("dc_offset", "5 mV")),
    sources=(TRIPS,),
    cases=(
        Case(
            {"dc_offset": "20 mV", "v_trip": "15 mV"},
            gives="1.333333",
            origin="derived: 20 mV over 15 mV",
        ),
        Case(
            {"dc_offset": "50 mV", "v_trip": "4 V"},
            gives="0.0125",
            origin="common practice: 50 mV of a good stage below a threshold of 4 V",
        ),
    ),
    topic=("protection.dc_detector.v_trip",),
    fails=DETECTOR,
    passes=DETECTOR.replace("v_trip: 15 mV", "v_trip: {min: 1.5 V, typ: 2 V, max: 2.6 V}"),
)

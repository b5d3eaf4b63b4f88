"""Threshold of the direct-voltage detector.

The detector sees the music through a low-pass and trips when what is left exceeds its
threshold.  Too high, it misses a fault that does not reach the rail, and a low supply never
trips it; too low, deep bass and offsets trip it.

The figure is the highest threshold over the smaller one of 4 V and 20 % of the lowest rail. 4 V
are what a much-copied reference board of two 35 V rails uses; a fifth of the rail leaves room
for a sagging supply (common practice). Above 1 is minor: a shorted bridge still puts the whole
rail on the loudspeaker and trips it. Above 1.7 is major: 6.9 V, the heat of 15 W in the 3.2 ohm
of a 4 ohm loudspeaker for ever, or a third of the rail, pass unseen. A detector that watches
duty or oscillation has no threshold in volts and is not judged here. First fix: a lower
threshold and a slower filter.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Constant,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.maths import smaller
from ..hazards import COIL

BOARD = Source(
    "IRAUDAMP7D rev 2.9, 2013",
    "detector of direct voltage at 4 V, rails of 28 .. 60 V; no page given",
)


def figure(v_trip: float, v_rail_low: float, highest: float, share: float) -> float:
    return v_trip / smaller(highest, share * v_rail_low)


DETECTOR = """
supply: {source: dc-source, rails: single, converter: none, v_rail: 18 V .. 26 V}
protection: {dc_detector: {v_trip: 4.5 V, t_trip: 300 ms}}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="DC detector threshold vs. limit",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="v_trip / smaller of highest and share v_rail_low",
    sentence="DC detector trips at {v_trip}; limit {v_trip:/figure} (the lower of 4 V and a fifth"
    " of the {v_rail_low} rail).",
    inputs={
        "v_trip": Input("protection.dc_detector.v_trip"),
        "v_rail_low": Input("v_rail_low"),
        "highest": Constant("4 V", "threshold of the reference board", BOARD),
        "share": Constant("0.2", "part of the rail", COMMON_PRACTICE),
    },
    applies={"detector_senses": ("filtered-output", "timed-output")},
    limits=AtMost(
        major="1.7",
        minor="1",
        basis={
            "major": derivation("15 W in 3.2 ohm, a 4 ohm loudspeaker, are 6.9 V, 1.7 times 4 V"),
            "minor": BOARD,
        },
    ),
    levers=(Lever("protection.dc_detector.v_trip", "0.5 V"),),
    sources=(BOARD, COMMON_PRACTICE),
    cautions=(COIL,),
    cases=(
        Case(
            {"v_trip": "4 V", "v_rail_low": "28 V"},
            gives="1",
            origin="published: IRAUDAMP7D-100, 4 V on rails of 28 .. 45 V",
        ),
        Case(
            {"v_trip": "4 V", "v_rail_low": "12 V"},
            gives="1.666667",
            origin="common practice: a fifth of 12 V is 2.4 V",
        ),
    ),
    topic=("protection.dc_detector.v_trip",),
    fails=DETECTOR,
    passes=DETECTOR.replace("v_trip: 4.5 V", "v_trip: {min: 1.5 V, typ: 2 V, max: 2.6 V}"),
)

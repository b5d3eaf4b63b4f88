"""Delay of the direct-voltage detector: fast enough for the coil.

A voice coil is a gram or a few of copper or aluminium.  Some hundred watts of direct current
heat it by hundreds of kelvin a second, and the cone is at its stop meanwhile.  The trade
asks for half a second (common practice, no source); above it is major, as the detector is
there but comes late.  After 5 s two hundred watts have heated a coil of five grams by some 500 K,
beyond what paper withstands: then it is as good as none, and critical.

It does not apply where no switch can put direct voltage on a load: piezo transducers, and behind
capacitors.  Whether the delay is long enough to let the bass pass is asked by dc-detector-bass.
First fix: less filtering, with a lower threshold to go with it.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..hazards import COIL


def figure(t_trip: float) -> float:
    return t_trip


CHECK = Check(
    title="DC detector delay",
    figure=figure,
    unit="s",
    each="product",
    stake="safety",
    formula="t_trip",
    sentence="DC detector acts after {figure}.",
    inputs={"t_trip": Input("protection.dc_detector.t_trip")},
    applies={"dc_reaches_any": "yes"},
    limits=AtMost(
        critical="5 s",
        major="0.5 s",
        basis={
            "critical": derivation("198 W heat 5 g of copper by 500 K in 5 s"),
            "major": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("protection.dc_detector.t_trip", "50 ms"),),
    sources=(COMMON_PRACTICE, derivation("heating rate: power over mass and specific heat")),
    cautions=(COIL,),
    cases=(
        Case(
            {"t_trip": "0.3 s"},
            gives="0.3 s",
            origin="common practice: detectors with a low-pass of a few hertz act in 0.1 .. 0.3 s",
        ),
        Case(
            {"t_trip": "1.2 s"},
            gives="1.2 s",
            origin="computed: ODE of a 5 g copper coil at 198 W: 100 K a second, 1.2 s is late",
        ),
    ),
    topic=("protection.dc_detector.t_trip",),
    fails="""
protection: {dc_detector: {v_trip: 2 V, t_trip: {max: 1.2 s}}}
channels: {main: {rated_power: 50 W, output_stage: {topology: full-bridge}}}
""",
    passes="""
protection: {dc_detector: {v_trip: 2 V, t_trip: {max: 300 ms}}}
channels: {main: {rated_power: 50 W, output_stage: {topology: full-bridge}}}
""",
)

"""Carrier harmonics at 30 MHz against what a filter can stop.

The harmonics of the switch node fall with their number, and faster above the frequency
that the edge time sets. At 30 MHz a 24 V node with 20 ns edges still has 0.1 V, nearly
100 dB above a microvolt. The class of CISPR 32 that is claimed allows 60 (class B) or 73
(class A) at a mains port there, taken as the yardstick. An inductor-capacitor filter of
real parts stops about 40 dB at 30 MHz, where the inductor is a capacitor and the capacitor an
inductor; a bead 20, nothing without either. What is left over has to come from layout,
slower edges and shielding. This is a first estimate, to be settled by measurement; it
speaks only where a class is claimed and is never more than minor.
"""

from typing import Any

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
from ..formulas.maths import PI, log10, smaller

STOPPED = {"lc": 40, "bead": 20, "filterless": 0}
ALLOWED = {"a": 73, "b": 60}


def figure(
    v_swing: Any, carrier: Any, t_edge: Any, filter_kind: str, emission_class: str,
    f_edge: Any, microvolt: Any,
) -> Any:
    """Level at 30 MHz less what the class allows and the filter stops, in dB."""
    bend = smaller(0.8 / (PI * f_edge * t_edge), 1)
    peak = 2 * v_swing * carrier / (PI * f_edge) * bend
    level = 20 * log10(peak / 2**0.5 / microvolt)
    return level - ALLOWED[emission_class] - STOPPED[filter_kind]


CHECK = Check(
    title="Carrier harmonics at 30 MHz",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="20 log10(sqrt(2) v_swing carrier/(pi f_edge) b / microvolt)"
    " - 60 (73 for emission_class a) - 40, 20, 0 for filter_kind lc, bead, filterless;"
    " b = 0.8/(pi f_edge t_edge), at most 1",
    sentence="a node of {v_swing} with edges of {t_edge} is {figure} above what class"
    " {emission_class} and a filter of kind {filter_kind} leave room for at 30 MHz",
    inputs={
        "v_swing": Input("v_swing", "V", "swing of one switch node"),
        "carrier": Input("modulator.carrier", "Hz", "switching frequency of one leg"),
        "t_edge": Input("t_edge", "ns", "edge of the switch node, 10 to 90 %"),
        "filter_kind": Input("filter_kind", "word", "what stands before the load"),
        "emission_class": Input("claims.emission_class", "word", "class of CISPR 32 claimed"),
        "f_edge": Constant("30 MHz", "lower end of the radiated range",
                           Source("CISPR 32, radiated limits from 30 MHz", kind="quoted")),
        "microvolt": Constant("1 uV", "reference of the level", derivation("dB above 1 uV")),
    },
    limits=AtMost(minor="0 dB", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("modulator.carrier", "10 kHz"), Lever("output_stage.t_edge", "5 ns")),
    sources=(
        derivation("spectrum of a trapezoid: 2 V/(n pi), bent at 1/(pi t) of the full edge"),
        Source("EN 55022 limits, mains port, 5 to 30 MHz", "73 and 60 dBuV quasi-peak",
               "quoted"),
    ),
    cases=(
        Case(
            {"v_swing": "24 V", "carrier": "400 kHz", "t_edge": "16 ns",
             "filter_kind": "filterless", "emission_class": "b"},
            gives="37.23 dB",
            origin="computed: spectrum of a sampled trapezoid, harmonic 75 at 97.23 dBuV",
            tolerance=0.015,
        ),
        Case(
            {"v_swing": "24 V", "carrier": "400 kHz", "t_edge": "16 ns",
             "filter_kind": "lc", "emission_class": "b"},
            gives="-2.33 dB",
            origin="derived: envelope of the same trapezoid, 40 dB less",
            tolerance=0.01,
        ),
    ),
    topic=("claims.emission_class",),
    asked_from=None,
    fails="""
supply: {source: dc-source, rails: single, v_rail: 12 V}
channels:
  main:
    output_stage: {topology: full-bridge, t_edge: 5 ns}
    modulator: {levels: three-level, carrier: 300 kHz}
    filter: {type: bead}
claims: {emission_class: b}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    output_stage: {topology: full-bridge, t_edge: 20 ns}
    modulator: {carrier: 400 kHz}
    filter: {inductor: {l: 10 uH}}
claims: {emission_class: b}
""",
)

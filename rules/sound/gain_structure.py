"""Gain beyond what full output needs.

Gain that is never used costs twice: the control works in the first part of its travel
only, and the noise of the input stage is amplified by the surplus.  A source that can
drive the channel 12 dB beyond its clip level also keeps it in clipping when someone turns
it up.

What to do first: less gain ahead of the power stage, or an attenuator at the input.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..formulas.acoustics import decibel


def figure(source_level: float, gain: float, m_max: float, v_ideal: float) -> float:
    return decibel(2**0.5 * source_level * gain / (m_max * v_ideal))


CHECK = Check(
    title="Gain vs. output clip level",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="20 log10(2^0.5 source_level gain / (m_max v_ideal))",
    sentence="{source_level} from the source at gain {gain} is {figure:+above|below} output"
    " clipping ({v_ideal} at {m_max:%} modulation).",
    inputs={
        "source_level": Input("signal.source_level"),
        "gain": Input("gain"),
        "m_max": Input("m_max"),
        "v_ideal": Input("v_ideal"),
    },
    limits=AtMost(minor="12 dB", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("gain", "1 V/V"),),
    sources=(derivation("ratio of the driven to the possible peak"), COMMON_PRACTICE),
    cases=(
        Case(
            {"source_level": "1 V", "gain": "56.57 V/V", "m_max": 1, "v_ideal": "40 V"},
            gives="6.0207 dB",
            origin="published: 100 W in 8 ohm (40 V peak) from 0.5 V; driven with twice that",
        ),
        Case(
            {"source_level": "1.2277 V", "gain": "60 V/V", "m_max": 0.95, "v_ideal": "24 V"},
            gives="13.196 dB",
            origin="computed: levels, +4 dBu + 35.56 dB against 26.37 dBu of a 22.8 V peak",
        ),
    ),
    topic=("signal.source_level",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
signal: {source_level: 2 V}
channels:
  main: {gain: 60 V/V, output_stage: {topology: full-bridge}, modulator: {m_max: 95 %}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
signal: {source_level: 2 V}
channels:
  main: {gain: 20 V/V, output_stage: {topology: full-bridge}, modulator: {m_max: 95 %}}
""",
)

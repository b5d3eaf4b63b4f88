"""Clip level of the input stage against that of the power stage.

The power stage should be the first to clip.  If the input stage does, the channel never
reaches its output, the limiter and the clip indicator behind it see nothing, and the
distortion sounds at every setting of the control.  It is a remark, since a channel on a rail
higher than its power needs may clip wherever it likes; that its rated power gets through is
another check (input-stage-power).

What to do first: move gain from ahead of the input stage to behind it, or give that stage
a higher supply.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, Source, derivation


def figure(v_in_max: float, gain: float, m_max: float, v_ideal: float) -> float:
    return 2**0.5 * v_in_max * gain / (m_max * v_ideal)


CHECK = Check(
    title="Input clip level vs. output clip level",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="2^0.5 v_in_max gain / (m_max v_ideal)",
    sentence="Input stage clips at {v_in_max}; the output clips at {v_in_max:/figure} input"
    " ({figure:%}).",
    inputs={
        "v_in_max": Input("signal.v_in_max"),
        "gain": Input("gain"),
        "m_max": Input("m_max"),
        "v_ideal": Input("v_ideal"),
    },
    limits=AtLeast(minor="1", basis={"minor": derivation("below 1 the input stage clips first")}),
    levers=(Lever("gain", "1 V/V"),),
    sources=(
        derivation("ratio of the two clip levels, both at the output"),
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 4, table 1: +-35 V, gain 30: example of a board",
        ),
    ),
    cases=(
        Case(
            {"v_in_max": "2 V", "gain": "30 V/V", "m_max": 1, "v_ideal": "35 V"},
            gives="2.42437",
            origin="computed: by crests, IRAUDAMP7D at +-35 V, gain 30; 2 V rms assumed: 84.85 V",
        ),
        Case(
            {"v_in_max": "0.7746 V", "gain": "20 V/V", "m_max": 0.95, "v_ideal": "24 V"},
            gives="0.96092",
            origin="computed: levels, 0 dBu + 26.02 dB against 24.15 dBu of a 22.8 V peak",
        ),
    ),
    topic=("signal.v_in_max",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 36 V}
signal: {v_in_max: 0.9 V}
channels:
  main: {gain: 20 V/V, output_stage: {topology: full-bridge}, modulator: {m_max: 95 %}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 36 V}
signal: {v_in_max: 2 V}
channels:
  main: {gain: 20 V/V, output_stage: {topology: full-bridge}, modulator: {m_max: 95 %}}
""",
)

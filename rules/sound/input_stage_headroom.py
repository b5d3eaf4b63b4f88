"""Clip level of the input stage against that of the power stage.

The power stage, or a limiter ahead of it, must be the first to act.  If the input stage clips
before, the channel never reaches its output, the limiter and the clip indicator behind it see
nothing, and the distortion sounds at every setting of the control.  A channel that is rated at
less than its rail gives, such as a door station on 24 V, has to reach its rated power undistorted
and no more: the output counted is the least of what rail, limiter and rating need.

What to do first: move gain from ahead of the input stage to behind it, or give that stage
a higher supply.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, Source, derivation
from ..formulas.constants import NO_LIMITER
from ..formulas.maths import smaller


def figure(
    v_in_max: float, gain: float, m_max: float, v_ideal: float, v_limiter: float, v_rated: float
) -> float:
    """Crest that the input stage lets through over the one that the output needs."""
    needed = smaller(smaller(m_max * v_ideal, v_limiter), v_rated)
    return 2**0.5 * v_in_max * gain / needed


CHECK = Check(
    title="Input clip level vs. output clip level",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="2^0.5 v_in_max gain / least of m_max v_ideal, v_limiter and v_rated",
    sentence="Input stage clips at {v_in_max}; rating, limiter or clipping of the output needs"
    " {v_in_max:/figure} ({figure:%}).",
    inputs={
        "v_in_max": Input("signal.v_in_max"),
        "gain": Input("gain"),
        "m_max": Input("m_max"),
        "v_ideal": Input("v_ideal"),
        "v_limiter": Input("limiter.v_peak", default=NO_LIMITER),
        "v_rated": Input("v_rated_crest"),
    },
    limits=AtLeast(major="1", basis={"major": derivation("below 1 the input stage clips first")}),
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
            {
                "v_in_max": "2 V",
                "gain": "30 V/V",
                "m_max": 1,
                "v_ideal": "35 V",
                "v_limiter": "90 V",
                "v_rated": "33 V",
            },
            gives="2.5713",
            origin="computed: by crests, IRAUDAMP7D, gain 30; 2 V rms assumed: 84.85 V over 33 V",
        ),
        Case(
            {
                "v_in_max": "0.7746 V",
                "gain": "20 V/V",
                "m_max": 0.95,
                "v_ideal": "24 V",
                "v_limiter": "90 V",
                "v_rated": "90 V",
            },
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

"""Crossover of the loop against the carrier.

In a loop around a triangle modulator the integrator passes the ripple of the switch node
to the comparator. If that ripple is steeper than the triangle, the comparator switches
more than once a period and the stage runs wild. For an integrator the limit is
2 carrier / (pi (1 + M)) for the crossover: 2/pi of the carrier at idle, 1/pi at full
modulation. A loop of higher order has the same limit on the asymptote that it shows at
high frequency, and must be stable besides. Self-oscillating stages work exactly at their
limit and are not concerned. Loops inside an integrated part are the maker's business: the
check speaks only where a crossover is stated.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.maths import PI


def figure(loop_crossover: float, m_max: float, carrier: float) -> float:
    """Crossover over the highest one that gives one pulse a period."""
    return loop_crossover * PI * (1 + m_max) / (2 * carrier)


CHECK = Check(
    title="Loop crossover vs. carrier limit",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="loop_crossover pi (1 + m_max) / (2 carrier)",
    sentence="Loop crossover {loop_crossover}; limit {loop_crossover:/figure} with a {carrier}"
    " carrier ({figure:%}).",
    inputs={
        "loop_crossover": Input("modulator.loop_crossover"),
        "m_max": Input("m_max", unit="%"),
        "carrier": Input("modulator.carrier"),
    },
    applies={
        "modulator.type": "natural-sampling",
        "modulator.feedback": ("before-filter", "after-filter"),
    },
    limits=AtMost(
        major="1",
        minor="0.8",
        basis={
            "major": derivation("slope of the ripple equal to the slope of the carrier"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("modulator.loop_crossover", "1 kHz"),
        Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),
    ),
    sources=(
        derivation("ripple slope of an integrator, pi f_u (1 + M) per full scale, against 4 f"),
        Source("Cox and Mouton, arXiv 1802.02983", "abstract: stability of a third-order loop"),
    ),
    cases=(
        Case(
            {"loop_crossover": "127.3 kHz", "m_max": "100 %", "carrier": "400 kHz"},
            gives="1",
            origin="computed: time-stepped loop, one pulse a period at 0.9 of the limit,"
            " many at 1.1",
            tolerance=0.001,
        ),
        Case(
            {"loop_crossover": "50 kHz", "m_max": "90 %", "carrier": "400 kHz"},
            gives="0.37306",
            origin="derived: 50 pi 1.9 / 800",
        ),
    ),
    topic=("modulator.loop_crossover",),
    fails="""
channels:
  main:
    modulator: {type: natural-sampling, carrier: 300 kHz, m_max: 95 %,
      feedback: before-filter, loop_crossover: 150 kHz}
""",
    passes="""
channels:
  main:
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %,
      feedback: before-filter, loop_crossover: 60 kHz}
""",
)

"""Damping of the filter by the highest rated load.

The load damps the filter. Q grows with the load resistance: parts chosen for 4 ohm have twice
the Q at 8 ohm. A Q of 0.7 is level; 1.0 peaks by 1.2 dB, 1.5 by 4 dB just above the band,
where cymbal noise, radio interference and the loop's own noise then grow. Published filters
that serve 4 to 8 ohm reach 1.2 to 1.48 at the high end, so 1.5 is the limit here; what
happens inside the band is the treble response's business. Above 2 the gain at the corner
doubles: 15 ohm behind 10 uH and 1 uF per leg was measured at 2.25 times at 51 kHz, and a
reference design warns that an input of 30 to 60 kHz then trips its protection. No published
design that works goes there with a load that it is rated for. The window of 0.6 to 0.8 of the
textbooks is a target, not a limit. Cure: scale inductor up and capacitor down at the same
corner for the higher load, or split the rated loads.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.lc import quality


def figure(l_total: float, c_total: float, load_high: float, n_legs: float, dcr: float) -> float:
    """Q with the highest rated load."""
    return quality(l_total, c_total, load_high, n_legs * dcr)


CHECK = Check(
    title="Filter Q at the highest rated load",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="sqrt(l_total c_total (1 + r/load_high)) / (l_total/load_high + r c_total),"
    " r = n_legs dcr",
    sentence="Filter Q {figure} with {load_high} ({l_total}, {c_total}).",
    inputs={
        "l_total": Input("l_total"),
        "c_total": Input("c_total"),
        "load_high": Input("load_high"),
        "n_legs": Input("n_legs"),
        "dcr": Input("filter.inductor.dcr"),
    },
    applies={
        "filter_kind": "lc",
        "filter.second_stage": "none",
        "filter_in_loop": "no",
        "loudspeaker.piezo": "none",
    },
    limits=AtMost(
        major="2",
        minor="1.5",
        basis={
            "major": Source(
                "Mattingly, recorded sweeps; IRAUDAMP7D reference design rev 2.9",
                "gain of 2.25 at 50.8 kHz; trip by supersonic input; no page given",
            ),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("filter.inductor.l", "E6"), Lever("filter.c_across.c", "E6")),
    sources=(
        Source("Widder and Zhao, EE Times, 9 Jan 2008", "p. 1: target Q 0.6 to 0.8"),
        derivation("denominator s^2 l c + s (l/z + r c) + 1 + r/z"),
    ),
    cases=(
        Case(
            {
                "l_total": "30 uH",
                "c_total": "0.937 uF",
                "load_high": "4 ohm",
                "n_legs": 1.0,
                "dcr": "0 ohm",
            },
            gives="0.7069",
            origin="published: MAX4295 data sheet p. 11, a Butterworth filter",
        ),
        Case(
            {
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "load_high": "8 ohm",
                "n_legs": 1.0,
                "dcr": "30 mohm",
            },
            gives="1.399",
            origin="computed: poles of the network by numerical root finding",
        ),
        Case(
            {
                "l_total": "20 uH",
                "c_total": "1 uF",
                "load_high": "8 ohm",
                "n_legs": 2.0,
                "dcr": "100 mohm",
            },
            gives="1.67692",
            origin="computed: poles of the ladder with both coils in line, 0.2 ohm",
        ),
    ),
    topic=("filter.inductor",),
    fails="""
channels:
  main:
    load_range: 4 ohm .. 16 ohm
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {inductor: {l: 22 uH}, c_across: {c: 680 nF, dielectric: polypropylene}}
""",
    passes="""
channels:
  main:
    load_range: 4 ohm .. 8 ohm
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {feedback: before-filter}
    filter: {inductor: {l: 22 uH}, c_across: {c: 470 nF, dielectric: polypropylene}}
""",
)

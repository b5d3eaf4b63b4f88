"""Peak of the filter with a piezo transducer as its load.

A piezo transducer is a capacitor.  It does not damp the output filter, it moves its corner down
and rings with it: 10 uH per leg, 0.68 uF and 150 nF peak by 28 dB at 39 kHz, where the
ripple, noise of the loop and an ultrasonic signal then meet a short.  A resistor in series with
the transducer is the remedy, and every maker of piezo tweeters wants one; it makes the capacitor
a damper.

The figure is the largest gain of the filter with the transducers behind their resistors and with
its own damper, no voice coil beside them. To the filter that is nearly no load at all, so the
limits are those of open-load-peaking. Not asked where a loop takes its signal behind the filter.
First fixes: the series resistor, a damper whose capacitor is as large as the filter's.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..derived.filter import R_PATH_AT_MOST
from ..formulas.lc import two_section_peak
from ..formulas.maths import log10

NOTHING = float("inf")


def figure(
    l_total: float,
    c_total: float,
    r_path: float,
    n_legs: float,
    l_second: float,
    c_second: float,
    r_damper: float,
    c_damper: float,
    r_series: float,
    c: float,
    series: float,
    parallel: float,
) -> float:
    """Largest gain with the piezo transducers as the load, in dB."""
    ladder = (l_total, c_total, NOTHING * r_path, r_path, n_legs * l_second, c_second)
    piezo = (r_series * series / parallel, c * parallel / series)
    return 20 * log10(two_section_peak(*ladder, r_damper, c_damper, *piezo))


HORN = """
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_power: 20 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge, devices: integrated, device: {r_ds_on: 70 mohm}}
    lead: none
    modulator: {feedback: before-filter}
    filter:
      inductor: {l: 10 uH, dcr: 20 mohm}
      c_across: {c: 330 nF, dielectric: polypropylene}
      damper: none
      second_stage: none
    loudspeaker: {piezo: {c: 470 nF, r_series: SERIES}}
"""

CHECK = Check(
    title="Filter peak with the piezo transducer",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="20 log10 of the largest gain of l_total with r_path, c_total, n_legs l_second,"
    " c_second and across it r_damper with c_damper and r_series with c, times series / parallel",
    sentence="Filter peaks by {figure} with the piezo transducer of {c} behind {r_series}.",
    inputs={
        "l_total": Input("l_total"),
        "c_total": Input("c_total"),
        "r_path": R_PATH_AT_MOST,
        "n_legs": Input("n_legs"),
        "l_second": Input("l_second"),
        "c_second": Input("c_second"),
        "r_damper": Input("r_damper"),
        "c_damper": Input("c_damper"),
        "r_series": Input("loudspeaker.piezo.r_series"),
        "c": Input("loudspeaker.piezo.c"),
        "series": Input("loudspeaker.series"),
        "parallel": Input("loudspeaker.parallel"),
    },
    applies={"filter_kind": "lc", "filter_in_loop": "no", "loudspeaker.piezo": "fitted"},
    limits=AtMost(
        major="20 dB", minor="12 dB", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(Lever("loudspeaker.piezo.r_series", "E12"), Lever("filter.damper.c", "E6")),
    sources=(derivation("Kirchhoff's laws along the ladder"),),
    cases=(
        Case(
            {
                "l_total": "20 uH",
                "c_total": "0.68 uF",
                "r_path": "0.2 ohm",
                "n_legs": 2,
                "l_second": "0 H",
                "c_second": "0 F",
                "r_damper": "1 ohm",
                "c_damper": "0 F",
                "r_series": "0 ohm",
                "c": "150 nF",
                "series": 1,
                "parallel": 1,
            },
            gives="27.81 dB",
            origin="derived: 20 log10 of sqrt(20 uH / 0.83 uF) / 0.2 ohm",
        ),
        Case(
            {
                "l_total": "20 uH",
                "c_total": "0.33 uF",
                "r_path": "0.2 ohm",
                "n_legs": 2,
                "l_second": "0 H",
                "c_second": "0 F",
                "r_damper": "1 ohm",
                "c_damper": "0 F",
                "r_series": "7 ohm",
                "c": "470 nF",
                "series": 2,
                "parallel": 2,
            },
            gives="7.998 dB",
            origin="computed: node equations on a fine grid of frequencies",
            tolerance=0.03,
        ),
    ),
    topic=("loudspeaker.piezo",),
    fails=HORN.replace("SERIES", "0 ohm"),
    passes=HORN.replace("SERIES", "8R2"),
)

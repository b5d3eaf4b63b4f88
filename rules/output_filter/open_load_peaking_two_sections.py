"""Peak of a filter of two sections with nothing connected.

The physics are those of open-load-peaking, which knows one section.  With a second section the
open output rings at two frequencies, and the upper one may lie where nothing in the path damps
it.  A damper at the output sits behind both sections and damps them more or less; the rule for
its best resistor holds for one section alone, so here its effect is judged by the whole network
and no rule of thumb.

Asked only where running without load is a stated use.  The limits are those of one section.
Cure: a series R-C at the output whose capacitor is as large as both of the filter's, a loop
around the filter, a low-pass at the input below two thirds of the lower resonance.
"""

from ...linter.check import Case, Check, Input
from ..formulas.lc import two_section_peak
from ..formulas.maths import log10
from .open_load_peaking import CHECK as ONE_SECTION

OPEN = float("inf")


def figure(
    l_total: float,
    c_total: float,
    r_path: float,
    n_legs: float,
    l_second: float,
    c_second: float,
    r_damper: float,
    c_damper: float,
) -> float:
    """Largest gain of both sections without load, in dB."""
    ladder = (l_total, c_total, OPEN * r_path, r_path, n_legs * l_second, c_second)
    return 20 * log10(two_section_peak(*ladder, r_damper, c_damper, r_damper, 0 * c_damper))


UNLOADED = """
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    open_load: yes
    rated_power: 20 W
    rated_load: 8 ohm
    lead: none
    output_stage: {topology: full-bridge, devices: integrated, device: {r_ds_on: 70 mohm}}
    modulator: {feedback: before-filter}
    filter:
      inductor: {l: 10 uH, dcr: 20 mohm}
      c_across: {c: 330 nF, dielectric: polypropylene}
      second_stage: {l: 1 uH, c: 100 nF}
      damper: DAMPER
"""

CHECK = Check(
    title="Filter peak without load, two sections",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="20 log10 of the largest gain of l_total with r_path, c_total, n_legs l_second,"
    " c_second and, across it, r_damper in series with c_damper",
    sentence="Filter of two sections peaks by {figure} without load ({l_total}, {c_total},"
    " {l_second}, {c_second}).",
    inputs={
        **ONE_SECTION.inputs,
        "n_legs": Input("n_legs"),
        "l_second": Input("l_second"),
        "c_second": Input("c_second"),
    },
    applies={**ONE_SECTION.applies, "filter.second_stage": "fitted"},
    limits=ONE_SECTION.limits,
    levers=ONE_SECTION.levers,
    cautions=ONE_SECTION.cautions,
    sources=ONE_SECTION.sources,
    cases=(
        Case(
            {
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "r_path": "0.2 ohm",
                "n_legs": 1.0,
                "l_second": "22 uH",
                "c_second": "0.68 uF",
                "r_damper": "1 ohm",
                "c_damper": "0 F",
            },
            gives="29.081 dB",
            origin="computed: node equations on a fine grid of frequencies",
            tolerance=0.01,
        ),
        Case(
            {
                "l_total": "20 uH",
                "c_total": "0.33 uF",
                "r_path": "0.2 ohm",
                "n_legs": 2.0,
                "l_second": "1 uH",
                "c_second": "0.1 uF",
                "r_damper": "6.8 ohm",
                "c_damper": "1 uF",
            },
            gives="4.831 dB",
            origin="computed: node equations on a fine grid of frequencies",
            tolerance=0.03,
        ),
    ),
    topic=("open_load",),
    fails=UNLOADED.replace("DAMPER", "none"),
    passes=UNLOADED.replace("DAMPER", "{r: 6R8, c: 1 uF}"),
)

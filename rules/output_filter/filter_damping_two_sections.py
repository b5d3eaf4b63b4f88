"""Peak of a filter of two sections with the highest rated load.

The physics are those of filter-damping, which knows one section.  A second section has a
resonance of its own, and the two pull each other apart: two equal sections of 22 uH and 0.68 uF,
each with its corner at 41 kHz, ring at 25 kHz and 67 kHz, and a load that damps one section well
may leave the pair with a peak in the treble.  So the whole network is solved: both sections, the
damper, the resistance of the inductors and the highest rated load as a resistor.

The limits are those of one section, turned into the gain that its Q has: a Q of 1.5 peaks by 1.6,
one of 2 by 2.07; a gain of 2.25 was measured where a board was overloaded.  What happens inside
the band is the treble response's business.  Not asked where the loop takes its signal behind
the filter.  Cure: a smaller second inductor with the larger capacitor, a damper at the output.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from ..formulas.lc import two_section_peak
from .filter_damping import CHECK as ONE_SECTION


def figure(
    l_total: float,
    c_total: float,
    load_high: float,
    n_legs: float,
    dcr: float,
    l_second: float,
    c_second: float,
    r_damper: float,
    c_damper: float,
) -> float:
    """Largest gain with the highest rated load."""
    ladder = (l_total, c_total, load_high, n_legs * dcr, n_legs * l_second, c_second)
    return two_section_peak(*ladder, r_damper, c_damper, r_damper, 0 * c_damper)


TWO = """
channels:
  main:
    load_range: 4 ohm .. LOAD
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {feedback: before-filter}
    filter:
      inductor: {l: 15 uH, dcr: 20 mohm}
      c_across: {c: 470 nF, dielectric: polypropylene}
      second_stage: {l: 3.3 uH, c: 330 nF}
      damper: none
"""

CHECK = Check(
    title="Filter peak at the highest rated load, two sections",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="largest gain of l_total with n_legs dcr, c_total, n_legs l_second, c_second and beside"
    " load_high r_damper in series with c_damper, over that at low frequency",
    sentence="Filter of two sections peaks {figure} times with {load_high} ({l_total}, {c_total},"
    " {l_second}, {c_second}).",
    inputs={
        **ONE_SECTION.inputs,
        "l_second": Input("l_second"),
        "c_second": Input("c_second"),
        "r_damper": Input("r_damper"),
        "c_damper": Input("c_damper"),
    },
    applies={
        "filter_kind": "lc",
        "filter.second_stage": "fitted",
        "filter_in_loop": "no",
        "loudspeaker.piezo": "none",
    },
    limits=AtMost(
        major="2.07",
        minor="1.59",
        basis={
            "major": derivation("gain of one section of a Q of 2: Q / sqrt(1 - 1 / (4 Q^2))"),
            "minor": derivation("gain of one section of a Q of 1.5"),
        },
    ),
    levers=(
        Lever("filter.second_stage.l", "E6"),
        Lever("filter.second_stage.c", "E6"),
        Lever("filter.damper.c", "E6"),
    ),
    sources=(*ONE_SECTION.sources, derivation("Kirchhoff's laws along the ladder")),
    cases=(
        Case(
            {
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "load_high": "16 ohm",
                "n_legs": 1.0,
                "dcr": "30 mohm",
                "l_second": "22 uH",
                "c_second": "0.68 uF",
                "r_damper": "1 ohm",
                "c_damper": "0 F",
            },
            gives="2.8888",
            origin="computed: node equations on a fine grid of frequencies",
            tolerance=0.03,
        ),
        Case(
            {
                "l_total": "20 uH",
                "c_total": "1 uF",
                "load_high": "8 ohm",
                "n_legs": 2.0,
                "dcr": "50 mohm",
                "l_second": "1.5 uH",
                "c_second": "0.47 uF",
                "r_damper": "4.7 ohm",
                "c_damper": "1 uF",
            },
            gives="1.7000",
            origin="computed: node equations on a fine grid of frequencies",
            tolerance=0.03,
        ),
    ),
    topic=("filter.second_stage",),
    fails=TWO.replace("LOAD", "16 ohm"),
    passes=TWO.replace("LOAD", "4 ohm"),
)

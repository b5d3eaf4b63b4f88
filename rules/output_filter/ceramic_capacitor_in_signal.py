"""Class-2 ceramic as the filter capacitor of the audio.

The capacitance of class-2 ceramic falls with voltage, by half and more for small parts
near their rating. As the filter capacitor it follows the audio: the corner moves with the
signal, and the third harmonic of the treble grows with the square of frequency over
corner. Half of the capacitance lost puts 0.5 % at a third of 20 kHz with a corner of 60
kHz, and 0.01 % at 1 kHz, where distortion is mostly claimed. Boards with such parts are
sold, so the finding is minor. A bias curve prints the slope of the charge, which this
formula wants. A loop that takes its signal behind the filter corrects it: then the check
does not apply. Cure: film across the load, ceramic only from the terminals to ground for
radio frequency.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.capacitor import bias_third_harmonic


def figure(band_high: float, f_corner: float, c_total: float, c_total_unbiased: float) -> float:
    """Third harmonic of the highest tone whose harmonic is still in the band."""
    return bias_third_harmonic(band_high / 3, f_corner, 1 - c_total / c_total_unbiased)


CHECK = Check(
    title="Third harmonic from a class-2 ceramic in the filter",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="3/4 (band_high/(3 f_corner))^2 (1 - c_total/c_total_unbiased)",
    sentence="DC bias leaves {c_total} of {c_total_unbiased} filter capacitance: {figure} third"
    " harmonic in the treble.",
    inputs={
        "band_high": Input("band_high"),
        "f_corner": Input("f_corner"),
        "c_total": Input("c_total"),
        "c_total_unbiased": Input("c_total_unbiased"),
    },
    applies={"filter_kind": "lc", "filter_in_loop": "no"},
    limits=AtMost(minor="0.1 %", basis={"minor": COMMON_PRACTICE}),
    levers=(
        Lever("filter.c_across.dielectric", ("polypropylene", "polyester", "ceramic-class-1")),
    ),
    sources=(
        derivation("first-order perturbation of the filter's equation, confirmed by solving it"),
        Source(
            "J. Widder and Y. T. Zhao, Understanding output filters for "
            "Class-D amplifiers, EE Times, 9 Jan. 2008",
            "p. 3: film across the load",
        ),
        Source(
            "KEMET, Why that 47 uF capacitor drops to 37 uF, 30 uF, or lower",
            "web page, opening paragraph",
        ),
    ),
    cases=(
        Case(
            {
                "band_high": "20 kHz",
                "f_corner": "100 kHz",
                "c_total": "0.9 uF",
                "c_total_unbiased": "1 uF",
            },
            gives="0.0349 %",
            origin="computed: solution of the differential equation, 0.0349 %",
            tolerance=0.06,
        ),
        Case(
            {
                "band_high": "20 kHz",
                "f_corner": "61 kHz",
                "c_total": "0.5 uF",
                "c_total_unbiased": "1 uF",
            },
            gives="0.4479 %",
            origin="derived: 0.75 (6.667/61)^2 0.5",
        ),
    ),
    topic=("filter.c_across.dielectric", "filter.c_ground.dielectric"),
    fails="""
channels:
  main:
    output_stage: {topology: half-bridge}
    modulator: {feedback: before-filter}
    filter: {inductor: {l: 10 uH}, c_across: {c: 1 uF, dielectric: ceramic-class-2}}
""",
    passes="""
channels:
  main:
    output_stage: {topology: half-bridge}
    modulator: {feedback: before-filter}
    filter: {inductor: {l: 10 uH}, c_across: {c: 1 uF, dielectric: polypropylene}}
""",
)

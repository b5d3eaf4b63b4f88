"""Temperature rise of the inductor with its core loss.

Inductors that are hot with no music are the classic surprise of two-level stages: the full
ripple runs at idle, and a core chosen for its saturation current alone burns it as core loss.
The figure adds the core loss at the largest ripple to the copper loss of a sine at rated
power and compares with the heat that makes the rated rise. The power law of the core is good
for perhaps 50 %, and it takes the triangle for a sine (7 % too much). A rise of 40 K is what
such parts are rated for; 60 K in the warm air of an enclosure ends at 120 degC, where wire
and plastic end. Without core data it asks for them: makers give them on request, or state the
rise at the ripple. Cure: more turns on the same core, a lower-loss core, a higher carrier,
three-level modulation.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)


def figure(
    rise_rated: float, i_inductor_rms: float, i_rms: float, p_core: float, n_legs: float, dcr: float
) -> float:
    """Rise by copper and core, in proportion to the heat of the rated current."""
    heat = i_inductor_rms**2 * dcr + p_core / n_legs
    return rise_rated * heat / (i_rms**2 * dcr)


CHECK = Check(
    title="Inductor temperature rise with core loss",
    figure=figure,
    unit="K",
    each="channel",
    stake="rating",
    formula="rise_rated (i_inductor_rms^2 dcr + p_core/n_legs) / (i_rms^2 dcr)",
    sentence="Inductor temperature rise {figure} ({p_core} core loss, {i_inductor_rms} rms).",
    inputs={
        "rise_rated": Input("filter.inductor.rise_rated"),
        "i_inductor_rms": Input("i_inductor_rms"),
        "i_rms": Input("filter.inductor.i_rms"),
        "p_core": Input("p_core"),
        "n_legs": Input("n_legs"),
        "dcr": Input("dcr_stated"),
    },
    applies={"filter_kind": "lc"},
    limits=AtMost(
        major="60 K", minor="40 K", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(
        Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),
        Lever("filter.inductor.a_e", "5 mm2"),
    ),
    sources=(
        Source("P. Szczerba and C. Worek, Electronics 2025, 14(14), 2883", "equation 1: power law"),
        Source("e2e.ti.com thread 641312", "10 uH inductors hot unloaded, two-level, 18 V"),
        derivation("rise in proportion to heat"),
    ),
    cases=(
        Case(
            {
                "rise_rated": "40 K",
                "i_inductor_rms": "5 A",
                "i_rms": "7 A",
                "p_core": "0 W",
                "n_legs": 2.0,
                "dcr": "9.4 mohm",
            },
            gives="20.408 K",
            origin="computed: square law from the 7 A for 40 K of a Sagami 7W14A; 5 A assumed",
        ),
        Case(
            {
                "rise_rated": "40 K",
                "i_inductor_rms": "0 A",
                "i_rms": "7 A",
                "p_core": "0.9212 W",
                "n_legs": 2.0,
                "dcr": "9.4 mohm",
            },
            gives="40 K",
            origin="derived: core loss equal to the copper loss at the rated current",
        ),
    ),
    topic=("filter.inductor",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 30 V}
channels:
  main:
    rated_power: 30 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge}
    modulator: {type: natural-sampling, levels: two-level, carrier: 300 kHz}
    filter:
      inductor: {l: 10 uH, i_rms: 5 A, dcr: 20 mohm, core: powder, turns: 15, a_e: 21 mm2,
        v_e: 850 mm3, p_v: 8000 kW/m3, exponent_f: 1.3, exponent_b: 2.2}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_power: 30 W
    rated_load: 8 ohm
    output_stage: {topology: full-bridge}
    modulator: {type: natural-sampling, levels: two-level, carrier: 400 kHz}
    filter:
      inductor: {l: 10 uH, i_rms: 5 A, dcr: 20 mohm, core: ferrite, turns: 12, a_e: 40 mm2,
        v_e: 1500 mm3, p_v: 375 kW/m3, exponent_f: 1.4, exponent_b: 2.6}
""",
)

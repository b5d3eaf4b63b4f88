"""Saturation of the inductor at the crest of the load current.

A core that saturates lets the current run away within the rest of the period: distortion
first, then the over-current trip. The crest is the clipped voltage over the lowest load that
the spec itself states (a stated minimum impedance, else the lowest rated load; the common 0.8
of rated is not assumed here, because dips at the crest of the bass are rare and much copied
boards would all fail) behind the cold path, plus the ripple that is left there. The core is
hot: power ferrite keeps 0.8 of its saturation current at 100 degC, powder nearly all, and
powder saturates softly. Printed currents are defined at 10 to 40 % loss of inductance; state
which. So saturation is an onset, not an edge: at the printed current 60 to 90 % of the
inductance is left, and makers of integrated stages ask for half of it at the trip current. A
third beyond the printed current about half is left; there the function is lost and the limit
is major. Published boards run 30 % beyond it at the clipped crest without trouble. A trip
above saturation is another matter. Cure: a larger core, not more turns; or a limiter.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source, derivation


def figure(i_sat_hot: float, i_inductor_crest: float) -> float:
    """Hot saturation current over the crest."""
    return i_sat_hot / i_inductor_crest


CHECK = Check(
    title="Inductor saturation current vs. peak current",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="i_sat_hot / i_inductor_crest",
    sentence="Inductor saturates at {i_sat_hot} hot; peak current {i_inductor_crest} ({figure:%}).",
    inputs={
        "i_sat_hot": Input("i_sat_hot"),
        "i_inductor_crest": Input("i_inductor_crest"),
    },
    applies={"filter_kind": "lc"},
    limits=AtLeast(
        major="0.75",
        minor="1.1",
        basis={
            "major": derivation(
                "boards that work go down to 0.76, IRAUDAMP7D at +-50 V: 0.75 spares them"
            ),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever(
            "filter.inductor.i_sat",
            (
                "2 A",
                "3 A",
                "4 A",
                "5 A",
                "6 A",
                "8 A",
                "10 A",
                "12 A",
                "16 A",
                "20 A",
                "25 A",
                "32 A",
            ),
        ),
    ),
    sources=(
        Source(
            "Wuerth Elektronik, Inductor saturation current explained, passive-components.eu",
            "article: definitions at 10, 20, 30 % loss",
        ),
        Source("NBitWonder notebook", "entries 017 to 019: 2.8 A reckoned, 2.3 A part"),
    ),
    cases=(
        Case(
            {"i_sat_hot": "2.3 A", "i_inductor_crest": "2.8 A"},
            gives="0.8214",
            origin="computed: NBitWonder notebook, 33 uH part of 2.3 A (entry 018); its author"
            " reckons with up to 2.8 A (017)",
        ),
        Case(
            {"i_sat_hot": "8 A", "i_inductor_crest": "7.5 A"},
            gives="1.0667",
            origin="computed: 30 V bridge into 4 ohm by hand, 10 A part at 100 degC",
        ),
    ),
    topic=("filter.inductor",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 26 V}
channels:
  main:
    rated_load: 8 ohm
    output_stage: {topology: full-bridge}
    modulator: {type: natural-sampling, levels: two-level, carrier: 250 kHz, m_max: 95 %}
    filter: {inductor: {l: 33 uH, i_sat: 2.3 A, core: ferrite}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 26 V}
channels:
  main:
    rated_load: 8 ohm
    output_stage: {topology: full-bridge}
    modulator: {type: natural-sampling, levels: two-level, carrier: 250 kHz, m_max: 95 %}
    filter: {inductor: {l: 33 uH, i_sat: 4.9 A, core: ferrite}}
""",
)

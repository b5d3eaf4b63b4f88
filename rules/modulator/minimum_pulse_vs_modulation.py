"""Modulation that the rated power needs against what the modulator lets through.

Dead time, edges and the refill of the bootstrap capacitor need a shortest pulse; it takes
2 t carrier from the largest modulation depth. With 100 ns at 400 kHz the stage ends at
92 % of the rail. The rated power fixes the depth that is needed from the rail as it is
under load. Above the limit the output clips before the rated power is reached, a few
percent below it there is nothing left for a sagging rail. A rating at 10 % distortion is
reduced to the sine at the onset of clipping first (1.29 times less power).

A distortion not given is not taken against the design: a power between those at 1 % and at
10 % counts as just reached (minor, figure 1), for the source may well rate at 10 %;
`rated_thd` settles it. What 10 % does not give either stays major.

Self-oscillating and integrated stages reach the rail unless the spec says otherwise.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..derived.rated import THD, THD_MOST
from ..formulas.modulation import share_of_clipped_power


def figure(
    rated_power: float,
    rated_thd: float,
    thd_most: float,
    z_load: float,
    v_ideal_loaded: float,
    m_max: float,
) -> float:
    """Depth needed for the rated power over the depth let through."""
    ratio = 2 * rated_power * z_load / (v_ideal_loaded * m_max) ** 2
    return share_of_clipped_power(ratio, rated_thd, thd_most) ** 0.5


CHECK = Check(
    title="Modulation for rated power vs. maximum modulation",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="root of the larger of r/k(thd_most) and smaller of r/k(rated_thd) and 1,"
    " r = 2 rated_power z_load / (v_ideal_loaded m_max)^2, k(d) = 1 + 0.048 (d/1 %)^0.778",
    sentence="{rated_power} into {z_load} needs {m_max:*figure} modulation; the stage clips at"
    " {m_max} ({figure:%}).",
    inputs={
        "rated_power": Input("rated_power"),
        "rated_thd": THD,
        "thd_most": THD_MOST,
        "z_load": Input("z_load"),
        "v_ideal_loaded": Input("v_ideal_promised"),
        "m_max": Input("m_max", unit="%"),
    },
    limits=AtMost(
        major="1",
        minor="0.95",
        basis={
            "major": derivation("the rated power is beyond the onset of clipping"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("supply.v_rail", "1 V"),
        Lever("battery.series", "1", when={"rail_feed": "pack"}, within=2),
        Lever("rated_power", "1 W"),
    ),
    sources=(
        derivation("depth = peak voltage / ideal peak; m_max = 1 - 2 t carrier"),
        Source("TPA3221 data sheet SLASEE9B", "p. 9: 88 W at 1 %, 30 V, 4 ohm"),
    ),
    cases=(
        Case(
            {
                "rated_power": "88 W",
                "rated_thd": "1 %",
                "thd_most": "1 %",
                "z_load": "4 ohm",
                "v_ideal_loaded": "30 V",
                "m_max": "100 %",
            },
            gives="0.8639",
            origin="published: TPA3221 data sheet, typical 88 W at 1 %; depth by hand",
        ),
        Case(
            {
                "rated_power": "300 W",
                "rated_thd": "1 %",
                "thd_most": "1 %",
                "z_load": "4 ohm",
                "v_ideal_loaded": "48 V",
                "m_max": "100 %",
            },
            gives="0.9969",
            origin="computed: 49.0 V peak by hand over 48 V and sqrt(1.048)",
        ),
    ),
    topic=("output_stage",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_power: 70 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, efficiency: 90 %, p_idle: 0.5 W}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 90 %}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_power: 45 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, efficiency: 90 %, p_idle: 0.5 W}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
""",
)

"""Source against the input power at rated power.

Rated power is the sine that each channel gives with all channels driven; the source must
deliver it with all losses for as long as the rating is claimed. The figure is the mean
input power over the source's continuous power. It does not look at the crest: within a
bass note the power swings between zero and twice the mean, and a source with a hard
current limit needs room for that too. Ask its maker what it does for ten milliseconds.

Above 1 is major: a rated limit fails. Within a tenth of it minor: the source runs at its
edge, hot and with no allowance for its ageing (common practice). Music asks for far less;
a source for music alone may be chosen smaller if the rating says so.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation


def figure(p_in: float, p_supply_max: float) -> float:
    return p_in / p_supply_max


CHECK = Check(
    title="Input power vs. continuous source power",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="p_in / p_supply_max",
    sentence="Input power {p_in} at rated power; the source gives {p_supply_max} continuously"
    " ({figure:%}).",
    inputs={
        "p_in": Input("p_in_rated"),
        "p_supply_max": Input("p_supply_max"),
    },
    applies={"rail_feed": ("source", "converter")},
    limits=AtMost(
        major="1",
        minor="0.9",
        basis={
            "major": derivation("conservation of energy at the source's terminals"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("supply.p_max", "10 W"), Lever("supply.i_max", "0.5 A")),
    sources=(
        derivation("input power is output, losses and other loads together"),
        Source("Lab.gruppen fP 3400 manual", "p. 13, table 3: mains power at 1/3 of the output"),
    ),
    cases=(
        Case(
            {"p_in": "1440 W", "p_supply_max": "1800 W"},
            gives="0.8",
            origin="published: Lab.gruppen fP 3400, table 3, 1000 W out; circuit of 1800 W assumed",
        ),
        Case(
            {"p_in": "138.5 W", "p_supply_max": "120 W"},
            gives="1.15417",
            origin="computed: IRAUDAMP7D, fig. 15 read: 120.2 W at 86.8 %; source assumed",
        ),
    ),
    topic=("supply.i_max", "supply.p_max"),
    asked_from="production",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V, p_max: 100 W}
channels:
  main:
    rated_power: 95 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, efficiency: 88 %}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 30 V, p_max: 150 W}
channels:
  main:
    rated_power: 95 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, efficiency: 88 %}
""",
)

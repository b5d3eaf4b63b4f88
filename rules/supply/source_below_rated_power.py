"""Source or converter against the rated power, before any loss.

The first sum of any proposal: no loss model can make an amplifier deliver more than its
source does. The figure is the rated output of all channels and the other loads over what
the source or converter gives without end. It needs few facts, so it also works on an early
or optimistic spec: a published project hangs 30 W on a step-up module that gives 18 W.

Above 1 the rated power cannot be sustained by any means: major, at every milestone. That short
peaks come out of the capacitors does not help: in the bass they carry next to nothing. The
pack that is the rail itself is judged by its own checks.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation


def figure(p_rated_sum: float, p_supply_max: float) -> float:
    return p_rated_sum / p_supply_max


CHECK = Check(
    title="Rated power vs. continuous source power",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="p_rated_sum / p_supply_max",
    sentence="Rated power and other loads {p_rated_sum}; the source gives {p_supply_max}"
    " continuously ({figure:%}).",
    inputs={
        "p_rated_sum": Input("p_rated_sum"),
        "p_supply_max": Input("p_supply_max"),
    },
    applies={"rail_feed": ("source", "converter")},
    limits=AtMost(
        major="1", basis={"major": derivation("conservation of energy, all losses left out")}
    ),
    levers=(Lever("supply.p_max", "10 W"), Lever("supply.i_max", "0.5 A")),
    sources=(
        derivation("conservation of energy: output cannot exceed input"),
        Source(
            "sonocotta, esp32-audio-dock, README",
            "2 x 10 W into 8 ohm: a supply of at least 9 V, 3 A is advised",
        ),
        Source("reddit r/diyaudio 1i3kotu", "30 W loudspeaker; a reply guesses 18 W of step-up"),
    ),
    cases=(
        Case(
            {"p_rated_sum": "30 W", "p_supply_max": "18 W"},
            gives="1.66667",
            origin="published: reddit r/diyaudio 1i3kotu, squeaks at volume; 18 W by a reply",
        ),
        Case(
            {"p_rated_sum": "20 W", "p_supply_max": "27 W"},
            gives="0.740741",
            origin="published: sonocotta, esp32-audio-dock README, 2 x 10 W on 9 V, 3 A",
        ),
    ),
    topic=("supply.i_max", "supply.p_max"),
    asked_from="prototype",
    forbidden=True,
    fails="""
supply: {source: battery, converter: step-up, rails: single, p_max: 18 W}
channels:
  mono: {rated_power: 30 W, rated_load: 4 ohm}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 9 V, i_max: 3 A}
channels:
  left: {rated_power: 10 W, rated_load: 8 ohm}
  right: {rated_power: 10 W, rated_load: 8 ohm}
""",
)

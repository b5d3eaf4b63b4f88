"""Continuous current of the cells.

Heat in a cell goes with the square of its current, so the rms value counts and not the
mean. On a bridge playing a full-scale sine the pack's current swings between zero and
twice its mean, and its rms is root 3/2 times the mean, 22 % more, as far as bulk capacitors
do not smooth it, and in the bass they do not. Half bridges are worse.

The pack is taken at its lowest charge and aged, all channels at rated power; the current
is shared equally by the strings. A converter ahead of the rail multiplies the current by
its ratio and its losses. Above the cell's continuous rating is critical, since a lithium
cell that overheats can vent and burn; above 80 % of it minor (common practice).

Cure: strings in parallel, more cells in series, a limiter of the long-term level.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..formulas.supply import BRIDGE_CURRENT, CONSTANT_POWER
from ..hazards import CELLS


def figure(i_source_rms: float, parallel: float, i_cont: float) -> float:
    return i_source_rms / (parallel * i_cont)


CHECK = Check(
    title="Cell current vs. continuous rating",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="i_source_rms / (parallel * i_cont)",
    sentence="Each cell carries {i_cont:*figure} rms at rated power ({parallel:string|strings});"
    " rated {i_cont} continuous ({figure:%}).",
    inputs={
        "i_source_rms": Input("i_source_rms"),
        "parallel": Input("battery.parallel"),
        "i_cont": Input("battery.cell.i_cont"),
    },
    applies={"supply.source": "battery"},
    limits=AtMost(
        critical="1",
        minor="0.8",
        basis={
            "critical": derivation("the maker's continuous rating is an absolute limit"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("battery.parallel", "1", within=3),
        Lever("battery.series", "1", within=2),
        Lever("rated_power", "1 W"),
    ),
    sources=(CONSTANT_POWER, BRIDGE_CURRENT),
    cautions=(CELLS,),
    cases=(
        Case(
            {"i_source_rms": "5.722 A", "parallel": 2, "i_cont": "8 A"},
            gives="0.357625",
            origin="computed: time simulation of a 40 Hz sine, 20.4 V, 0.12 ohm: 5.722 A rms",
        ),
        Case(
            {"i_source_rms": "11.53 A", "parallel": 1, "i_cont": "7.2 A"},
            gives="1.60139",
            origin="computed: 30 W as on one cell of reddit 1i3kotu, by hand; cell of 7.2 A "
            "assumed",
        ),
    ),
    topic=("battery.cell.i_cont",),
    asked_from="prototype",
    fails="""
supply:
  source: battery
  rails: single
  converter: step-up
  converter_efficiency: 85 %
  v_rail: 24 V
  r_source: 10 mohm
battery:
  chemistry: li-ion
  series: 1
  cell: {capacity: 3.6 Ah, v_oc_low: 3.4 V, r_internal: 20 mohm .. 40 mohm, i_cont: 7.2 A}
channels:
  mono: {rated_power: 20 W, output_stage: {topology: full-bridge, efficiency: 85 %}}
""",
    passes="""
supply: {source: battery, rails: single}
battery:
  chemistry: li-ion
  series: 6
  parallel: 2
  cell: {capacity: 3.5 Ah, v_oc_low: 3.4 V, r_internal: 28 mohm .. 84 mohm, i_cont: 8 A}
channels:
  left: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
  right: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
""",
)

"""Peak current of the cells.

At the crest of a bass note with all channels at rated power a bridge takes twice its mean
power, a half bridge more, and the sagging pack adds to the current. Cells state a pulse
rating for seconds beside the continuous one; the crest lasts some ten milliseconds and
comes back with every half cycle, so it must stay within the pulse rating.

Above it is major: voltage collapse, early ageing, and in packs with a fuse in each cell an
open string that the others then carry. Within a tenth of it is minor, because strings do
not share equally, least of all when one is older or colder (common practice, no source).

Cure as for the continuous current: strings in parallel, or a limiter of the peak level.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..formulas.supply import BRIDGE_CURRENT, CONSTANT_POWER


def figure(i_source_peak: float, parallel: float, i_pulse: float) -> float:
    return i_source_peak / (parallel * i_pulse)


CHECK = Check(
    title="Peak cell current vs. pulse rating",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="i_source_peak / (parallel * i_pulse)",
    sentence="Each cell carries {i_pulse:*figure} at bass peaks ({parallel:string|strings}); pulse"
    " rating {i_pulse} ({figure:%}).",
    inputs={
        "i_source_peak": Input("i_source_peak"),
        "parallel": Input("battery.parallel"),
        "i_pulse": Input("battery.cell.i_pulse"),
    },
    applies={"supply.source": "battery"},
    limits=AtMost(
        major="1",
        minor="0.9",
        basis={
            "major": derivation("beyond the maker's pulse rating the voltage is not assured"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("battery.parallel", "1", within=3),
        Lever("battery.series", "1", within=2),
        Lever("rated_power", "1 W"),
    ),
    sources=(CONSTANT_POWER, BRIDGE_CURRENT),
    cases=(
        Case(
            {"i_source_peak": "9.436 A", "parallel": 2, "i_pulse": "15 A"},
            gives="0.314533",
            origin="computed: root finding, 20.4 V, 0.12 ohm, 181.8 W: 9.436 A",
        ),
        Case(
            {"i_source_peak": "9.436 A", "parallel": 1, "i_pulse": "8 A"},
            gives="1.1795",
            origin="computed: root finding, 20.4 V, 0.12 ohm, 181.8 W: 9.436 A, one string",
        ),
    ),
    topic=("battery.cell.i_pulse",),
    asked_from="production",
    fails="""
supply: {source: battery, rails: single}
battery:
  chemistry: li-ion
  series: 6
  cell: {v_oc_low: 3.4 V, r_internal: 28 mohm .. 60 mohm, i_pulse: 8 A}
channels:
  left: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
  right: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
""",
    passes="""
supply: {source: battery, rails: single}
battery:
  chemistry: li-ion
  series: 6
  parallel: 2
  cell: {v_oc_low: 3.4 V, r_internal: 28 mohm .. 84 mohm, i_pulse: 15 A}
channels:
  left: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
  right: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
""",
)

"""Run time on a full pack, against the claim.

Energy above the cut-off over the mean input power at programme level. The input power is
that of the programme with the losses at that level, idle loss once: at one eighth of rated
power a class-D amplifier is well below its full-power efficiency, and using that one is the
usual way to promise too much. The crest factor of the programme is in the spec; 12 dB,
one eighth of the sine, is loud music that just does not clip. Speech and quiet music last
longer, clipped music much shorter.

Below the claim with new, warm cells is major. Less than 25 % above it is minor: cells
are taken as worn at 80 % of their capacity, and then the claim fails (common practice).
Cold is judged apart. For lead-acid at high rates see also the capacity at that rate.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation, from_memory
from ..formulas.pack import SERIES_PARALLEL
from ..formulas.supply import EIGHTH_POWER


def figure(e_pack: float, usable_share: float, p_source: float, run_time: float) -> float:
    return e_pack * usable_share / p_source / run_time


CHECK = Check(
    title="Run time vs. claim",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="e_pack * usable_share / p_source / run_time",
    sentence="Run time {run_time:*figure}; claimed {run_time} ({usable_share} of {e_pack} at"
    " {p_source}).",
    inputs={
        "e_pack": Input("e_pack"),
        "usable_share": Input("battery.usable_share"),
        "p_source": Input("p_source_programme"),
        "run_time": Input("claims.run_time"),
    },
    applies={"supply.source": "battery"},
    limits=AtLeast(
        major="1",
        minor="1.25",
        basis={
            "major": derivation("the claim fails with new cells"),
            "minor": from_memory("end of life of cells at 80 % of their capacity"),
        },
    ),
    levers=(Lever("battery.parallel", "1", within=3), Lever("claims.run_time", "0.5 h")),
    sources=(SERIES_PARALLEL, EIGHTH_POWER),
    cases=(
        Case(
            {
                "e_pack": "120.96 Wh",
                "usable_share": "90 %",
                "p_source": "12.676 W",
                "run_time": "1 h",
            },
            gives="8.588",
            origin="computed: charge counted in steps, 10 W out and 2.676 W heat: 8.588 h",
        ),
        Case(
            {
                "e_pack": "151.2 Wh",
                "usable_share": "90 %",
                "p_source": "685 W",
                "run_time": "0.25 h",
            },
            gives="0.794628",
            origin="published: Lab.gruppen fP 3400, table 3, 685 W at 1/8; pack and claim assumed",
        ),
    ),
    topic=("claims.run_time",),
    fails="""
supply: {source: battery, rails: single}
battery: {chemistry: li-ion, series: 6, parallel: 1, cell: {capacity: 3.5 Ah}}
channels:
  main: {rated_power: 80 W, output_stage: {topology: full-bridge, efficiency: 80 %}}
claims: {run_time: 12 h}
""",
    passes="""
supply: {source: battery, rails: single}
battery: {chemistry: li-ion, series: 6, parallel: 2, cell: {capacity: 3.5 Ah}}
channels:
  main: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 80 %, p_idle: 1.5 W}}
claims: {run_time: 6 h}
""",
)

"""Run time at the coldest ambient, against the claim.

Cold cells give less: lithium cells keep some 80 to 90 % of their capacity at the freezing
point and 50 to 70 % at -20 degrees (from memory, cells differ). A run time is mostly
claimed for a room, so falling short of it in the cold is minor: the fault is a claim that
does not say its temperature. State the share of the capacity that is left at the coldest
ambient, or 80 % is taken.

Otherwise the same sum as the run time: energy above the cut-off, times that share, over
the mean power at programme level. Playing warms the cells, which helps after a while.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.pack import CELL_DATA, SERIES_PARALLEL


def figure(
    e_pack: float, usable_share: float, cold_share: float, p_source: float, run_time: float
) -> float:
    return e_pack * usable_share * cold_share / p_source / run_time


CHECK = Check(
    title="Run time in the cold vs. claim",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="e_pack * usable_share * cold_share / p_source / run_time",
    sentence="Run time in the cold {run_time:*figure}; claimed {run_time} ({cold_share} of"
    " {usable_share} of {e_pack} at {p_source}).",
    inputs={
        "e_pack": Input("e_pack"),
        "usable_share": Input("battery.usable_share"),
        "cold_share": Input("battery.cold_share"),
        "p_source": Input("p_source_programme"),
        "run_time": Input("claims.run_time"),
    },
    applies={"supply.source": "battery"},
    limits=AtLeast(
        minor="1", basis={"minor": derivation("the claim fails at the coldest ambient")}
    ),
    levers=(Lever("battery.parallel", "1", within=3), Lever("claims.run_time", "0.5 h")),
    sources=(SERIES_PARALLEL, CELL_DATA),
    cases=(
        Case(
            {
                "e_pack": "151.2 Wh",
                "usable_share": "90 %",
                "cold_share": "80 %",
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
                "cold_share": "60 %",
                "p_source": "12.676 W",
                "run_time": "8 h",
            },
            gives="0.805143",
            origin="from memory: 60 % of the capacity left in lithium cells at -20 degrees",
        ),
    ),
    topic=("claims.run_time",),
    fails="""
supply: {source: battery, rails: single}
battery: {chemistry: li-ion, series: 6, parallel: 1, cold_share: 60 %, cell: {capacity: 3.5 Ah}}
channels:
  main: {rated_power: 80 W, output_stage: {topology: full-bridge, efficiency: 80 %}}
claims: {run_time: 6 h}
""",
    passes="""
supply: {source: battery, rails: single}
battery: {chemistry: li-ion, series: 6, parallel: 2, cold_share: 80 %, cell: {capacity: 3.5 Ah}}
channels:
  main: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 80 %, p_idle: 1.5 W}}
claims: {run_time: 6 h}
""",
)

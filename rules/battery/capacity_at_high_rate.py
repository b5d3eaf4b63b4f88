"""Lead-acid capacity at the working current, against the claimed run time.

A lead-acid battery gives less the faster it is emptied. Peukert's law puts it as a power of
the current: time = rating time times (capacity / (current x rating time)) to an exponent
that is 1.05 to 1.15 for AGM and 1.2 to 1.3 for flooded types. The printed capacity
holds for the printed time, mostly 20 hours. The short form that divides the printed
capacity by a power of the current is wrong by years of copying: it needs the capacity at
one ampere.

Not for lithium, whose capacity hardly depends on the rate; its sag is judged elsewhere.
The mean current at programme level counts. Below the claim is major, less than 25 % above
it minor, since batteries wear (common practice).
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.pack import PEUKERT, peukert_time


def figure(
    capacity: float, rating_time: float, current: float, exponent: float, run_time: float
) -> float:
    return peukert_time(capacity, rating_time, current, exponent) / run_time


CHECK = Check(
    title="Lead-acid run time at the working current vs. claim",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="rating_time * (capacity / (current * rating_time))^exponent / run_time",
    sentence="Run time {run_time:*figure} at {current} from {capacity} ({rating_time} rating,"
    " exponent {exponent}); claimed {run_time}.",
    inputs={
        "capacity": Input("capacity_pack"),
        "rating_time": Input("battery.rating_hours"),
        "current": Input("i_source_programme"),
        "exponent": Input("peukert_exponent"),
        "run_time": Input("claims.run_time"),
    },
    applies={
        "supply.source": "battery",
        "battery.chemistry": ("lead-acid-agm", "lead-acid-flooded"),
    },
    limits=AtLeast(
        major="1",
        minor="1.25",
        basis={
            "major": derivation("the claim fails with a new battery"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("battery.parallel", "1", within=3), Lever("claims.run_time", "0.5 h")),
    sources=(PEUKERT,),
    cases=(
        Case(
            {
                "capacity": "120 Ah",
                "rating_time": "20 h",
                "current": "120 A",
                "exponent": 1.4,
                "run_time": "0.3 h",
            },
            gives="1",
            origin="published: Oracle Tutoring, 120 Ah at 20 h, 120 A, exponent 1.4: 0.30 h",
            tolerance=0.01,
        ),
        Case(
            {
                "capacity": "7 Ah",
                "rating_time": "20 h",
                "current": "2 A",
                "exponent": 1.2,
                "run_time": "1 h",
            },
            gives="2.470",
            origin="computed: I^k t = const fitted to (0.35 A, 20 h), solved for 2 A: 2.470 h",
        ),
    ),
    topic=("claims.run_time",),
    fails="""
supply: {source: battery, rails: single, r_source: 20 mohm}
battery:
  chemistry: lead-acid-flooded
  series: 6
  cell: {capacity: 7 Ah, v_oc_low: 1.98 V}
channels:
  main: {rated_power: 60 W, output_stage: {topology: full-bridge, efficiency: 80 %}}
claims: {run_time: 8 h}
""",
    passes="""
supply: {source: battery, rails: single, r_source: 20 mohm}
battery:
  chemistry: lead-acid-agm
  series: 6
  cell: {capacity: 60 Ah, v_oc_low: 1.98 V}
channels:
  main: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 80 %, p_idle: 1.5 W}}
claims: {run_time: 8 h}
""",
)

"""The pack's over-current trip below what the cells withstand.

The protection circuit is the last thing between a fault on the board and the cells. Its
highest trip must not exceed the pulse rating of the cells, times the strings in parallel:
above that there is a range of currents that the cells do not withstand and nothing stops, until
a fuse takes its seconds. It goes wrong when the trip is raised because bass switched the
product off; the fix for that is more strings.

Above 1 is major, above 2 critical: four times the heat of the pulse rating flows into the
cells and nothing acts (common practice). The pulse rating holds for seconds, the trip acts in
milliseconds, so the equality itself is sound. Below it the trip still has to clear the music,
which another check judges.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..formulas.pack import SERIES_PARALLEL
from ..hazards import CELLS, also


def figure(i_trip: float, parallel: float, i_pulse: float) -> float:
    return i_trip / (parallel * i_pulse)


CHECK = Check(
    title="Pack over-current trip vs. cell pulse rating",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="i_trip / (parallel * i_pulse)",
    sentence="Pack trip {i_trip}, {i_pulse:*figure} per cell ({parallel:string|strings}); cell"
    " pulse rating {i_pulse} ({figure:%}).",
    inputs={
        "i_trip": Input("battery.protection.i_trip"),
        "parallel": Input("battery.parallel"),
        "i_pulse": Input("battery.cell.i_pulse"),
    },
    applies={"supply.source": "battery"},
    limits=AtMost(
        critical="2",
        major="1",
        basis={
            "critical": COMMON_PRACTICE,
            "major": derivation("a guard must act before the part that it guards"),
        },
    ),
    levers=(Lever("battery.protection.i_trip", "1 A"), Lever("battery.parallel", "1", within=3)),
    sources=(SERIES_PARALLEL,),
    cautions=(also(CELLS, "Never bridge or raise a pack's protection to stop a nuisance trip."),),
    cases=(
        Case(
            {"i_trip": "24 A", "parallel": 2, "i_pulse": "15 A"},
            gives="0.8",
            origin="common practice: 20 A protection, 24 A at most, on two strings of 15 A",
        ),
        Case(
            {"i_trip": "60 A", "parallel": 2, "i_pulse": "15 A"},
            gives="2",
            origin="common practice: a 60 A module bought to end nuisance trips",
        ),
    ),
    topic=("battery.protection.i_trip",),
    asked_from="prototype",
    fails="""
supply: {source: battery}
battery:
  chemistry: li-ion
  parallel: 2
  cell: {i_pulse: 15 A}
  protection: {i_trip: {min: 40 A, typ: 50 A, max: 60 A}}
channels:
  main: {rated_power: 40 W}
""",
    passes="""
supply: {source: battery}
battery:
  chemistry: li-ion
  parallel: 2
  cell: {i_pulse: 15 A}
  protection: {i_trip: {min: 18 A, typ: 20 A, max: 24 A}}
channels:
  main: {rated_power: 40 W}
""",
)

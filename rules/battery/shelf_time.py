"""Time until a switched-off product has emptied its pack.

What the product draws while it is off, by its protection, its fuel gauge, its push-button
controller, empties the pack in store. Then the cells sit below their cut-off for months,
and that destroys them. A stand-by current that looks like nothing, 1 mA, takes 7 Ah in ten
months.

The figure is the usable capacity over the stand-by current, against the claimed shelf time.
Self-discharge of the cells is left out: a few per cent a month for lithium, more for the
others, so a figure near 1 is too good. Below 1 is major, at every milestone; less than 25 %
above it minor, for that self-discharge and worn cells (common practice). Ship at half charge
and with the supply disconnected if you can.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.maths import larger


def figure(capacity: float, usable_share: float, i_standby: float, shelf_time: float) -> float:
    """Time to empty over the time claimed; a million where nothing is drawn."""
    allowed = capacity * usable_share / shelf_time
    return allowed / larger(i_standby, allowed * 1e-6)


CHECK = Check(
    title="Shelf time vs. claim",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="capacity * usable_share / i_standby / shelf_time",
    sentence="Shelf time {shelf_time:*figure}; claimed {shelf_time} ({usable_share} of {capacity}"
    " at {i_standby}).",
    inputs={
        "capacity": Input("capacity_pack"),
        "usable_share": Input("battery.usable_share"),
        "i_standby": Input("battery.i_standby"),
        "shelf_time": Input("claims.shelf_time"),
    },
    applies={"supply.source": "battery"},
    limits=AtLeast(
        major="1",
        minor="1.25",
        basis={
            "major": derivation("charge over current is the time until the pack is empty"),
            "minor": COMMON_PRACTICE,
        },
    ),
    otherwise="a load switch that takes everything off the pack while the product is off",
    levers=(Lever("claims.shelf_time", "100 h"),),
    sources=(derivation("charge over current is the time until the pack is empty"),),
    cases=(
        Case(
            {
                "capacity": "7 Ah",
                "usable_share": "90 %",
                "i_standby": "1 mA",
                "shelf_time": "8760 h",
            },
            gives="0.719178",
            origin="computed: charge counted day by day is used up after 262.5 days of 365",
        ),
        Case(
            {
                "capacity": "7 Ah",
                "usable_share": "90 %",
                "i_standby": "45 uA",
                "shelf_time": "8760 h",
            },
            gives="15.98174",
            origin="computed: charge counted day by day lasts 5833 days",
        ),
    ),
    topic=("claims.shelf_time",),
    forbidden=True,
    fails="""
supply: {source: battery}
battery:
  {chemistry: li-ion, series: 6, parallel: 2, i_standby: 1 mA, cell: {capacity: 3.5 Ah}}
channels:
  main: {rated_power: 40 W}
claims: {shelf_time: 8760 h}
""",
    passes="""
supply: {source: battery}
battery:
  {chemistry: li-ion, series: 6, parallel: 2, i_standby: 45 uA, cell: {capacity: 3.5 Ah}}
channels:
  main: {rated_power: 40 W}
claims: {shelf_time: 8760 h}
""",
)

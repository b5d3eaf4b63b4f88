"""The pack's cut-off below the amplifier's under-voltage lockout.

As a pack runs down, two devices wait for it: the amplifier's lockout, which mutes and comes
back, and the protection's cut-off, which takes the supply away in the middle of a sound,
with a thump, and stays off until the charger comes. The amplifier should be the first, so
the highest cut-off must lie below the lowest lockout.

Above 1 is minor: nothing is damaged, the product ends badly. It concerns packs that are the
rail themselves; behind a converter the two voltages cannot be compared. Where the lockout
cannot be raised, let a controller mute at a pack voltage of its own.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever


def figure(v_cutoff: float, v_lockout: float) -> float:
    return v_cutoff / v_lockout


CHECK = Check(
    title="Pack cut-off vs. amplifier undervoltage lockout",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="v_cutoff / v_lockout",
    sentence="Pack cut-off {v_cutoff} ({figure:% of} the amplifier lockout {v_lockout}); the"
    " lockout should act first.",
    inputs={
        "v_cutoff": Input("battery.protection.v_cutoff"),
        "v_lockout": Input("protection.under_voltage.v_trip"),
    },
    applies={"rail_feed": "pack"},
    limits=AtMost(minor="1", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("protection.under_voltage.v_trip", "0.5 V"),),
    sources=(COMMON_PRACTICE,),
    cases=(
        Case(
            {"v_cutoff": "15.6 V", "v_lockout": "17 V"},
            gives="0.917647",
            origin="common practice: six lithium-ion cells cut off at 2.6 V, amplifier at 17 V",
        ),
        Case(
            {"v_cutoff": "17.4 V", "v_lockout": "9 V"},
            gives="1.933333",
            origin="common practice: integrated stages lock out at 8 or 9 V on any pack",
        ),
    ),
    topic=("battery.protection.v_cutoff",),
    fails="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 6, protection: {v_cutoff: {min: 16.2 V, max: 17.4 V}}}
channels:
  main: {rated_power: 40 W}
protection: {under_voltage: {v_trip: 9 V}}
""",
    passes="""
supply: {source: battery}
battery: {chemistry: li-ion, series: 6, protection: {v_cutoff: {min: 15 V, max: 16.2 V}}}
channels:
  main: {rated_power: 40 W}
protection: {under_voltage: {v_trip: {min: 17 V, typ: 17.5 V, max: 18 V}}}
""",
)

"""Under-voltage trip below the lowest rail.

A lockout that lies within the range of the rail keeps the amplifier off at the low end of its
supply, or stops it in the bass, where the rail sags. It is judged here for a rail from a source
or a converter; for a rail that is the pack the voltage under load is judged in a check of its
own.

The highest trip is compared with the lowest rail: at the crest of the lowest note where the
resistance of the source is known, else as stated. Regulation and ripple take it below that, so
a trip needs some per cent to spare: at the rail or above it the amplifier stops (major), within
2 % it is thin (minor; common practice without a source).
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation


def figure(v_rail: float, v_trip: float) -> float:
    return 1 - v_trip / v_rail


CHECK = Check(
    title="Under-voltage trip vs. lowest rail",
    figure=figure,
    unit="%",
    each="product",
    stake="performance",
    formula="1 - v_trip / v_rail",
    sentence="Under-voltage trip {v_trip}, {figure:+below|above} the lowest rail of {v_rail}.",
    inputs={
        "v_rail": Input("v_rail_least"),
        "v_trip": Input("protection.under_voltage.v_trip"),
    },
    applies={"rail_feed": ("source", "converter"), "protection.under_voltage": "fitted"},
    limits=AtLeast(
        major="0 %",
        minor="2 %",
        basis={
            "major": derivation("above the rail the lockout keeps the amplifier off"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("protection.under_voltage.v_trip", "0.5 V"),),
    sources=(derivation("a lockout acts where the rail is below it"),),
    cases=(
        Case(
            {"v_rail": "24 V", "v_trip": "21 V"},
            gives="12.5 %",
            origin="computed: by hand, 3 V of 24 V to spare",
        ),
        Case(
            {"v_rail": "76.6 V", "v_trip": "78 V"},
            gives="-1.827676 %",
            origin="derived: off until the rail is 1.4 V above its lowest",
        ),
    ),
    topic=("protection.under_voltage.v_trip",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 23 V .. 25 V}
channels:
  main: {rated_power: 20 W}
protection: {under_voltage: {v_trip: 24 V}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 23 V .. 25 V}
channels:
  main: {rated_power: 20 W}
protection: {under_voltage: {v_trip: {min: 20 V, typ: 20.5 V, max: 21 V}}}
""",
)

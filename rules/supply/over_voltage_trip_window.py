"""Over-voltage trip above the highest rail.

A trip that lies at the highest voltage of the rail, or below it, stops the amplifier in
ordinary use: on a fully charged pack, on a source at the upper end of its tolerance, on the
first bass note. It happens when a board is moved to a higher supply and the trip's zener
diode stays: a published log has an 80 V rail with the trip of the 60 V variant.

The lowest trip is compared with the highest rail. The rail moves by load regulation and
ripple beyond its stated range, so a trip needs some per cent above it: below 2 % it will
fire (major), below 5 % it is thin (minor). Both numbers are common practice without a
source. The rise by pumping is judged in a check of its own.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source


def figure(v_trip: float, v_rail: float) -> float:
    return v_trip / v_rail - 1


CHECK = Check(
    title="Over-voltage trip vs. highest rail",
    figure=figure,
    unit="%",
    each="product",
    stake="rating",
    formula="v_trip / v_rail - 1",
    sentence="Over-voltage trip {v_trip}, {figure:+above|below} the highest rail of {v_rail}.",
    inputs={
        "v_trip": Input("protection.over_voltage.v_trip"),
        "v_rail": Input("v_rail_high"),
    },
    applies={"protection.over_voltage": "fitted"},
    limits=AtLeast(
        major="2 %", minor="5 %", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(Lever("protection.over_voltage.v_trip", "1 V"),),
    sources=(
        Source(
            "R. MacLachlan, ILEMT laboratory notebook",
            "19 Nov 2015: rails just above 80 V, over-voltage diode of about "
            "the 60 V version: shuts down",
        ),
    ),
    cases=(
        Case(
            {"v_trip": "80 V", "v_rail": "80 V"},
            gives="0 %",
            origin="derived: trip and rail alike",
        ),
        Case(
            {"v_trip": "40 V", "v_rail": "35 V"},
            gives="14.2857 %",
            origin="computed: IRAUDAMP4 manual p. 18, trips above 40 V; rails of 35 V assumed",
        ),
    ),
    topic=("protection.over_voltage",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: split, v_rail: 75 V .. 80 V}
channels:
  main: {rated_power: 100 W}
protection: {over_voltage: {v_trip: {max: 80 V}}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main: {rated_power: 100 W}
protection: {over_voltage: {v_trip: {min: 38 V, typ: 40 V, max: 42 V}}}
""",
)

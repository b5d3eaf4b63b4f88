"""Over-voltage trip below the rating of the bulk capacitors.

An over-voltage trip is there to end pumping before a part gives way. If it lies above the
rated voltage of the bulk capacitors, they are the first to give way, and the trip guards
only what withstands more. The highest trip is compared with the rated voltage.

Whether anything lifts the rail so far is judged where the source and the pumping are judged; a
guard that cannot guard is major, as with the output stage. Note that the trip
stops the amplifier, not the source: it cannot protect the capacitors from a source that
is too high by itself.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation


def figure(v_trip: float, v_rated: float) -> float:
    return v_trip / v_rated


CHECK = Check(
    title="Over-voltage trip vs. bulk capacitor rating",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="v_trip / v_rated",
    sentence="Over-voltage trip up to {v_trip}; bulk capacitors rated {v_rated} ({figure:%}).",
    inputs={
        "v_trip": Input("protection.over_voltage.v_trip"),
        "v_rated": Input("supply.bulk.v_rated"),
    },
    applies={"protection.over_voltage": "fitted"},
    limits=AtMost(
        major="1", basis={"major": derivation("a guard must act before the part that it guards")}
    ),
    levers=(
        Lever("protection.over_voltage.v_trip", "1 V"),
        Lever("supply.bulk.v_rated", ("25 V", "35 V", "50 V", "63 V", "80 V", "100 V", "160 V")),
    ),
    sources=(
        Source(
            "IRAUDAMP4 reference design RD-0617, International Rectifier",
            "p. 18: shuts down above 40 V between ground and -B",
        ),
    ),
    cases=(
        Case(
            {"v_trip": "40 V", "v_rated": "50 V"},
            gives="0.8",
            origin="computed: IRAUDAMP4 p. 18, trip at 40 V; capacitors of 50 V assumed",
        ),
        Case(
            {"v_trip": "66 V", "v_rated": "63 V"},
            gives="1.047619",
            origin="derived: 60 V zener with 10 % on 63 V capacitors",
        ),
    ),
    topic=("protection.over_voltage",),
    fails="""
supply: {bulk: {v_rated: 63 V}}
channels:
  main: {rated_power: 100 W}
protection: {over_voltage: {v_trip: {min: 54 V, typ: 60 V, max: 66 V}}}
""",
    passes="""
supply: {bulk: {v_rated: 80 V}}
channels:
  main: {rated_power: 100 W}
protection: {over_voltage: {v_trip: {min: 54 V, typ: 60 V, max: 66 V}}}
""",
)

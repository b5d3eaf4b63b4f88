"""Over-voltage trip below the absolute maximum of the part.

An over-voltage trip ends pumping before something gives way. If it acts only above the
absolute maximum of the output stage, that stage is what gives way, and the trip guards
nothing. The highest trip counts: across a single rail the trip itself, across a split supply
the trip of one rail and the highest voltage of the other, since one rail is pumped at a time.
For an integrated part its absolute maximum supply is the limit, for switches their
drain-source rating. Ringing comes on top and is judged where the node is judged.

Whether anything lifts the rail so far is judged elsewhere; a guard that cannot guard is
major. Does not apply without a trip. First fix: a lower trip.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation


def figure(v_at_trip: float, v_absolute: float) -> float:
    return v_at_trip / v_absolute


CHECK = Check(
    title="Leg voltage at the over-voltage trip vs. absolute maximum",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="v_at_trip / v_absolute",
    sentence="At the over-voltage trip a leg sees {v_at_trip}; absolute maximum {v_absolute}"
    " ({figure:%}).",
    inputs={
        "v_at_trip": Input("v_leg_at_trip"),
        "v_absolute": Input("v_leg_absolute"),
    },
    applies={"protection.over_voltage": "fitted"},
    limits=AtMost(
        major="100 %", basis={"major": derivation("a guard must act before the part it guards")}
    ),
    levers=(Lever("protection.over_voltage.v_trip", "0.5 V"),),
    sources=(
        derivation("a leg spans both rails, of which one is pumped at a time"),
        Source(
            "TPA3221 data sheet SLASEE9B",
            "p. 5: absolute maximum 37 V; p. 6: recommended up to 32 V",
        ),
    ),
    cases=(
        Case(
            {"v_at_trip": "34 V", "v_absolute": "37 V"},
            gives="91.8919 %",
            origin="published: TPA3221 data sheet SLASEE9B, 37 V and a trip of 34 V",
        ),
        Case(
            {"v_at_trip": "22 V", "v_absolute": "20 V"},
            gives="110 %",
            origin="derived: 22 V on a part whose absolute maximum is 20 V",
        ),
    ),
    topic=("protection.over_voltage",),
    fails="""
supply: {rails: single}
channels:
  main: {output_stage: {devices: integrated, device: {v_supply_abs: 20 V}}}
protection: {over_voltage: {v_trip: {min: 18 V, typ: 20 V, max: 22 V}}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main: {output_stage: {devices: discrete, device: {v_dss: 100 V}}}
protection: {over_voltage: {v_trip: {min: 38 V, typ: 40 V, max: 42 V}}}
""",
)

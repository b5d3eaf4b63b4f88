"""Over-voltage trip near the recommended range of an integrated part.

Above its recommended range an integrated part is only promised to survive. A trip far above
that range lets the part work there without a guarantee, its own protection included, before
anything acts: 18 V are of little use to a part recommended to 14.4 V. The highest trip
counts: on a split supply with the highest voltage of the other rail.

A trip has to lie above the range, or it would act inside it; lockouts and guards of working
designs lie 4 % (15 V for 14.4 V) and 6 % (34 V for 32 V) above. From 10 % it is minor: common
practice, no source. Whether the rail gets there is judged elsewhere. Does not concern
switches, which have no recommended range, nor a design without a trip. First fix: a lower
trip.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation

BOARD = Source("TPA3221 data sheet SLASEE9B", "p. 6: recommended up to 32 V; p. 8: trip at 34 V")


def figure(v_at_trip: float, v_supply_high: float) -> float:
    return v_at_trip / v_supply_high


CHECK = Check(
    title="Supply at the over-voltage trip vs. recommended maximum",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="v_at_trip / v_supply_high",
    sentence="At the over-voltage trip the part sees {v_at_trip}; recommended maximum"
    " {v_supply_high} ({figure:%}).",
    inputs={
        "v_at_trip": Input("v_leg_at_trip", meaning="supply pin to pin at the trip"),
        "v_supply_high": Input(
            "output_stage.device.v_supply:high", meaning="highest recommended supply of the part"
        ),
    },
    applies={"protection.over_voltage": "fitted", "output_stage.devices": "integrated"},
    limits=AtMost(minor="110 %", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("protection.over_voltage.v_trip", "0.5 V"),),
    sources=(
        derivation("a leg spans both rails, of which one is pumped at a time"),
        BOARD,
        Source("e2e.ti.com thread 1234297", "lockout at 15 V, recommended up to 14.4 V"),
    ),
    cases=(
        Case(
            {"v_at_trip": "34 V", "v_supply_high": "32 V"},
            gives="106.25 %",
            origin="published: TPA3221 data sheet SLASEE9B, 32 V and a trip of 34 V",
        ),
        Case(
            {"v_at_trip": "18 V", "v_supply_high": "14.4 V"},
            gives="125 %",
            origin="derived: e2e.ti.com thread 1234297, 14.4 V recommended; a trip of 18 V assumed",
        ),
    ),
    topic=("protection.over_voltage",),
    fails="""
supply: {rails: single}
channels:
  main: {output_stage: {devices: integrated, device: {v_supply: {max: 14.4 V}}}}
protection: {over_voltage: {v_trip: 18 V}}
""",
    passes="""
supply: {rails: single}
channels:
  main: {output_stage: {devices: integrated, device: {v_supply: {max: 14.4 V}}}}
protection: {over_voltage: {v_trip: 15 V}}
""",
)

"""Start into empty capacitors against the over-current trip of the pack.

A switch that puts a pack onto empty bulk capacitors draws, for a moment, the pack's voltage over
the resistance of the loop. The current falls as the capacitors fill. If it lies above the trip
of the pack's protection for longer than the trip's delay, the pack disconnects: the product does
not start, or starts at the third try, mostly with a cold or a full pack and a field failure that
no bench supply shows.

The figure is the time above the trip, R C times the logarithm of first current over trip, over
the delay of the trip. Many circuits have a second, faster step for short circuits at several
times that current, which is not counted here: what passes may still trip it. Above 1 is major,
above a half minor (common practice, no source). A converter ahead of the rail starts by itself
and is left out. First fix: a pre-charge resistor or a controlled start; then less capacitance, or
a longer delay.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..formulas.maths import larger, ln

CHARGING = derivation("current of R and C falls as exp(-t / (R C)); solved for the trip")


def figure(i_inrush: float, i_trip: float, v_rail: float, c_rail: float, t_trip: float) -> float:
    """Time above the trip over its delay; the loop's resistance is v_rail / i_inrush."""
    return v_rail / i_inrush * c_rail * ln(larger(1.0, i_inrush / i_trip)) / t_trip


PACK = """
supply: {source: battery, rails: single, bulk: {c: 10 mF, v_rated: 35 V}}
battery:
  chemistry: li-ion
  series: 6
  cell: {v_charge: 4.2 V, r_internal: 30 mohm}
  protection: {i_trip: 40 A, t_trip: DELAY}
protection: {inrush: {r: 0.25 ohm}}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Inrush time above the pack trip vs. trip delay",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="v_rail / i_inrush c_rail ln(i_inrush / i_trip) / t_trip, 0 where i_inrush is below"
    " i_trip",
    sentence="Inrush ({i_inrush}) stays above the {i_trip} pack trip for {t_trip:*figure}; trip"
    " delay {t_trip} ({c_rail}, {v_rail}).",
    inputs={
        "i_inrush": Input("i_inrush"),
        "i_trip": Input("battery.protection.i_trip"),
        "v_rail": Input("v_rail_high"),
        "c_rail": Input("supply.bulk.c"),
        "t_trip": Input("battery.protection.t_trip"),
    },
    applies={"supply.source": "battery", "supply.converter": "none"},
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={
            "major": derivation("the pack disconnects before the capacitors are charged"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("protection.inrush.r", "E12"),),
    sources=(CHARGING,),
    cases=(
        Case(
            {
                "i_inrush": "100.8 A",
                "i_trip": "40 A",
                "v_rail": "25.2 V",
                "c_rail": "10 mF",
                "t_trip": "5 ms",
            },
            gives="0.4621",
            origin="computed: current of 0.25 ohm and 10 mF stepped in time: 2.311 ms above 40 A",
        ),
        Case(
            {
                "i_inrush": "20 A",
                "i_trip": "40 A",
                "v_rail": "25.2 V",
                "c_rail": "10 mF",
                "t_trip": "5 ms",
            },
            gives="0",
            origin="derived: a first current below the trip never trips it",
        ),
    ),
    topic=("battery.protection", "supply.bulk"),
    fails=PACK.replace("DELAY", "1 ms"),
    passes=PACK.replace("DELAY", "20 ms"),
)

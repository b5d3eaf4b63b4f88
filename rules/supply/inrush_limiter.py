"""Energy of a start into empty capacitors without a limiter.

A pack or bench supply has a few hundredths of an ohm. Plugged onto empty capacitors it
gives hundreds of amperes for a moment: a spark that eats the contacts, a pack protection
that takes it for a short circuit and disconnects, a fuse that ages with each start. Contacts
are worn by the energy of the spark, and as much energy as the capacitors store in the end
turns into heat on the way, half C V squared of all rails.

Up to a third of a joule, 1 mF on 25 V, contacts shrug it off; above that a pre-charge
resistor, a soft start or an anti-spark contact belongs in: minor. Above 5 J contacts weld
and rectifiers fail: major. Both are common practice without a source; the current is judged
apart against the ratings in its path.

A converter ahead of the rail starts softly by itself in most cases and is left out, and so
is a start of less than a third of a joule. A source that limits its own current counts as a
limiter.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, derivation
from ..formulas.supply import stored_energy
from ..hazards import ARC


def figure(
    c_rail: float, v_rail: float, rail_count: float, limiter: str, self_limits: str
) -> float:
    energy = rail_count * stored_energy(v_rail, c_rail)
    return 0 * energy if "fitted" in limiter or "yes" in self_limits else energy


CHECK = Check(
    title="Inrush energy without a limiter",
    figure=figure,
    unit="J",
    each="product",
    stake="rating",
    formula="rail_count c_rail v_rail^2 / 2 where limiter is none and self_limits no, else 0",
    sentence="{figure:?Inrush is limited|Inrush of # without a limiter} (limiter: {limiter},"
    " self-limiting source: {self_limits}; {rail_count:rail|rails}, {c_rail}, {v_rail}).",
    inputs={
        "c_rail": Input("supply.bulk.c"),
        "v_rail": Input("v_rail_high"),
        "rail_count": Input("rail_count"),
        "limiter": Input("protection.inrush"),
        "self_limits": Input("source_self_limits"),
    },
    applies={"inrush_judged": "yes"},
    limits=AtMost(
        major="5 J", minor="0.35 J", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    sources=(derivation("energy balance of charging a capacitor, checked by an ODE"),),
    cautions=(ARC,),
    cases=(
        Case(
            {
                "c_rail": "4400 uF",
                "v_rail": "25.2 V",
                "rail_count": 1,
                "limiter": "none",
                "self_limits": "no",
            },
            gives="1.39709 J",
            origin="computed: ODE of the charging current through 0.10 ohm, 1.397 J",
        ),
        Case(
            {
                "c_rail": "20 mF",
                "v_rail": "50 V",
                "rail_count": 2,
                "limiter": "fitted",
                "self_limits": "no",
            },
            gives="0 J",
            origin="derived: with a limiter nothing is charged without one",
        ),
    ),
    topic=("protection.inrush",),
    asked_from="prototype",
    fails="""
supply: {source: battery, rails: single, bulk: {c: 20 mF}}
battery: {chemistry: li-ion, series: 12}
channels:
  main: {rated_power: 50 W}
protection: {inrush: none}
""",
    passes="""
supply: {source: battery, rails: single, bulk: {c: 20 mF}}
battery: {chemistry: li-ion, series: 12}
channels:
  main: {rated_power: 50 W}
protection: {inrush: {r: 10 ohm}}
""",
)

"""Energy of the inrush against the limiter's pulse rating.

While a capacitor is charged from a fixed voltage, whatever limits the current turns as
much energy into heat as the capacitor stores in the end, half C V squared, whether it is a
resistor, a thermistor or a transistor that holds the current constant. A small resistor
reaches the end of its pulse rating long before its rated power says anything.

Above the rating is critical, as for every part beyond its pulse rating: the limiter cracks or
opens at some start. Above half of it is minor, because a restart while it is still warm adds
a second pulse (common practice, no source). The rail counts at its highest, the capacitance
at the top of its tolerance. A limiter in the common lead of two rails takes the energy of
both.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..formulas.supply import stored_energy
from ..hazards import ARC, RESISTOR


def figure(v_rail: float, c_rail: float, rail_count: float, e_rated: float) -> float:
    return rail_count * stored_energy(v_rail, c_rail) / e_rated


CHECK = Check(
    title="Inrush energy vs. limiter rating",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="rail_count * c_rail * v_rail^2 / 2 / e_rated",
    sentence="Inrush puts {e_rated:*figure} into the limiter ({rail_count:rail|rails}, {c_rail},"
    " {v_rail}); rated {e_rated} ({figure:%}).",
    inputs={
        "v_rail": Input("v_rail_high"),
        "c_rail": Input("supply.bulk.c"),
        "rail_count": Input("rail_count", meaning="rails charged through it"),
        "e_rated": Input("protection.inrush.e_rated"),
    },
    limits=AtMost(
        critical="1",
        minor="0.5",
        basis={
            "critical": derivation("the limiter is beyond its pulse rating"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("protection.inrush.e_rated", "1 J"),),
    sources=(derivation("energy balance of charging a capacitor, checked by an ODE"),),
    cautions=(
        RESISTOR,
        ARC,
    ),
    cases=(
        Case(
            {"v_rail": "25.2 V", "c_rail": "4400 uF", "rail_count": 1, "e_rated": "1 J"},
            gives="1.39709",
            origin="computed: ODE of the charging current through 0.10 ohm, 1.397 J",
        ),
        Case(
            {"v_rail": "50 V", "c_rail": "10 mF", "rail_count": 1, "e_rated": "50 J"},
            gives="0.25",
            origin="computed: ODE of the charging current through 2 ohm, 12.50 J",
        ),
        Case(
            {"v_rail": "50 V", "c_rail": "10 mF", "rail_count": 2, "e_rated": "50 J"},
            gives="0.5",
            origin="derived: the second case on two rails, 12.5 J each",
        ),
    ),
    topic=("protection.inrush.e_rated",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 50 V, bulk: {c: 10 mF}}
channels:
  main: {rated_power: 50 W}
protection: {inrush: {r: 10 ohm, e_rated: 10 J}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 50 V, bulk: {c: 10 mF}}
channels:
  main: {rated_power: 50 W}
protection: {inrush: {r: 10 ohm, e_rated: 40 J}}
""",
)

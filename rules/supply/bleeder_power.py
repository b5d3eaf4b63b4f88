"""Power of the discharge resistor.

A bleeder lies across the rail as long as the product is on, so its power is continuous:
the square of the highest rail voltage over the lowest resistance. A resistor chosen for
its discharge time alone is often too small for that: it browns the board, drifts upward,
opens, and from then on the rail keeps its charge after switch-off, which nobody sees.

Above its rating it burns in normal use: critical, as for the resistor of a snubber. Above
half of it is minor: power ratings of resistors hold at 70 degrees of ambient and more on a
free lead, and the air beside hot heatsinks is no better; twice the power is the usual choice
(common practice, no source).
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..hazards import RESISTOR


def figure(v_rail: float, r: float, p_rated: float) -> float:
    return v_rail**2 / r / p_rated


CHECK = Check(
    title="Bleeder power vs. rating",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="v_rail^2 / r / p_rated",
    sentence="Bleeder {r} dissipates {p_rated:*figure} at {v_rail}; rated {p_rated} ({figure:%}).",
    inputs={
        "v_rail": Input("v_rail_high"),
        "r": Input("protection.bleeder.r"),
        "p_rated": Input("protection.bleeder.p_rated"),
    },
    limits=AtMost(
        critical="1",
        minor="0.5",
        basis={
            "critical": derivation("continuous power above the rating"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("protection.bleeder.p_rated", ("1 W", "2 W", "3 W", "5 W", "10 W", "25 W")),
        Lever("protection.bleeder.r", "E12"),
    ),
    sources=(derivation("Joule heat of a resistor across a steady voltage"),),
    cautions=(RESISTOR,),
    cases=(
        Case(
            {"v_rail": "80 V", "r": "695.2 ohm", "p_rated": "10 W"},
            gives="0.92059",
            origin="computed: ODE of the discharge from 80 to 60 V in 2 s: 695.2 ohm, 9.205 W",
        ),
        Case(
            {"v_rail": "80 V", "r": "175 ohm", "p_rated": "25 W"},
            gives="1.462857",
            origin="published: R. MacLachlan, notebook: 175 ohm across 80 V; 25 W assumed",
        ),
    ),
    topic=("protection.bleeder",),
    fails="""
supply: {source: dc-source, rails: split, v_rail: 80 V}
channels:
  main: {rated_power: 50 W}
protection: {bleeder: {r: 1000 ohm, p_rated: 5 W}}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main: {rated_power: 50 W}
protection: {bleeder: {r: 4700 ohm, p_rated: 1 W}}
""",
)

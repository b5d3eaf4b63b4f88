"""Inrush current against the weakest part that it passes.

At switch-on empty capacitors are a short circuit: the first current is the rail voltage
over the resistance of the whole loop, and it decays with R times C. A rectifier, a contact
or a transistor with a surge rating below it is destroyed or welded, often not on the first
day. With a constant-current start the set current counts.

A surge rating is absolute, so exceeding it is critical; above 80 % of it is minor, as the
loop resistance is never known well (common practice, no source). Without a limiter the
source and its lead are all the resistance there is, unless the source limits its current
itself, and contacts or switch must carry it (``connector.i_surge``); up to a third of a
joule they do. Mind the hot restart: a thermistor that is still warm limits nothing.

First fix: a resistor of rail voltage over the wanted current that is bridged after three
time constants, or a connector with a pre-charge contact.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..hazards import ARC


def figure(i_inrush: float, i_surge: float) -> float:
    return i_inrush / i_surge


CHECK = Check(
    title="Inrush current vs. surge rating",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="i_inrush / i_surge",
    sentence="Inrush current {i_inrush}; surge rating in its path {i_surge} ({figure:%}).",
    inputs={
        "i_inrush": Input("i_inrush"),
        "i_surge": Input("i_surge_path"),
    },
    applies={"inrush_judged": "yes"},
    limits=AtMost(
        critical="1",
        minor="0.8",
        basis={
            "critical": derivation("a surge rating is an absolute limit"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("protection.inrush.r", "E12"), Lever("protection.inrush.i_limit", "0.1 A")),
    sources=(derivation("first current into an empty capacitor, V / R, checked by an ODE"),),
    cautions=(ARC,),
    cases=(
        Case(
            {"i_inrush": "252 A", "i_surge": "100 A"},
            gives="2.52",
            origin="computed: ODE of 4.4 mF charged to 25.2 V through 0.10 ohm starts at 252 A",
        ),
        Case(
            {"i_inrush": "25 A", "i_surge": "60 A"},
            gives="0.416667",
            origin="computed: ODE of 10 mF charged to 50 V through 2 ohm starts at 25 A",
        ),
    ),
    topic=("protection.inrush",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 25.2 V, bulk: {c: 4400 uF}}
channels:
  main: {rated_power: 50 W}
protection: {inrush: {r: 0.1 ohm, i_surge: 100 A}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 25.2 V, bulk: {c: 4400 uF}}
channels:
  main: {rated_power: 50 W}
protection: {inrush: {r: 2.7 ohm, i_surge: 20 A}}
""",
)

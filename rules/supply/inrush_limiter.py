"""A limiter for the inrush of a pack or source that is plugged in.

A pack or bench supply has a few hundredths of an ohm. Plugged onto empty capacitors it
gives hundreds of amperes for a moment: a spark that eats the contacts, a pack protection
that takes it for a short circuit and disconnects. Up to about 1 mF on the rail contacts
and protections shrug it off; above that a pre-charge resistor, a soft start or an
anti-spark contact belongs in (common practice, no source, hence minor).

It speaks only where the spec says that no limiter is fitted. A converter ahead of the rail
starts softly by itself in most cases and is left out.
"""

from typing import Any

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, derivation


def figure(c_rail: Any, limiter: str) -> Any:
    return 0 * c_rail if limiter == "fitted" else c_rail


CHECK = Check(
    title="Capacitance that is charged without a limiter",
    figure=figure,
    unit="F",
    each="product",
    stake="performance",
    formula="c_rail where limiter is none, else 0",
    sentence="When the source is connected, {figure} are charged without a limiter (inrush"
    " limiter: {limiter}, capacitance {c_rail}).",
    inputs={
        "c_rail": Input("supply.bulk.c", "F", "bulk capacitors of ONE rail"),
        "limiter": Input("protection.inrush", "word", "inrush limiter, fitted or none"),
    },
    applies={"rail_feed": ("pack", "source")},
    limits=AtMost(minor="1 mF", basis={"minor": COMMON_PRACTICE}),
    sources=(derivation("first current into an empty capacitor: source voltage over resistance"),),
    cases=(
        Case(
            {"c_rail": "4400 uF", "limiter": "none"},
            gives="4.4 mF",
            origin="common practice: 4.4 mF on a pack of 0.1 ohm, 252 A by an ODE",
        ),
        Case(
            {"c_rail": "4400 uF", "limiter": "fitted"},
            gives="0 F",
            origin="derived: with a limiter nothing is charged without one",
        ),
    ),
    topic=("protection.inrush",),
    asked_from=None,
    fails="""
supply: {source: battery, rails: single, bulk: {c: 4400 uF}}
channels:
  main: {rated_power: 50 W}
protection: {inrush: none}
""",
    passes="""
supply: {source: battery, rails: single, bulk: {c: 470 uF}}
channels:
  main: {rated_power: 50 W}
protection: {inrush: none}
""",
)

"""Charge left on the rails when service opens the product.

Who opens an amplifier mostly does so because it no longer works, and then nothing draws the
capacitors empty but their discharge resistor.  The time is the one that the product's label
or manual tells to wait.

Persons who are instructed may meet class 2 of IEC 62368-1, up to 120 V direct voltage, which
hurts but does not injure; so above 120 V between the rails is major.  Above 60 V is minor: a
start makes a hand slip.  Bare rails within reach of anyone are another check, and critical.
Both limits are from memory.  A design that says nothing of a discharge resistor is asked for it.
First fix: a discharge resistor on the capacitor's side of
every switch and fuse, and a line on the board about the time to wait.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from ..formulas.safety import ENERGY_CLASSES, NONE_FITTED, UNSAID, voltage_left
from ..hazards import STORED_VOLTAGE, also


def figure(
    v_rail: float, rail_count: float, bleeder: str, r: float, c: float, wait: float
) -> float:
    left = voltage_left(v_rail, wait, r, c) if bleeder == "fitted" else v_rail
    return rail_count * left


RAIL = """
supply: {source: dc-source, rails: split, v_rail: 100 V, bulk: {c: 4700 uF}, c_source: 0 F}
protection: {bleeder: none}
safety: {discharge_wait: 10 s}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Voltage left on the rails at service",
    figure=figure,
    unit="V",
    each="product",
    stake="safety",
    formula="rail_count v_rail exp(-wait / (r c)), rail_count v_rail where bleeder is none",
    sentence="{wait} after switch-off the rails of a dead amplifier hold {figure} ({v_rail} per"
    " rail at first).",
    inputs={
        "v_rail": Input("v_rail_high"),
        "rail_count": Input("rail_count", meaning="rails in series between two hands"),
        "bleeder": Input(
            "protection.bleeder", meaning="discharge resistor of each rail", default=UNSAID
        ),
        "r": Input("protection.bleeder.r", default=NONE_FITTED),
        "c": Input("c_discharged"),
        "wait": Input("safety.discharge_wait"),
    },
    limits=AtMost(
        major="120 V", minor="60 V", basis={"major": ENERGY_CLASSES, "minor": ENERGY_CLASSES}
    ),
    levers=(Lever("protection.bleeder.r", "E12"), Lever("safety.discharge_wait", "5 s")),
    sources=(ENERGY_CLASSES, derivation("discharge of R and C, checked by an ODE")),
    cautions=(also(STORED_VOLTAGE, "Only instructed persons open it."),),
    cases=(
        Case(
            {
                "v_rail": "100 V",
                "rail_count": 1.0,
                "bleeder": "fitted",
                "r": "2200 ohm",
                "c": "4.7 mF",
                "wait": "5.282 s",
            },
            gives="60 V",
            origin="computed: ODE of 4.7 mF at 100 V on 2.2 kohm: 60 V after 5.282 s",
        ),
        Case(
            {
                "v_rail": "63 V",
                "rail_count": 1.0,
                "bleeder": "fitted",
                "r": "4700 ohm",
                "c": "10 mF",
                "wait": "119.1 s",
            },
            gives="5 V",
            origin="computed: ODE of 10 mF at 63 V on 4.7 kohm: 5 V after 119.1 s",
        ),
        Case(
            {
                "v_rail": "63 V",
                "rail_count": 2.0,
                "bleeder": "fitted",
                "r": "4700 ohm",
                "c": "10 mF",
                "wait": "119.1 s",
            },
            gives="10 V",
            origin="derived: the second case on two rails, 5 V on each, between them 10 V",
        ),
    ),
    topic=("supply",),
    fails=RAIL,
    passes=RAIL.replace("bleeder: none", "bleeder: {r: 1000 ohm}"),
)

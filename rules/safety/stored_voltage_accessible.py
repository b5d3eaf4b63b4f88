"""Charge left on bare rails two seconds after the supply is cut.

Bulk capacitors keep their voltage after switch-off.  A plug pulled by a user leaves its
pins or the bare rails live until something has discharged them, and the safety standard
measures two seconds after the cut.  The discharge resistor does it; what the amplifier
draws does not count, as a broken one draws nothing.

The figure is the voltage between the rails, all together, after that time; a single fault
is not counted.  Above 60 V, the end of class 1 (from memory), is critical, as it is within
reach of anyone.  Put the resistor on the capacitor's side of every switch and fuse.  First
fix: a resistor of two seconds over capacitance and the logarithm of the voltage ratio.
"""

from ...linter.check import (
    AtMost,
    Case,
    Check,
    Constant,
    Input,
    Lever,
    derivation,
)
from ..formulas.safety import ENERGY_CLASSES, NONE_FITTED, WAIT, voltage_left
from ..hazards import STORED_VOLTAGE


def figure(v_rail: float, rail_count: float, r: float, c: float, wait: float) -> float:
    return rail_count * voltage_left(v_rail, wait, r, c)


RAIL = """
supply: {source: dc-source, rails: single, v_rail: 80 V, bulk: {c: 10 mF}, c_source: 0 F}
protection: {bleeder: {r: 2200 ohm}}
safety: {rail_access: bare}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Voltage left on bare rails",
    figure=figure,
    unit="V",
    each="product",
    stake="safety",
    formula="rail_count v_rail exp(-wait / (r c))",
    sentence="{wait} after the supply is cut, bare rails hold {figure} ({v_rail} per rail at"
    " first).",
    inputs={
        "v_rail": Input("v_rail_high"),
        "rail_count": Input("rail_count", meaning="rails in series between two hands"),
        "r": Input("protection.bleeder.r", default=NONE_FITTED),
        "c": Input("c_discharged"),
        "wait": Constant("2 s", "time after disconnection", WAIT),
    },
    applies={"safety.rail_access": "bare"},
    limits=AtMost(critical="60 V", basis={"critical": ENERGY_CLASSES}),
    levers=(Lever("protection.bleeder.r", "E12"),),
    sources=(WAIT, ENERGY_CLASSES, derivation("discharge of R and C, checked by an ODE")),
    cautions=(STORED_VOLTAGE,),
    cases=(
        Case(
            {"v_rail": "80 V", "rail_count": 1.0, "r": "695.2 ohm", "c": "10 mF"},
            gives="60 V",
            origin="computed: ODE of 10 mF at 80 V on 695.2 ohm: 60 V after 2 s",
        ),
        Case(
            {"v_rail": "45 V", "rail_count": 2.0, "r": "2200 ohm", "c": "4.7 mF"},
            gives="74.17 V",
            origin="computed: ODE of two rails of 45 V on 2.2 kohm each after 2 s",
        ),
    ),
    topic=("safety.rail_access",),
    fails=RAIL,
    passes=RAIL.replace("2200 ohm", "560 ohm"),
)

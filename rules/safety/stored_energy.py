"""Energy left in the bulk capacitors: arcs and burns, at any voltage.

A ring or a screwdriver across a charged capacitor takes its whole energy in a few
milliseconds.  A joule makes a spark and a pit, ten joules a burn under a ring, and molten
metal flies into eyes.  The voltage may be far below anything that shocks.

Twenty joules were the end of the harmless range in IEC 60950-1 (from memory, withdrawn, and
the best number there is): above it minor, as it is a matter of a note for service and of
covered terminals.  Every large amplifier stores more than that while it runs; what counts is
what the discharge resistor has left after the time that the label tells to wait.  The figure
adds all rails, from their highest voltage.  First fix: a discharge resistor, a note on the
board, a cover over the terminals of the capacitors.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation, from_memory
from ..formulas.safety import NONE_FITTED, stored_energy, voltage_left
from ..hazards import ARC

ENERGY_LEVEL = from_memory("IEC 60950-1, 1.2.8.10 (withdrawn)", "hazardous energy from 20 J at 2 V")


def figure(v_rail: float, rail_count: float, r: float, c: float, wait: float) -> float:
    return rail_count * stored_energy(c, voltage_left(v_rail, wait, r, c))


RAIL = """
supply: {source: dc-source, rails: split, v_rail: 63 V, bulk: {c: 10 mF}, c_source: 0 F}
protection: {bleeder: none}
safety: {discharge_wait: 30 s}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Stored energy in the bulk capacitors at service",
    figure=figure,
    unit="J",
    each="product",
    stake="safety",
    formula="rail_count c (v_rail exp(-wait / (r c)))^2 / 2",
    sentence="{wait} after switch-off the bulk capacitors hold {figure} ({c} and {v_rail} per"
    " rail, {r:?no bleeder|bleeder #}).",
    inputs={
        "v_rail": Input("v_rail_high"),
        "rail_count": Input("rail_count", meaning="rails with capacitors"),
        "r": Input("protection.bleeder.r", default=NONE_FITTED),
        "c": Input("c_rail"),
        "wait": Input("safety.discharge_wait"),
    },
    limits=AtMost(minor="20 J", basis={"minor": ENERGY_LEVEL}),
    levers=(Lever("protection.bleeder.r", "E12"), Lever("safety.discharge_wait", "5 s")),
    sources=(
        ENERGY_LEVEL,
        derivation("energy of a capacitor: c v^2 / 2, voltage falling with r c"),
    ),
    cautions=(ARC,),
    cases=(
        Case(
            {"v_rail": "80 V", "rail_count": 1.0, "r": "1000 ohm", "c": "10 mF", "wait": "0 s"},
            gives="32.00 J",
            origin="computed: quadrature of voltage over charge, 10 mF to 80 V",
        ),
        Case(
            {"v_rail": "63 V", "rail_count": 2.0, "r": "4700 ohm", "c": "10 mF", "wait": "119.1 s"},
            gives="0.25 J",
            origin="computed: ODE of 10 mF at 63 V on 4.7 kohm: 5 V after 119.1 s, two rails",
            tolerance=5e-3,
        ),
    ),
    topic=("protection.bleeder", "supply.bulk.c"),
    fails=RAIL,
    passes=RAIL.replace("bleeder: none", "bleeder: {r: 2200 ohm}"),
)

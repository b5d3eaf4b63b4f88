"""Energy in the bulk capacitors: arcs and burns, at any voltage.

A ring or a screwdriver across a charged capacitor takes its whole energy in a few
milliseconds.  A joule makes a spark and a pit, ten joules a burn under a ring, and molten
metal flies into eyes.  The voltage may be far below anything that shocks.

Twenty joules were the end of the harmless range in IEC 60950-1 (from memory, withdrawn, and
the best number there is): above it minor, as it is a matter of a note for service and of
covered terminals.  The figure adds all rails at their highest voltage.  First cure: a cover
over the terminals of the capacitors, a discharge resistor, a note on the board.
"""

from typing import Any

from ...linter.check import AtMost, Case, Caution, Check, Input, Lever, derivation, from_memory
from ..formulas import safety

ENERGY_LEVEL = from_memory("IEC 60950-1, 1.2.8.10 (withdrawn)", "hazardous energy from 20 J at 2 V")


def figure(v_rail: Any, rail_count: Any, c: Any) -> Any:
    return rail_count * safety.stored_energy(c, v_rail)


RAIL = """
supply: {source: dc-source, rails: split, v_rail: 63 V, bulk: {c: 10 mF}, c_source: 0 F}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Energy in the bulk capacitors",
    figure=figure,
    unit="J",
    each="product",
    stake="safety",
    formula="rail_count c v_rail^2 / 2",
    sentence="The capacitors of all rails hold {figure} ({c} at {v_rail} on each).",
    inputs={
        "v_rail": Input("v_rail_high", "V", "ONE rail to ground, highest"),
        "rail_count": Input("rail_count", "1", "rails with capacitors"),
        "c": Input("c_rail", "F", "capacitance of ONE rail"),
    },
    limits=AtMost(minor="20 J", basis={"minor": ENERGY_LEVEL}),
    levers=(Lever("supply.bulk.c", "E6"),),
    sources=(ENERGY_LEVEL, derivation("energy of a capacitor: c v^2 / 2")),
    cautions=(
        Caution(
            "CAUTION",
            "A tool or ring across charged capacitors arcs and burns at any voltage. Take off"
            " rings, wear eye protection, discharge through a resistor.",
        ),
    ),
    cases=(
        Case(
            {"v_rail": "80 V", "rail_count": 1.0, "c": "10 mF"},
            gives="32.00 J",
            origin="computed: quadrature of voltage over charge, 10 mF to 80 V",
        ),
        Case(
            {"v_rail": "25.2 V", "rail_count": 1.0, "c": "4.4 mF"},
            gives="1.397 J",
            origin="computed: quadrature of voltage over charge, 4.4 mF to 25.2 V",
        ),
    ),
    topic=("supply.bulk.c",),
    asked_from=None,
    fails=RAIL,
    passes=RAIL.replace("63 V", "35 V"),
)

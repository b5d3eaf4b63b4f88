"""Over-voltage trip: provoked by raising the bench supply, never beyond what the parts take."""

from ...linter.bringup_step import Hazard, Line, Reading, Step
from .shared import AT_FULL, CHARGED, RAIL_MOST, SHOCK, nominal, quantity

BEHIND = {"rail_feed": "converter"}
RAIL = nominal("v_rail_high", "V")

STEP = Step(
    title="Trip: over-voltage",
    order=100,
    instrument="bench supply with its voltage limit set, current limit as before; voltmeter",
    applies={"protection.over_voltage": "fitted"},
    bench=AT_FULL,
    lines=(
        Line(
            "Set the supply's own voltage limit to {v}: capacitors and switches take no more.",
            {"v": RAIL_MOST},
        ),
        Line("A bench supply in place of the converter, at the rail.", applies=BEHIND),
        Line(
            "From {v} raise one rail by 0.1 V a second, no load, until the node stops.",
            {"v": RAIL},
        ),
        Line("Then the other rail.", applies={"supply.rails": "split"}),
    ),
    hazards=(Hazard("pumping-against-capacitor"), CHARGED, SHOCK),
    readings=(
        Reading(
            "over-voltage-trip",
            "Rail at which the node stops",
            quantity("protection.over_voltage.v_trip", "V"),
            limit=RAIL_MOST,
        ),
    ),
)

"""Under-voltage trip: provoked by lowering the bench supply."""

from ...linter.bringup_step import Hazard, Line, Reading, Step
from .shared import AT_FULL, CHARGED, SHOCK, nominal, past, quantity

BEHIND = {"rail_feed": "converter"}
RAIL = nominal("v_rail_high", "V")

STEP = Step(
    title="Trip: under-voltage",
    order=90,
    instrument="bench supply, its limit as before; voltmeter on the rail; oscilloscope on the node",
    applies={"protection.under_voltage": "fitted"},
    bench=AT_FULL,
    lines=(
        Line("A bench supply in place of the converter, at the rail.", applies=BEHIND),
        Line(
            "From {v} lower the rail by 0.1 V a second, no load, until the node stops.",
            {"v": RAIL},
        ),
        Line("Both rails together, then each alone.", applies={"supply.rails": "split"}),
        Line("Raise it again and note where the stage starts; no chatter in between."),
    ),
    hazards=(Hazard("dead-time-margin"), CHARGED, SHOCK),
    readings=(
        Reading(
            "under-voltage-trip",
            "Rail at which the node stops",
            quantity("protection.under_voltage.v_trip", "V"),
            stop="below",
            limit=past("protection.under_voltage.v_trip", "V", "lowest"),
        ),
    ),
)

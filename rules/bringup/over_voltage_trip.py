"""Over-voltage trip: provoked by raising the bench supply, never beyond what the parts take."""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import Input
from ..formulas.maths import smaller
from .shared import AT_FULL, CHARGED, SHOCK, nominal, quantity


def takes(v_rated: float, v_leg: tuple[float, ...], rails: float, v_other: float) -> float:
    """What one rail may reach: its capacitors, and the legs less the other rail."""
    lowest = v_leg[0]
    for limit in v_leg[1:]:
        lowest = smaller(lowest, limit)
    return smaller(v_rated, lowest - (rails - 1) * v_other)


MOST = Amount(
    "V",
    takes,
    {
        "v_rated": Input("supply.bulk.v_rated"),
        "v_leg": Input("all v_leg_absolute"),
        "rails": Input("rail_count"),
        "v_other": Input("v_rail_high"),
    },
    "lowest",
)
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
            {"v": MOST},
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
            limit=MOST,
        ),
    ),
)

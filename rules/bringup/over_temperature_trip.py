"""Over-temperature trip: provoked by warming the sensor alone, never the whole stage."""

from ...linter.bringup_step import Hazard, Line, Reading, Step
from ...linter.check import Caution
from .shared import AT_FULL, CHARGED, SHOCK, past_temperature, quantity, word

AT = "protection.over_temperature.at"
TRIP = quantity("protection.over_temperature.t_trip", "degC")

STEP = Step(
    title="Trip: over-temperature",
    order=120,
    instrument="hot-air tool at its lowest flow; thermocouple glued beside the sensor",
    applies={"over_temperature": "fitted"},
    bench=AT_FULL,
    lines=(
        Line("Sensor: {place}. Warm it alone, 1 K a second, idle stage.", {"place": word(AT)}),
        Line(
            "Inside a part: warm its case, and read the case; the junction is a little warmer.",
            applies={AT: "junction"},
        ),
        Line("Let it cool and note where the stage starts again."),
    ),
    hazards=(
        Hazard(
            Caution(
                "CAUTION", "Hot air burns skin and board. Let the board cool before touching it."
            )
        ),
        CHARGED,
        SHOCK,
    ),
    readings=(
        Reading(
            "over-temperature-trip",
            "Sensor at which the stage stops",
            TRIP,
            limit=past_temperature("protection.over_temperature.t_trip"),
        ),
    ),
)

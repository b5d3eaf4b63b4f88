"""Over-current trip: provoked with short bursts into a low resistance, at the lowest rail.

The resistance lets a quarter more than the highest trip current flow: without a trip by then
something is wrong, and nothing more can flow at that rail.
"""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import COMMON_PRACTICE, Constant, Input
from ..formulas.bench import load_that_trips
from .shared import AT_FIRST, CHARGED, FIRST, FULL, SHOCK, quantity, times

BEYOND = Constant("1.25", "of the highest trip current", COMMON_PRACTICE)
I_TRIP = "output_stage.over_current.i_trip"
LOAD = Amount(
    "ohm",
    load_that_trips,
    {
        "v_peak": Input("v_ideal"),
        "m_max": Input("m_max"),
        "i_trip": Input(I_TRIP),
        "beyond": BEYOND,
    },
    "lowest",
    2,
)

STEP = Step(
    title="Trip: over-current",
    order=110,
    instrument="oscilloscope with current probe in the load lead, single shot; burst generator",
    applies={"over_current": "fitted"},
    bench=AT_FIRST,
    lines=(
        Line("Supply at {v}: the lowest rail on which the stage runs.", {"v": FIRST}),
        Line("Load of {r}, wire-wound and short leads.", {"r": LOAD}, each="channel"),
        Line("One cycle of 1 kHz every two seconds; raise the level from nothing until it trips."),
        Line("Only when this holds, repeat at {v}.", {"v": FULL}),
    ),
    hazards=(
        Hazard("trip-below-destruction"),
        Hazard("short-circuit-current-rise"),
        CHARGED,
        SHOCK,
    ),
    readings=(
        Reading(
            "over-current-trip",
            "Load current at the trip, peak, stage cold",
            quantity(I_TRIP, "A"),
            each="channel",
            limit=Amount("A", times, {"value": Input(I_TRIP), "factor": BEYOND}, "highest"),
        ),
        Reading(
            "trip-retry",
            "Time until it tries again",
            quantity("output_stage.over_current.t_retry", "s"),
            each="channel",
        ),
    ),
)

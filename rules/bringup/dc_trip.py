"""Detector of direct voltage: provoked with a small supply at the output of a still stage."""

from ...linter.bringup_step import Hazard, Line, Reading, Step
from .shared import AT_FULL, CHARGED, SHOCK, past, quantity, word

DETECTOR = "protection.dc_detector"
TRIP = quantity(f"{DETECTOR}.v_trip", "V")

STEP = Step(
    title="Trip: direct voltage at the output",
    order=130,
    instrument="small supply with its limit at 50 mA, behind 100 ohm; oscilloscope; no loudspeaker",
    applies={DETECTOR: "fitted"},
    bench=AT_FULL,
    lines=(
        Line(
            "Stage stopped, dummy load off. Raise the direct voltage at the output from 0 V.",
            applies={f"{DETECTOR}.senses": ("filtered-output", "timed-output")},
        ),
        Line("Both polarities. Then step from 0 to twice the threshold, and take the time."),
        Line("It must: {action}.", {"action": word(f"{DETECTOR}.action")}),
    ),
    hazards=(Hazard("independent-disconnect"), Hazard("dc-fault-power"), CHARGED, SHOCK),
    readings=(
        Reading(
            "dc-trip",
            "Direct voltage at which it acts, each polarity",
            TRIP,
            limit=past(f"{DETECTOR}.v_trip", "V", "highest"),
            applies={f"{DETECTOR}.senses": ("filtered-output", "timed-output")},
        ),
        Reading(
            "dc-trip-time",
            "Time until it has acted",
            quantity(f"{DETECTOR}.t_trip", "s"),
            kind="at most",
            limit=past(f"{DETECTOR}.t_trip", "s", "highest"),
        ),
    ),
)

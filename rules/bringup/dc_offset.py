"""Direct voltage at the output, before a loudspeaker is anywhere near."""

from ...linter.bringup_step import Hazard, Line, Reading, Step
from .shared import AT_FULL, BRIDGE, CHARGED, FULL, SHOCK, quantity

STEP = Step(
    title="DC offset",
    order=80,
    instrument="voltmeter, direct voltage, across the load terminals, behind 10 kohm and 1 uF",
    bench=AT_FULL,
    lines=(
        Line("{v}, dummy load, inputs shorted.", {"v": FULL}),
        BRIDGE,
        Line("Read after one minute, and while switching on and off."),
    ),
    hazards=(
        Hazard("dc-fault-power"),
        Hazard("shock-class-outputs", {"rail_harmless": "no"}),
        CHARGED,
        SHOCK,
    ),
    readings=(
        Reading(
            "dc-offset",
            "Direct voltage across the load, magnitude",
            harms=False,
            each="channel",
            kind="at most",
            check="steady-dc-offset",
        ),
        Reading(
            "turn-on-step",
            "Step at switching on, peak",
            quantity("turn_on_step", "V"),
            each="channel",
            kind="at most",
        ),
    ),
)

"""The loudspeaker, last, when everything that could destroy it has been seen to work."""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import COMMON_PRACTICE, Constant, Input
from .shared import BY_LICENCE, CHARGED, SHOCK, constant

TEN_TIMES_LESS = Constant("-20 dB", "a tenth of 2.83 V", COMMON_PRACTICE)
EARS = Constant("85 dB", "beyond it with hearing protection only", COMMON_PRACTICE)
ROOM_AND_METER = Constant("3 dB", "room, placing and sound level meter", COMMON_PRACTICE)


def small_level(sensitivity: float, step: float) -> float:
    """Level with a smaller voltage."""
    return sensitivity + step


STEP = Step(
    title="The loudspeaker",
    order=200,
    instrument="sound level meter at 1 m on the axis; true-rms voltmeter across one loudspeaker",
    lines=(
        Line(
            "Only after every step above. Measure the direct voltage at the open terminals again."
        ),
        Line("Switched off and discharged, connect it, at first with a small fuse in its lead."),
        Line("Level at nothing; listen from 2 m: no hum, no carrier heat, no thump at switching."),
        Line("Noise of the band, 283 mV across one loudspeaker; then music, slowly louder."),
        Line("The amplifier into the loudspeaker at length: not before the temperatures are in."),
    ),
    hazards=(
        Hazard("hearing-exposure"),
        Hazard("loudspeaker-power-match"),
        Hazard("dc-fault-power"),
        Hazard("shock-class-outputs", {"rail_harmless": "no"}),
        BY_LICENCE,
        CHARGED,
        SHOCK,
    ),
    readings=(
        Reading(
            "offset-again",
            "Direct voltage at the open terminals, magnitude",
            each="channel",
            kind="at most",
            check="steady-dc-offset",
        ),
        Reading(
            "small-level",
            "Level at 1 m, 283 mV across one loudspeaker",
            Amount(
                "dB",
                small_level,
                {"sensitivity": Input("sensitivity_2v83"), "step": TEN_TIMES_LESS},
            ),
            each="channel",
            spread=constant(ROOM_AND_METER, "dB"),
            limit=constant(EARS, "dB"),
        ),
    ),
)

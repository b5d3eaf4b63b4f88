"""Temperatures in the closed product, once they stand still."""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import COMMON_PRACTICE, Constant, Input
from .shared import (
    BY_LICENCE,
    CHARGED,
    HOTTEST,
    PACK_AT_FULL,
    ROOM,
    SHOCK,
    in_the_room,
    quantity,
)

CONSTANTS = Constant("3", "time constants until 95 % of the rise", COMMON_PRACTICE)


def wait(heat_time: float, constants: float) -> float:
    """Time until the rise is all but over."""
    return constants * heat_time


def output(part: float, rated_power: float) -> float:
    """Output of a channel, sine."""
    return part * rated_power


def below_junction(
    t: float, t_junction: float, t_j_max: float, reserve: float, hottest: float, room: float
) -> float:
    """A place while the junction is a reserve below its limit, as it reads in the room."""
    return t + (t_j_max - reserve - t_junction) - (hottest - room)


RESERVE = Constant("25 K", "usual reserve of a junction below its limit", COMMON_PRACTICE)


def _guard(path: str) -> Amount:
    return Amount("degC", in_the_room, {"t": Input(path), **HOTTEST}, as_designed=True)


def _junction(path: str) -> Amount:
    inputs: dict[str, Input | Constant] = {
        "t": Input(path),
        "t_junction": Input("t_junction_programme"),
        "t_j_max": Input("output_stage.device.t_j_max"),
        "reserve": RESERVE,
        **HOTTEST,
    }
    return Amount("degC", below_junction, inputs, as_designed=True)


STEP = Step(
    title="Temperatures after the time constant",
    order=170,
    instrument="thermocouples: heatsink beside a package, case, inside air, room; closed product",
    bench=(*ROOM, *PACK_AT_FULL),
    lines=(
        Line(
            "Sine of {p} in each channel into the dummy loads, all driven.",
            {
                "p": Amount(
                    "W", output, {"part": Input("part_tested"), "rated_power": Input("rated_power")}
                )
            },
            each="channel",
        ),
        Line("Product closed, as in use; numbers hold at 25 °C: add what the room has more."),
        Line(
            "Wait {t}, three time constants of the heatsink or board.",
            {
                "t": Amount(
                    "min",
                    wait,
                    {"heat_time": Input("heat_time"), "constants": CONSTANTS},
                    "highest",
                    2,
                )
            },
        ),
        Line("It is steady when nothing rises by more than 1 K in ten minutes."),
    ),
    hazards=(
        Hazard("junction-temperature-margin"),
        Hazard("touch-temperature-heatsink"),
        BY_LICENCE,
        CHARGED,
        SHOCK,
    ),
    readings=(
        Reading(
            "heatsink-temperature",
            "Heatsink",
            quantity("t_heatsink", "degC"),
            limit=_guard("protection.over_temperature.t_trip"),
            applies={"heatsink": "fitted", "protection.over_temperature.at": "heatsink"},
        ),
        Reading(
            "heatsink-temperature",
            "Heatsink",
            quantity("t_heatsink", "degC"),
            applies={
                "heatsink": "fitted",
                "protection.over_temperature.at": ("case", "board", "junction"),
            },
        ),
        Reading(
            "case-temperature",
            "Hottest case",
            quantity("t_case_programme", "degC"),
            each="channel",
            limit=_junction("t_case_programme"),
        ),
        Reading(
            "inside-air",
            "Inside air",
            quantity("t_air_inside", "degC"),
            limit=_guard("supply.bulk.t_rated"),
        ),
        Reading(
            "junction-temperature",
            "Junction, from the case or the part's own report",
            quantity("t_junction_programme", "degC"),
            each="channel",
            limit=_junction("t_junction_programme"),
        ),
    ),
)

"""Idle current at the full voltage: the one number that tells most about a switching stage."""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import COMMON_PRACTICE, Constant, Input
from .shared import AT_FULL, CHARGED, FULL, SHOCK, quantity

BEYOND = Constant("1.5", "of the expected idle current: look for the cause", COMMON_PRACTICE)


def too_much(i_idle: float, beyond: float) -> float:
    """Idle current that no tolerance explains."""
    return i_idle * beyond


STEP = Step(
    title="Idle current",
    order=60,
    instrument="meter of the bench supply, or a shunt; thermal camera",
    bench=AT_FULL,
    lines=(
        Line(
            "{v}, outputs open, inputs shorted, other loads of the product on. Ten minutes.",
            {"v": FULL},
        ),
        Line(
            "Too high: look at dead time, inductor core, snubber and gate waveforms, in this order."
        ),
    ),
    hazards=(Hazard("junction-temperature-margin"), CHARGED, SHOCK),
    readings=(
        Reading(
            "idle-current",
            "Current of each supply",
            quantity("i_idle", "A"),
            limit=Amount("A", too_much, {"i_idle": Input("i_idle"), "beyond": BEYOND}, "highest"),
        ),
        Reading(
            "idle-power",
            "Of that, a channel alone",
            quantity("p_idle", "W"),
            each="channel",
        ),
    ),
)

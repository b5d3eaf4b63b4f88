"""Idle current at the full voltage: the one number that tells most about a switching stage."""

from ...linter.bringup_step import Hazard, Line, Reading, Step
from .shared import AT_FULL, CHARGED, FULL, IDLE_MOST, SHOCK, quantity

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
            limit=IDLE_MOST,
        ),
        Reading(
            "idle-power",
            "Of that, a channel alone",
            quantity("p_idle", "W"),
            each="channel",
        ),
    ),
)

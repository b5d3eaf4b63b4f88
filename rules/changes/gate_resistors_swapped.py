"""The two gate resistors taken for each other.

A switch is turned on slowly, for the edge and the recovery of the other one's diode, and held
off through little resistance.  A turn-off resistor above the turn-on one is nearly always the
two in each other's place on the drawing.
"""

from ...linter.check import COMMON_PRACTICE, Input
from ...linter.design_change import DesignChange, Follow


def larger_first(one: float, other: float) -> float:
    """The larger of the two."""
    return one if one > other else other


def smaller_first(one: float, other: float) -> float:
    """The smaller of the two."""
    return one if one < other else other


_BOTH = {
    "one": Input("before gate_drive.r_g_on"),
    "other": Input("before gate_drive.r_g_off"),
}

CHANGE = DesignChange(
    title="the two gate resistors swapped back",
    kind="slip",
    helps=("miller-turn-on", "driver-slope-immunity", "dead-time-margin", "driver-edge-current"),
    applies={"output_stage.devices": "discrete"},
    follows=(
        Follow("gate_drive.r_g_on", larger_first, _BOTH),
        Follow("gate_drive.r_g_off", smaller_first, _BOTH),
    ),
    sources=(COMMON_PRACTICE,),
)

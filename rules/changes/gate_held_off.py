"""A gate that is held off through little resistance: a stronger driver and a small resistor.

The slope of the node drives current through the gate-drain capacitance; what it lifts the gate
by is that current times the resistance that holds the gate.  The turn-off resistor alone does
not help where the driver's own resistance is the larger part: both go together.  The driver
is a guess until one is chosen.
"""

from ...linter.check import COMMON_PRACTICE, Constant, derivation
from ...linter.design_change import DesignChange, Follow

STRONG = Constant("9 A", "sink current of a strong driver", COMMON_PRACTICE)
SMALL = Constant("1 ohm", "least turn-off resistor that still damps the gate", COMMON_PRACTICE)


def as_chosen(x: float) -> float:
    """The value chosen."""
    return x


CHANGE = DesignChange(
    title="a gate held off through a stronger driver and a smaller resistor",
    kind="part",
    helps=("miller-turn-on",),
    applies={"output_stage.devices": "discrete"},
    follows=(
        Follow("gate_drive.i_sink", as_chosen, {"x": STRONG}, "1 A", "up", guess=True),
        Follow("gate_drive.r_g_off", as_chosen, {"x": SMALL}, "E12", "down"),
    ),
    sources=(derivation("Ohm's law: the gate's lift is current times resistance"),),
)

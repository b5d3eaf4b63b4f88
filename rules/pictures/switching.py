"""Commands and conduction of the two switches of a leg, at the worst corner of the dead time.

The gap between the end of one conduction and the start of the other is the figure of the
check of the dead time: dead_time - t_off_outlasts - delay_mismatch.
"""

from ...linter.check import Arguments, Input
from ...linter.picture import Amount, Axis, Curve, Curves, Mark, Span
from ..derived.ways import left_out
from ..formulas.maths import clip, larger
from .parts import as_read

DISCRETE = {"output_stage.devices": "discrete"}
DEAD = Input("gate_drive.dead_time")
MISMATCH = Input(
    "gate_drive.delay_mismatch", default=left_out("0 s", "difference of the driver's delays")
)
OUTLASTS = Input("t_off_outlasts")
T_ON = Input(
    "output_stage.device.t_d_on", default=left_out("0 s", "turn-on delay, in both switches")
)
EDGE = Input("t_edge", default=left_out("0 s", "edge of the switch node"))
BEFORE: Arguments = {"t_on": T_ON, "t_outlasts": OUTLASTS}
AFTER: Arguments = {"dead_time": DEAD, "mismatch": MISMATCH, "t_on": T_ON}


def gap(dead_time: float, mismatch: float, t_outlasts: float) -> float:
    """Time in which neither switch conducts."""
    return dead_time - mismatch - t_outlasts


def off_at(t_on: float, t_outlasts: float) -> float:
    """End of the conduction of the first switch, after its command."""
    return larger(t_on + t_outlasts, 0.0)


def on_at(dead_time: float, mismatch: float, t_on: float) -> float:
    """Start of the conduction of the second switch."""
    return dead_time - mismatch + t_on


def command_off(x: float, dead_time: float) -> float:
    """Command of the first switch: off at 0."""
    return 1.0 if x < 0 * dead_time else 0.0


def command_on(x: float, dead_time: float) -> float:
    """Command of the second switch: on after the dead time."""
    return 1.0 if x >= dead_time else 0.0


def first_conducts(x: float, t_on: float, t_outlasts: float) -> float:
    return 1.0 if x < off_at(t_on, t_outlasts) else 0.0


def second_conducts(x: float, dead_time: float, mismatch: float, t_on: float) -> float:
    return 1.0 if x >= on_at(dead_time, mismatch, t_on) else 0.0


def node(x: float, dead_time: float, mismatch: float, t_on: float, edge: float) -> float:
    """Switch node that waits for the second switch: load current into the node."""
    start = on_at(dead_time, mismatch, t_on)
    return 1 - clip((x - start) / larger(edge / 0.8, 1e-12), 0.0, 1.0)


def start_of(dead_time: float, t_on: float, t_outlasts: float) -> float:
    """The picture starts a little before the first command."""
    return -0.3 * larger(dead_time + t_on, off_at(t_on, t_outlasts))


def end_of(dead_time: float, t_on: float, t_outlasts: float, edge: float) -> float:
    """It ends when all is over."""
    return 1.3 * larger(dead_time + t_on, off_at(t_on, t_outlasts)) + 1.3 * edge


WHOLE: Arguments = {"dead_time": DEAD, "t_on": T_ON, "t_outlasts": OUTLASTS}

PICTURE = Curves(
    title="Is one switch off before the other turns on?",
    each="channel",
    x=Axis("time after the command to turn off", "s", Amount(WHOLE, start_of),
           Amount({**WHOLE, "edge": EDGE}, end_of)),
    y=Axis("", "1"),
    curves=(
        Curve("command, first switch", (Amount({"dead_time": DEAD}, command_off),), band=False),
        Curve("command, second switch", (Amount({"dead_time": DEAD}, command_on),), band=False),
        Curve("first switch conducts", (Amount(BEFORE, first_conducts),), band=False),
        Curve("second switch conducts", (Amount(AFTER, second_conducts),), band=False),
        Curve("switch node", (Amount({**AFTER, "edge": EDGE}, node),), band=False),
    ),
    marks=(
        Mark("dead time", "x", (Amount({}, as_read),), "measured",
             measures="gate_drive.dead_time"),
    ),
    spans=(
        Span("neither conducts", Amount(BEFORE, off_at), Amount(AFTER, on_at),
             turned="both conduct: shoot-through"),
    ),
    note="At the worst corner of the effective dead time; the node as it falls where the load"
    " current holds it up until the second switch turns on.",
    lanes=True,
    checks=("dead-time-margin", "dead-time-margin-gallium-nitride"),
    worst=Amount({"dead_time": DEAD, "mismatch": MISMATCH, "t_outlasts": OUTLASTS}, gap, DISCRETE),
)  # fmt: skip

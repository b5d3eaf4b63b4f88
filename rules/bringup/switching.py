"""Dead time, edges and ringing of the switch node, first at the lowest rail, then at the full."""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import Constant, Input, Source
from ..derived.ways import as_stated
from .shared import (
    AT_FULL,
    CHARGED,
    DISCRETE,
    FIRST,
    FULL,
    FULL_AT_ONCE,
    HELD,
    RAISED,
    SHOCK,
    quantity,
)

KEEP = Constant(
    "10 ns",
    "least dead time between the gates",
    Source("IRS20124S data sheet PD60240, International Rectifier", "p. 20"),
)


def least(t_outlasts: float, keep: float) -> float:
    """Dead time below which both switches come close to conducting together."""
    return t_outlasts + keep


LEAST = Amount("ns", least, {"t_outlasts": Input("t_off_outlasts"), "keep": KEEP})
MISMATCH = Amount("ns", as_stated, {"value": Input("gate_drive.delay_mismatch")}, "highest")

STEP = Step(
    title="Switch node: dead time, carrier, ringing",
    order=50,
    instrument=(
        "oscilloscope, 200 MHz or more, 10 ns/div, probe with a ground spring of a few"
        " millimetres; upper gate by a differential probe"
    ),
    bench=AT_FULL,
    lines=(
        Line(
            "Supply at {v}, current limit as before. No load, no signal.",
            {"v": FIRST},
        ),
        Line(
            "Lower and upper gate together, at the driver's outputs: dead time of both edges.",
            applies=DISCRETE,
        ),
        Line(
            "Raise the supply to {v} in steps; stop where the ringing grows faster than the rail.",
            {"v": FULL},
            applies=RAISED,
        ),
        Line(
            "The converter holds the rail at its full voltage: read the peak first, and switch off"
            " where it is beyond its stop.",
            applies=HELD,
        ),
        Line("Raise the supply to {v}: nothing at the node may change.", {"v": FULL}, HELD),
        Line("Never clip the earth of a mains-earthed oscilloscope to the node or to a rail."),
    ),
    hazards=(
        Hazard("dead-time-margin", RAISED),
        Hazard("device-voltage-margin", RAISED),
        Hazard(FULL_AT_ONCE, HELD),
        CHARGED,
        SHOCK,
    ),
    readings=(
        Reading(
            "dead-time",
            "Dead time between the gates, 50 % points",
            quantity("gate_drive.dead_time", "ns"),
            each="channel",
            spread=MISMATCH,
            stop="below",
            limit=LEAST,
            applies=DISCRETE,
        ),
        Reading(
            "carrier",
            "Switching frequency of a leg, no signal",
            quantity("modulator.carrier", "kHz"),
            each="channel",
        ),
        Reading(
            "node-swing",
            "Node, flat top to flat bottom",
            quantity("v_swing", "V"),
            each="channel",
        ),
        Reading(
            "node-peak",
            "Node, peak with ringing (again at full load, later)",
            quantity("v_node_peak", "V"),
            each="channel",
            kind="at most",
            limit=quantity("v_leg_absolute", "V"),
        ),
    ),
)

"""Gate supply and its lockout, before the rails rise to full voltage under the stage."""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import Input
from .shared import AT_FIRST, CHARGED, DISCRETE, FIRST, SHOCK, quantity


def behind_diode(v_drv: float, v_f: float) -> float:
    """Bootstrap supply at rest: the gate supply less its diode."""
    return v_drv - v_f


STEP = Step(
    title="Gate supply and lockout",
    order=40,
    instrument="voltmeter at the driver's pins; a small supply with current limit for the gates",
    applies=DISCRETE,
    bench=AT_FIRST,
    lines=(
        Line("Rail at {v}, no signal.", {"v": FIRST}),
        Line("Read the gate supply at the driver, then the upper driver's supply, node low."),
        Line(
            "Rail off and discharged: feed the gate supply alone, lower it slowly, and note where"
            " the upper driver stops pulsing."
        ),
    ),
    hazards=(Hazard("dead-time-margin"), CHARGED, SHOCK),
    readings=(
        Reading(
            "gate-supply",
            "Gate supply at the driver",
            quantity("gate_drive.v_drv", "V"),
            each="channel",
            limit=quantity("output_stage.device.v_gss", "V"),
        ),
        Reading(
            "bootstrap-supply",
            "Upper driver's supply, no signal",
            Amount(
                "V",
                behind_diode,
                {
                    "v_drv": Input("gate_drive.v_drv"),
                    "v_f": Input("gate_drive.bootstrap.v_f"),
                },
            ),
            each="channel",
            stop="below",
            limit=quantity("gate_drive.bootstrap.v_uvlo", "V"),
            applies={"high_side_supply": "bootstrap"},
        ),
        Reading(
            "driver-lockout",
            "Upper driver stops, falling supply",
            quantity("gate_drive.bootstrap.v_uvlo", "V"),
            each="channel",
            stop="below",
            limit=quantity("v_plateau", "V"),
        ),
    ),
)

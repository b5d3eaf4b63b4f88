"""Switching off, and how long the rails stay charged: known before anybody touches a probe."""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import COMMON_PRACTICE, Constant, Input
from ..formulas.bench import discharge_resistor
from ..formulas.safety import stored_energy, voltage_left
from .shared import AT_FULL, SHOCK, constant, nominal

T_EMPTY = Constant("3 s", "in which a resistor empties a rail", COMMON_PRACTICE)
FEW = constant(Constant("60 V", "direct voltage that can hurt", COMMON_PRACTICE), "V")
EMPTY = constant(Constant("1 V", "a rail that may be touched", COMMON_PRACTICE), "V")
RESISTOR = Amount("ohm", discharge_resistor, {"c": Input("c_rail"), "t": T_EMPTY}, "highest", 2)
ENERGY = Amount("J", stored_energy, {"c": Input("c_rail"), "v": Input("v_rail_high")}, "highest", 2)

STEP = Step(
    title="Switch off, and wait for the rails",
    order=30,
    instrument="voltmeter that stays on the rail; watch",
    bench=AT_FULL,
    lines=(
        Line(
            "Note the rail {wait} after switch-off.",
            {"wait": nominal("safety.discharge_wait", "s")},
        ),
        Line(
            "Discharge each rail through about {resistor}, a wire-wound part that takes {energy},"
            " on insulated probes. Measure below 1 V before touching. So before every later step.",
            {"resistor": RESISTOR, "energy": ENERGY},
        ),
    ),
    hazards=(Hazard("stored-voltage-service"), Hazard("stored-energy"), SHOCK),
    readings=(
        Reading(
            "rail-discharged",
            "Each rail, discharged through that resistor",
            EMPTY,
            kind="at most",
            limit=EMPTY,
        ),
        Reading(
            "rail-after-wait",
            "Each rail after the wait, stage without power",
            Amount(
                "V",
                voltage_left,
                {
                    "v": Input("v_rail_high"),
                    "t": Input("safety.discharge_wait"),
                    "r": Input("protection.bleeder.r"),
                    "c": Input("c_rail"),
                },
            ),
            kind="at most",
            applies={"protection.bleeder": "fitted"},
            limit=FEW,
        ),
    ),
)

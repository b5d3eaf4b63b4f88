"""Gate voltage with ringing against the gate rating.

The gate oxide is the most delicate part of a switch: a few volts beyond the rating for a
few nanoseconds puncture it, sometimes weeks later.  The gate sees the upper end of the gate
supply plus the ringing of the gate loop.

Stated ringing should be measured at the pins of the device, with a short ground.  Without
it 10 % of the gate supply is assumed; they alone never make this finding critical, a gate
supply that is beyond the rating without any ringing does.  Published
derating tables ask for 60 to 75 % of the rating; they are not applied, since 5 V on a 6 V
gallium-nitride gate (83 %) is the way its makers drive it and 15 V on a 20 V gate has run
for decades.  First fixes: a lower gate supply, a gate resistor, a shorter gate loop, a
zener diode at the gate.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..hazards import STAGE_LOST


def figure(v_drv: float, v_gate_ringing: float, v_gss: float) -> float:
    """Highest gate voltage over the gate rating."""
    return (v_drv + v_gate_ringing) / v_gss


CHECK = Check(
    title="Peak gate voltage vs. rating",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="(v_drv + v_gate_ringing) / v_gss",
    sentence="Gate voltage {v_gss:*figure} ({v_drv} plus {v_gate_ringing} ringing); rated {v_gss}"
    " ({figure:%}).",
    inputs={
        "v_drv": Input("gate_drive.v_drv"),
        "v_gate_ringing": Input(
            "v_gate_ringing",
            default=Assumption(
                "0 V", "favourable", derivation("the gate supply alone, without ringing")
            ),
        ),
        "v_gss": Input("output_stage.device.v_gss"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtMost(
        critical="100 %",
        major="95 %",
        minor="85 %",
        basis={
            "critical": derivation("absolute maximum rating of the gate"),
            "major": COMMON_PRACTICE,
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("gate_drive.v_drv", "0.5 V"),
        Lever("output_stage.device.v_gss", ("12 V", "16 V", "20 V", "25 V")),
    ),
    sources=(derivation("gate supply and ringing add at the gate"),),
    cautions=(STAGE_LOST,),
    cases=(
        Case(
            {"v_drv": "12 V", "v_gate_ringing": "3.6 V", "v_gss": "20 V"},
            "78 %",
            "common practice: 12 V drive on a 20 V gate with 30 % of ringing",
        ),
        Case(
            {"v_drv": "5 V", "v_gate_ringing": "0 V", "v_gss": "6 V"},
            "83.33 %",
            "derived: 5 V on a gallium-nitride gate rated 6 V",
        ),
    ),
    topic=("output_stage.device.v_gss", "gate_drive.v_drv"),
    asked_from="prototype",
    fails="""
channels:
  main:
    output_stage: {devices: discrete, device: {v_gss: 12 V}}
    gate_drive: {v_drv: 12 V, v_gs_ringing: 1 V}
""",
    passes="""
channels:
  main:
    output_stage: {devices: discrete, device: {v_gss: 20 V}}
    gate_drive: {v_drv: 12 V, v_gs_ringing: 2 V}
""",
)

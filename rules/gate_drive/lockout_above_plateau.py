"""Driver's lockout against the plateau of the gate.

The lockout of the floating supply is there so that the upper switch is never driven half
on.  It can do so only if its threshold lies above the plateau of that switch: a lockout of
5 V, made for logic-level devices, lets a standard device with a plateau of 5.5 V burn
before it acts.

The threshold counts with its lower end, the plateau as stated or as 40 % of the gate
supply.  One volt above the plateau is practice, because the plateau rises with current.
Below the plateau it protects nothing, which is a major finding and not a critical one: the
supply has to sag first.  First fixes: a driver with a higher lockout, a logic-level device.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation


def figure(v_uvlo: float, v_plateau: float) -> float:
    """Lockout threshold above the plateau."""
    return v_uvlo - v_plateau


CHECK = Check(
    title="Driver lockout vs. gate plateau",
    figure=figure,
    unit="V",
    each="channel",
    stake="rating",
    formula="v_uvlo - v_plateau",
    sentence="Driver lockout {v_uvlo}, {figure:+above|below} the gate plateau of {v_plateau}.",
    inputs={
        "v_uvlo": Input("gate_drive.bootstrap.v_uvlo"),
        "v_plateau": Input("v_plateau"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtLeast(
        major="0 V",
        minor="1 V",
        basis={
            "major": derivation("below the plateau the switch is half on"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("gate_drive.bootstrap.v_uvlo", "0.5 V"),),
    sources=(derivation("gate-charge curve of the device"),),
    cases=(
        Case(
            {"v_uvlo": "8.9 V", "v_plateau": "4.1 V"},
            "4.8 V",
            "from memory: drivers for standard gates lock out at 8 to 9 V",
        ),
        Case(
            {"v_uvlo": "5 V", "v_plateau": "5.5 V"},
            "-0.5 V",
            "derived: a lockout for logic-level devices with a standard gate",
        ),
    ),
    topic=("gate_drive.bootstrap.v_uvlo",),
    fails="""
channels:
  main:
    output_stage: {devices: discrete, device: {v_gs_pl: 5.5 V}}
    gate_drive: {bootstrap: {v_uvlo: 5 V}}
""",
    passes="""
channels:
  main:
    output_stage: {devices: discrete, device: {v_gs_pl: 4.1 V}}
    gate_drive: {bootstrap: {v_uvlo: 8.4 V}}
""",
)

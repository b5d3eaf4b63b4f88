"""Gate voltage above the plateau.

Above the plateau of the gate-charge curve the switch is on; at the plateau it carries the
load current with voltage across it.  If the gate supply, less the bootstrap diode, is only
just above the plateau, a hot device or a crest of current leaves the switch half on, and it
burns in a fraction of a second.

Two volts above the plateau at working current are practice, three where the current varies
much; one volt is no margin at all once the plateau rises with the current.  The plateau may
be stated as the data sheet's curve shows it; without it nothing can be said.  First fixes: a
higher gate supply, a logic-level device.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..hazards import FIRST_POWER_UP

USUAL_SUPPLY = Assumption("12 V", "favourable", COMMON_PRACTICE)


def figure(v_drv: float, v_f: float, v_plateau: float) -> float:
    """Gate voltage of the upper switch above the plateau."""
    return v_drv - v_f - v_plateau


CHECK = Check(
    title="Gate voltage vs. plateau",
    figure=figure,
    unit="V",
    each="channel",
    stake="rating",
    formula="v_drv - v_f - v_plateau",
    sentence="Gate voltage ({v_drv} less {v_f} of the bootstrap diode) is {figure:+above|below}"
    " the {v_plateau} plateau.",
    inputs={
        "v_drv": Input("gate_drive.v_drv", default=USUAL_SUPPLY),
        "v_f": Input(
            "gate_drive.bootstrap.v_f", default=Assumption("1 V", "neutral", COMMON_PRACTICE)
        ),
        "v_plateau": Input("output_stage.device.v_gs_pl"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtLeast(
        critical="0 V",
        major="1 V",
        minor="2 V",
        basis={
            "critical": derivation("below the plateau the switch does not turn on"),
            "major": COMMON_PRACTICE,
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("gate_drive.v_drv", "0.5 V"),),
    sources=(derivation("gate-charge curve of the device"),),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {"v_drv": "12 V", "v_f": "1 V", "v_plateau": "3.125 V"},
            "7.875 V",
            "computed: plateau of 3.125 V from a transistor model that carries the load",
        ),
        Case(
            {"v_drv": "5 V", "v_f": "0.7 V", "v_plateau": "4.8 V"},
            "-0.5 V",
            "derived: a standard gate on a 5 V supply",
        ),
    ),
    topic=("output_stage.device.v_gs_pl",),
    asked_from="prototype",
    fails="""
channels:
  main:
    output_stage: {devices: discrete, device: {v_gs_pl: 4.8 V}}
    gate_drive: {v_drv: 5 V, bootstrap: {v_f: 0.7 V}}
""",
    passes="""
channels:
  main:
    output_stage: {devices: discrete, device: {v_gs_pl: 4.8 V}}
    gate_drive: {v_drv: 12 V, bootstrap: {v_f: 0.7 V}}
""",
)

"""Voltage at the driver's floating pins and across the bootstrap diode.

While the upper switch is on, the driver's floating supply sits at the whole leg voltage
plus its own gate supply, and the bootstrap diode blocks the leg voltage.  A driver or diode
chosen for the rail alone, one rail of two, or without the rise by pumping, breaks down into
the gate supply and takes driver, switches and controller along.

The figure is the larger one of both ratios.  A diode whose rating is not stated is taken to
sit in the driver, whose rating then counts.  Ringing of the node comes on top and is left
out: a tenth is kept for it.  First fixes: a driver of the next voltage class; a fast diode
of at least the rating of the switches.
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
from ..formulas.maths import larger
from ..hazards import FIRST_POWER_UP

CLASSES = ("60 V", "100 V", "120 V", "200 V", "250 V", "300 V", "600 V")
INSIDE = Assumption(
    float("inf"), "favourable", derivation("a diode inside the driver is part of its rating")
)


def figure(v_static_peak: float, v_drv: float, v_floating: float, v_r: float) -> float:
    """The larger one of the driver's and the diode's share of their ratings."""
    return larger((v_static_peak + v_drv) / v_floating, v_static_peak / v_r)


_BASE = """
supply: {source: dc-source, rails: split, v_rail: 50 V, sinks_current: yes}
channels:
  main:
    output_stage: {topology: half-bridge, devices: discrete}
    gate_drive: {v_drv: 12 V, v_floating: RATING, bootstrap: {v_r: 200 V}}
"""

CHECK = Check(
    title="Upper driver and bootstrap diode voltage vs. ratings",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="larger of (v_static_peak + v_drv) / v_floating and v_static_peak / v_r",
    sentence="Upper driver sees {v_static_peak} plus {v_drv}, its diode {v_static_peak}; rated"
    " {v_floating} and {v_r} ({figure:%}).",
    inputs={
        "v_static_peak": Input("v_static_peak"),
        "v_drv": Input("gate_drive.v_drv"),
        "v_floating": Input("gate_drive.v_floating"),
        "v_r": Input("gate_drive.bootstrap.v_r", default=INSIDE),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtMost(
        critical="1",
        minor="0.9",
        basis={
            "critical": derivation("absolute maximum of the parts"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("gate_drive.v_floating", CLASSES),
        Lever("gate_drive.bootstrap.v_r", CLASSES),
    ),
    sources=(
        derivation("the floating supply rides on the switch node: voltages in series"),
        COMMON_PRACTICE,
    ),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {"v_static_peak": "100 V", "v_drv": "12 V", "v_floating": "200 V", "v_r": "200 V"},
            "0.56",
            "computed: nodal solution with the upper switch on, 112 V of 200 V",
        ),
        Case(
            {"v_static_peak": "100 V", "v_drv": "12 V", "v_floating": "200 V", "v_r": "80 V"},
            "1.25",
            "derived: the diode blocks the leg voltage, 100 V on 80 V",
        ),
    ),
    topic=("gate_drive",),
    asked_from="prototype",
    fails=_BASE.replace("RATING", "100 V"),
    passes=_BASE.replace("RATING", "200 V"),
)

"""Slope of the switch node against what the driver withstands.

The upper half of a gate driver rides on the switch node.  Each edge pushes a displacement
current through the parasitic capacitance of its level shifter or isolation; beyond the
rated slope the driver may lose or invent a pulse, and the upper switch is on when the lower
one is.

The slope is that of a stated edge, or the one at which the gate's turn-on current moves the
gate-drain charge; the current of the load can make it faster at turn-off of a small device.
First fixes: a larger turn-on resistor, a driver with a higher rating.  Integrated stages
have their own driver inside and are not judged.  The minor limit keeps a third in hand
because the rating is usually a characterised figure, not a tested one.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    derivation,
    from_memory,
)
from ..hazards import FIRST_POWER_UP


def figure(cmti: float, slew: float) -> float:
    """Slope that the driver withstands over the slope of the node."""
    return cmti / slew


CHECK = Check(
    title="Driver slope immunity vs. switch-node slope",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="cmti / slew",
    sentence="Driver immunity {cmti}; switch-node slope {slew} ({figure:%}).",
    inputs={
        "cmti": Input("gate_drive.cmti"),
        "slew": Input("slew"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtLeast(
        critical="100 %",
        minor="150 %",
        basis={
            "critical": derivation("rating of the driver"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("gate_drive.r_g_on", "E24", within=5.0),),
    sources=(
        derivation("slope of the node against the rating of the driver"),
        from_memory("data sheets of isolated gate drivers: 100 kV/us"),
    ),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {"cmti": "100 V/ns", "slew": "20 V/ns"},
            "500 %",
            "from memory: isolated driver of 100 kV/us, here on 100 V in 5 ns",
        ),
        Case(
            {"cmti": "50 V/ns", "slew": "20 V/ns"},
            "250 %",
            "from memory: a typical driver of 50 V/ns on 100 V in 5 ns",
        ),
    ),
    topic=("gate_drive",),
    asked_from="production",
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage: {topology: half-bridge, devices: discrete, t_edge: 3 ns}
    gate_drive: {cmti: 20 V/ns}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage: {topology: half-bridge, devices: discrete, t_edge: 10 ns}
    gate_drive: {cmti: 50 V/ns}
""",
)

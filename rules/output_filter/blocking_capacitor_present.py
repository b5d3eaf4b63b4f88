"""Capacitor between a half-bridge on a single supply and its load.

A half-bridge that works between one rail and ground rests at half the rail. A loudspeaker
straight behind the filter gets that voltage for as long as the amplifier is on: the cone sits
at its stop, the coil heats without any signal, and most of the swing is lost. It looks right
on the oscilloscope, whose input is coupled by a capacitor, and plays faintly for a while. The
other half of the same mistake, a loudspeaker between one terminal of a full bridge and
ground, ends alike.

The figure is the steady heat in the load, half of the highest rail squared over its direct
resistance. Any of it is a fault; above 15 W, where a fault can start a fire (class 1 of
IEC 62368-1), it is critical. Only a design that says it has no such capacitor is judged;
silence on it is asked for elsewhere. A capacitor ahead of each loudspeaker does the same duty, and
series-capacitor-voltage judges it with half the rail. Cure: an output capacitor for the bass
(blocking-capacitor-corner), a split supply, or a full bridge.
"""

from ...linter.check import AtMost, Case, Check, Input, derivation
from ..formulas.safety import SAFE_POWER
from ..hazards import COIL


def figure(v_swing: float, r_load_dc: float) -> float:
    """Heat of half the swing in the load."""
    return (v_swing / 2) ** 2 / r_load_dc


CHECK = Check(
    title="Output capacitor of a half-bridge on a single supply",
    figure=figure,
    unit="W",
    each="channel",
    stake="safety",
    formula="(v_swing / 2)^2 / r_load_dc",
    sentence="No output capacitor: {figure} of DC heat in the load ({r_load_dc}, half of"
    " {v_swing}).",
    inputs={
        "v_swing": Input("v_swing"),
        "r_load_dc": Input("r_load_dc"),
    },
    applies={
        "output_stage.topology": "half-bridge",
        "supply.rails": "single",
        "filter.c_block": "none",
        "loudspeaker.c_series": "none",
    },
    limits=AtMost(
        critical="15 W",
        major="0.1 W",
        basis={
            "critical": SAFE_POWER,
            "major": derivation("direct voltage on a load that is to get none"),
        },
    ),
    sources=(derivation("a node that rests at half the rail, Ohm's law"), SAFE_POWER),
    cautions=(COIL,),
    cases=(
        Case(
            {"v_swing": "24 V", "r_load_dc": "3.2 ohm"},
            gives="45 W",
            origin="computed: nodal solution of 12 V on 3.2 ohm",
        ),
        Case(
            {"v_swing": "12 V", "r_load_dc": "4 ohm"},
            gives="9 W",
            origin="derived: 6 V on 4 ohm draw 1.5 A",
        ),
    ),
    topic=("filter.c_block",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    output_stage: {topology: half-bridge}
    filter: {c_block: none}
    loudspeaker: {z_rated: 4 ohm, r_e: 3.2 ohm}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 2.5 V}
channels:
  main:
    output_stage: {topology: half-bridge}
    filter: {c_block: none}
    loudspeaker: {z_rated: 32 ohm, r_e: 30 ohm}
""",
)

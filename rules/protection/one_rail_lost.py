"""A split supply that loses one rail.

The fuse of one rail opens, or a lead comes off.  A half-bridge goes on switching with the
other rail alone: its output is pulled to that rail, and the loudspeaker carries direct
voltage although no part has failed.  Its heat is the rail squared over the coil resistance.

Any of three things prevents it: a detector of direct voltage, an under-voltage lockout that
watches both rails, or a link that drops the second rail with the first.  The check speaks
where a split supply has separate fuses and the spec states neither detector nor lockout.
The figure is that of dc-fault-power, the heat in ONE coil over its rating or 15 W, and so are the
limits: the coil burns just as with a shorted switch.  First fix: a lockout on both rails.
"""

from ...linter.check import AtMost, Case, Check, Input, derivation
from ..formulas.constants import BURNS_OUT, FIRE_POWER, FIRE_SPREADS
from ..formulas.safety import COIL_BASIS, IGNITION, SAFE_POWER, coil_hazard
from ..hazards import COIL, also


def figure(
    p_dc_fault: float,
    p_driver_noise: float,
    p_safe: float,
    p_spreads: float,
    times: float,
    guard: str,
) -> float:
    return coil_hazard(p_dc_fault, p_driver_noise, p_safe, p_spreads, times, guard)


SPLIT = """
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    output_stage: {topology: half-bridge, devices: discrete}
    loudspeaker: {z_rated: 4 ohm, r_e: 3.2 ohm, p_rated: 100 W, rating_method: aes2-1984}
protection: {dc_detector: none, under_voltage: none, fuse: {i_rated: 8 A}}
"""

CHECK = Check(
    title="Voice-coil power with one rail lost vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="coil_hazard(p_dc_fault, p_driver_noise, p_safe, p_spreads, times, guard)",
    sentence="One rail lost: the other puts {p_dc_fault} DC into each voice coil; limit: the"
    " greater of {p_driver_noise} (rating) and {p_safe}.",
    inputs={
        "p_dc_fault": Input("p_dc_fault"),
        "p_driver_noise": Input("p_driver_noise"),
        "p_safe": FIRE_POWER,
        "p_spreads": FIRE_SPREADS,
        "times": BURNS_OUT,
        "guard": Input("dc_fault_guard"),
    },
    applies={
        "supply.rails": "split",
        "output_stage.topology": "half-bridge",
        "line": "none",
        "protection.fuse": "fitted",
        "protection.dc_detector": "none",
        "protection.under_voltage": "none",
    },
    limits=AtMost(critical="5", major="1", basis=COIL_BASIS),
    sources=(
        derivation("a half-bridge between ground and one rail pulls to it"),
        SAFE_POWER,
        IGNITION,
    ),
    cautions=(also(COIL, "Switch off before you search for the fault."),),
    cases=(
        Case(
            {"p_dc_fault": "382.8 W", "p_driver_noise": "100 W", "guard": "none"},
            gives="19.14",
            origin="computed: nodal solution of one 35 V rail on 3.2 ohm, 3.83 times 100 W",
        ),
        Case(
            {"p_dc_fault": "14 W", "p_driver_noise": "5 W", "guard": "none"},
            gives="0.9333",
            origin="derived: 6.7 V on 3.2 ohm, over 15 W",
        ),
    ),
    topic=("protection.fuse", "protection.dc_detector"),
    fails=SPLIT,
    passes=SPLIT.replace("v_rail: 35 V", "v_rail: 6.5 V"),
)

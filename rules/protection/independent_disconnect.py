"""What a direct-voltage detector leaves in the voice coil when a switch is shorted.

Muting turns all switches off.  That ends a hung modulator, but a shorted switch stays on.  In a
half bridge the output then stays at its rail, and muting does nothing.  In a full bridge the
current needs the other leg: with both legs off it has no way back, so muting ends it, if the
detector looks at the output and the control of the other leg outlives the fault.  That of a
stage of discrete switches with drivers of their own mostly does, that of an integrated one may
die with the switch, on the same piece of silicon.  A detector that looks at the duty or at the
oscillation sees nothing of it.  A relay driven by the part that has just died is no better.

Only a disconnection that works with a shorted switch, a dead driver and a dead controller takes
the heat away for sure: a relay in the loudspeaker lead with its own detector, or a switch in the
supply.  It is common practice, no source, where more than 100 W feed the fault (class 3 of IEC
62368-1).  Below that a stage that sees direct voltage at its output and goes off, or a single-fault
test of the loudspeaker, is one safeguard, which `dc-fault-one-safeguard` tells.  What is stated not
to work with a shorted switch (`independent: no`) is none.

The figure is that of dc-fault-power: nothing if the detector disconnects the load or the supply
and is independent, otherwise all of the heat, which one safeguard covers up to 100 W (silence on
independence leaves all but muting open).  Above 1 is major, above 5 critical.  Where no rating is
stated the heat is held against 15 W, and what exceeds that is major.  First fix: a detector that
works apart and takes the supply away from both rails.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    derivation,
)
from ..formulas.constants import BURNS_OUT, FIRE_POWER, FIRE_SPREADS
from ..formulas.safety import COIL_BASIS, IGNITION, SAFE_POWER, coil_hazard
from ..hazards import COIL, also

CUTS = ("disconnect-load", "remove-supply")


def figure(
    p_dc_fault: float,
    p_driver_noise: float,
    p_safe: float,
    p_spreads: float,
    times: float,
    guard: str,
    action: str,
    independent: str,
) -> float:
    left = 0 * p_dc_fault if action in CUTS and independent == "yes" else p_dc_fault
    return coil_hazard(left, p_driver_noise, p_safe, p_spreads, times, guard)


MUTING = """
supply: {source: dc-source, rails: split, v_rail: 35 V}
channels:
  main:
    output_stage: {topology: half-bridge, devices: discrete}
    loudspeaker: {z_rated: 4 ohm, r_e: 3.2 ohm, p_rated: 100 W, rating_method: aes2-1984}
protection: {dc_detector: {v_trip: 4 V, action: mute}}
"""

CHECK = Check(
    title="DC fault disconnect vs. shorted switch",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="0 if action disconnects load or supply and independent is yes, else"
    " coil_hazard(p_dc_fault, p_driver_noise, p_safe, p_spreads, times, guard)",
    sentence="A shorted switch puts {p_dc_fault} DC into each voice coil (rated {p_driver_noise});"
    " detector action: {action:words}; independent of the stage: {independent}.",
    inputs={
        "p_dc_fault": Input("p_dc_fault"),
        "p_driver_noise": Input(
            "p_driver_noise", default=Assumption("15 W", "adverse", SAFE_POWER)
        ),
        "p_safe": FIRE_POWER,
        "p_spreads": FIRE_SPREADS,
        "times": BURNS_OUT,
        "guard": Input("dc_fault_guard"),
        "action": Input("protection.dc_detector.action"),
        "independent": Input("detector_independent"),
    },
    applies={"dc_reaches_load": "yes", "line": "none", "protection.dc_detector": "fitted"},
    limits=AtMost(critical="5", major="1", basis=COIL_BASIS),
    sources=(
        derivation("switches that are turned off do not open one that is shorted"),
        SAFE_POWER,
        IGNITION,
        COMMON_PRACTICE,
    ),
    cautions=(also(COIL, "Muting does not protect it for sure from a shorted switch."),),
    cases=(
        Case(
            {
                "p_dc_fault": "382.8 W",
                "p_driver_noise": "100 W",
                "guard": "none",
                "action": "mute",
                "independent": "no",
            },
            gives="19.14",
            origin="computed: nodal solution of 35 V on 3.2 ohm; turned-off switches stay shorted",
        ),
        Case(
            {
                "p_dc_fault": "55.8 W",
                "p_driver_noise": "15 W",
                "guard": "detection",
                "action": "mute",
                "independent": "no",
            },
            gives="0.558",
            origin="computed: nodal solution of 18.9 V on 6.4 ohm; one safeguard up to 100 W",
        ),
        Case(
            {
                "p_dc_fault": "382.8 W",
                "p_driver_noise": "100 W",
                "guard": "detection",
                "action": "remove-supply",
                "independent": "yes",
            },
            gives="0",
            origin="derived: without a supply no current flows",
        ),
    ),
    topic=("protection.dc_detector",),
    fails=MUTING,
    passes=MUTING.replace("action: mute", "action: remove-supply, independent: yes"),
)

"""What a direct-voltage detector leaves in the voice coil when a switch is shorted.

Muting turns all switches off.  That ends a hung modulator, but a shorted switch stays on
and the output stays at its rail.  The same holds for a relay that is driven by the part
that has just died.  Only a disconnection that works with a shorted switch, a dead driver
and a dead controller takes the heat away: a relay in the loudspeaker lead with its own
detector, or a switch in the supply.

The figure is the heat left in ONE voice coil after such a fault, over its rating, or over
15 W where the rating is less, as in dc-fault-power: nothing if the detector disconnects the
load or the supply and is independent, otherwise all of it (muting is told from its action
alone; silence on independence leaves the others open).  The coil burns as it does without any
detector, so the limit is the same: above 1 is critical.  Where no rating is stated the heat
is held against 15 W, and what exceeds that is major.  First fix: a detector that works
apart and takes the supply away from both rails.
"""

from ...linter.check import (
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    derivation,
)
from ..formulas.constants import FIRE_POWER
from ..formulas.maths import larger
from ..formulas.safety import SAFE_POWER
from ..hazards import COIL, also

CUTS = ("disconnect-load", "remove-supply")


def figure(
    p_dc_fault: float, p_driver_noise: float, p_safe: float, action: str, independent: str
) -> float:
    left = 0 * p_dc_fault if action in CUTS and independent == "yes" else p_dc_fault
    return left / larger(p_driver_noise, p_safe)


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
    formula="0 if action disconnects load or supply and independent is yes, else p_dc_fault /"
    " larger of p_driver_noise and p_safe",
    sentence="A shorted switch puts {p_dc_fault} DC into each voice coil (rated {p_driver_noise});"
    " detector action: {action:words}; independent of the stage: {independent}.",
    inputs={
        "p_dc_fault": Input("p_dc_fault"),
        "p_driver_noise": Input(
            "p_driver_noise", default=Assumption("15 W", "adverse", SAFE_POWER)
        ),
        "p_safe": FIRE_POWER,
        "action": Input("protection.dc_detector.action"),
        "independent": Input("detector_independent"),
    },
    applies={"dc_reaches_load": "yes", "line": "none", "protection.dc_detector": "fitted"},
    limits=AtMost(critical="1", basis={"critical": SAFE_POWER}),
    sources=(
        derivation("switches that are turned off do not open one that is shorted"),
        SAFE_POWER,
    ),
    cautions=(also(COIL, "Muting does not protect it from a shorted switch."),),
    cases=(
        Case(
            {
                "p_dc_fault": "382.8 W",
                "p_driver_noise": "100 W",
                "action": "mute",
                "independent": "no",
            },
            gives="3.828",
            origin="computed: nodal solution of 35 V on 3.2 ohm; turned-off switches stay shorted",
        ),
        Case(
            {
                "p_dc_fault": "382.8 W",
                "p_driver_noise": "100 W",
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

"""Direct voltage in the voice coil after a fault that nothing detects.

When a switch of a bridge or of a split-supply stage fails, it fails as a short, and the
output sits at its rail.  The voice coil is a resistance then: it takes the rail squared
over its direct resistance, moves to its stop, and burns without any sound.  The same
happens when a driver hangs.  A single-supply half-bridge is spared by its series capacitor,
until that is shorted; a loudspeaker with a capacitor of its own is spared as well.  Where no
loudspeaker belongs to the product (`loudspeaker: none`, a module measured on resistors) the
rated load is taken for it, with the rating that `loudspeaker_rating` asks of what gets
connected, or twice the rated power at best: the module burns the coil of whoever connects one.

The figure is that heat in ONE coil over its rating, or over 15 W where the rating is less:
up to 15 W a fault may burn for good without starting a fire (class 1 of IEC 62368-1).  Leads
and source are left out, so the heat is an upper bound, a few percent high.  Above 1 without
any detector is critical.  With a detector the question is what it does: another check.

First fix: a detector that takes the supply away, or a relay in the loudspeaker lead.
"""

from ...linter.check import AtMost, Case, Check, Input, Source, derivation
from ..formulas.constants import FIRE_POWER
from ..formulas.maths import larger
from ..formulas.safety import SAFE_POWER
from ..hazards import COIL, also

SPLIT = Source(
    "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
    "p. 4, table 1: two rails of 35 V; p. 25: direct voltage detected at 4 V",
)


def figure(p_dc_fault: float, p_driver_noise: float, p_safe: float) -> float:
    return p_dc_fault / larger(p_driver_noise, p_safe)


BRIDGE = """
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    output_stage: {topology: full-bridge, devices: integrated}
    loudspeaker: {z_rated: 4 ohm, r_e: 3.2 ohm, p_rated: 60 W, rating_method: aes2-1984}
protection: {dc_detector: none}
"""

CHECK = Check(
    title="DC fault power in the voice coil vs. rating, no detector",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="p_dc_fault / larger of p_driver_noise and p_safe",
    sentence="A shorted switch puts {p_dc_fault} DC into each voice coil, undetected; limit: the"
    " greater of {p_driver_noise} (rating) and {p_safe}.",
    inputs={
        "p_dc_fault": Input("p_dc_fault"),
        "p_driver_noise": Input("p_driver_noise"),
        "p_safe": FIRE_POWER,
    },
    applies={"dc_reaches_load": "yes", "line": "none", "protection.dc_detector": "none"},
    limits=AtMost(
        critical="1",
        basis={"critical": derivation("more than its rating, as steady heat without cooling")},
    ),
    sources=(
        derivation("one switch shorted: the output sits at its rail"),
        SAFE_POWER,
        SPLIT,
    ),
    cautions=(also(COIL, "A fuse does not protect it."),),
    cases=(
        Case(
            {"p_dc_fault": "198.45 W", "p_driver_noise": "60 W"},
            gives="3.3075",
            origin="computed: nodal solution of 25.2 V on 3.2 ohm, 60 W loudspeaker",
        ),
        Case(
            {"p_dc_fault": "7.8125 W", "p_driver_noise": "5 W"},
            gives="0.520833",
            origin="derived: 5 V on 3.2 ohm stay below 15 W",
        ),
    ),
    topic=("protection.dc_detector",),
    asked_from="prototype",
    fails=BRIDGE,
    passes=BRIDGE.replace("v_rail: 24 V", "v_rail: 5 V"),
)

"""Direct voltage in the voice coil after a fault that nothing detects.

When a switch of a bridge or of a split-supply stage fails, it fails as a short, and the
output sits at its rail.  The voice coil is a resistance then: it takes the rail squared
over its direct resistance, moves to its stop, and burns without any sound.  The same
happens when a driver hangs.  A single-supply half-bridge is spared by its series capacitor,
until that is shorted; a loudspeaker with a capacitor of its own is spared as well.  Where no
loudspeaker belongs to the product (`loudspeaker: none`, a module measured on resistors) the
rated load is taken for it, with the rating that `loudspeaker_rating` asks of what gets
connected, or twice the rated power at best: the module burns the coil of whoever connects one.

In a full bridge the shorted leg is only one side: the coil is heated as long as the OTHER leg
conducts, with the whole rail where the loop drives it to its end, as counted here, and with half
of it where it goes on switching about the middle.

The heat in ONE coil is no more than the source gives for good: a converter that limits
(`supply.self_limiting`, with p_max or i_max), a fuse at the current that is sure to open it, a
pack at its trip.  Leads are left out, so that it is a few percent high.

Up to 15 W a fault may burn for good without starting a fire (class 1 of IEC 62368-1), and so may
what the coil is rated for.  Beyond that the coil is lost: the figure is above 1, major.  It is
more than 5, critical, where the heat is above 100 W and above the rating, since a fire then
starts at once and spreads (class 3), or above five times the rating: a coil that its rating heats
by 200 K gets 400 K hotter at least, beyond any enamel, although copper then has 2.5 times its
resistance.
With a detector, or with a single-fault test that is stated, another check asks.

First fix: a detector that takes the supply away, or a relay in the loudspeaker lead; below 100 W
a detector in the stage, or a test of the loudspeaker on this fault.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Source, derivation
from ..formulas.constants import BURNS_OUT, FIRE_POWER, FIRE_SPREADS
from ..formulas.safety import COIL_BASIS, IGNITION, SAFE_POWER, coil_hazard
from ..hazards import COIL, also

SPLIT = Source(
    "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
    "p. 4, table 1: two rails of 35 V; p. 25: direct voltage detected at 4 V",
)


def figure(
    p_dc_fault: float,
    p_driver_noise: float,
    p_safe: float,
    p_spreads: float,
    times: float,
    guard: str,
) -> float:
    return coil_hazard(p_dc_fault, p_driver_noise, p_safe, p_spreads, times, guard)


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
    formula="coil_hazard(p_dc_fault, p_driver_noise, p_safe, p_spreads, times, guard): heat over"
    " the greater of rating and p_safe; beyond 5 above p_spreads or times the rating",
    sentence="A shorted switch puts {p_dc_fault} DC into each voice coil (rated {p_driver_noise}),"
    " undetected; safeguard: {guard:words}.",
    inputs={
        "p_dc_fault": Input("p_dc_fault"),
        "p_driver_noise": Input("p_driver_noise"),
        "p_safe": FIRE_POWER,
        "p_spreads": FIRE_SPREADS,
        "times": BURNS_OUT,
        "guard": Input("dc_fault_guard"),
    },
    applies={"dc_reaches_load": "yes", "line": "none", "protection.dc_detector": "none"},
    limits=AtMost(critical="5", major="1", basis=COIL_BASIS),
    sources=(
        derivation("one switch shorted: the output sits at its rail"),
        SAFE_POWER,
        IGNITION,
        COMMON_PRACTICE,
        SPLIT,
    ),
    cautions=(also(COIL, "A fuse does not protect it."),),
    cases=(
        Case(
            {"p_dc_fault": "198.45 W", "p_driver_noise": "60 W", "guard": "none"},
            gives="9.9225",
            origin="computed: nodal solution of 25.2 V on 3.2 ohm; 5 times 1.98, over 100 W",
        ),
        Case(
            {"p_dc_fault": "24.8 W", "p_driver_noise": "10 W", "guard": "none"},
            gives="1.65333",
            origin="computed: nodal solution of 12.6 V on 6.4 ohm, over 15 W",
        ),
        Case(
            {"p_dc_fault": "99.2 W", "p_driver_noise": "10 W", "guard": "single-fault-test"},
            gives="0.992",
            origin="derived: a loudspeaker that was tested bears what does not spread a fire",
        ),
        Case(
            {"p_dc_fault": "7.8125 W", "p_driver_noise": "5 W", "guard": "none"},
            gives="0.520833",
            origin="derived: 5 V on 3.2 ohm stay below 15 W",
        ),
    ),
    topic=("protection.dc_detector",),
    asked_from="prototype",
    fails=BRIDGE,
    passes=BRIDGE.replace("v_rail: 24 V", "v_rail: 5 V"),
)

"""A shorted switch with one safeguard between its direct voltage and the voice coil.

Most televisions, soundbars and portable loudspeakers have no second disconnect. A full bridge
that sees direct voltage at its output and turns both legs off ends the current, as long as the
control of the other leg outlives the fault, which that of an integrated stage may not and
`protection.dc_detector.independent` has to state. Or the loudspeaker was run on this fault, and
nothing burned (`safety.dc_fault_test`): a single-fault test, which holds for the loudspeaker that
was tested. That one safeguard does below 100 W is common practice, no source.

The figure is the heat in ONE coil over the greater of its rating and 15 W, as in dc-fault-power.
Above 1 the product works, and leans on one safeguard: minor, so that the reader sees which one
the spec states. Above 100 W one is not enough: independent-disconnect and dc-fault-power say so.
It does not apply where a detector of its own cuts off load or supply. First fix: keep the test
report with the design, or add a disconnect that works apart.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, derivation
from ..formulas.constants import FIRE_POWER
from ..formulas.maths import larger
from ..formulas.safety import SAFE_POWER
from ..hazards import COIL, also


def figure(p_dc_fault: float, p_driver_noise: float, p_safe: float, guard: str) -> float:
    return p_dc_fault / larger(p_driver_noise, p_safe)


BRIDGE = """
supply: {source: dc-source, rails: single, v_rail: 12 V}
channels:
  main:
    output_stage: {topology: full-bridge, devices: integrated}
    loudspeaker: {z_rated: 8 ohm, r_e: 6.4 ohm, p_rated: 10 W, rating_method: aes2-1984}
protection: {dc_detector: {senses: filtered-output, action: mute, independent: yes}}
"""

CHECK = Check(
    title="DC fault power in the voice coil vs. rating, one safeguard",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="p_dc_fault / larger of p_driver_noise and p_safe; stated against it: guard",
    sentence="A shorted switch puts {p_dc_fault} DC into each voice coil (rated {p_driver_noise});"
    " one safeguard: {guard:words}.",
    inputs={
        "p_dc_fault": Input("p_dc_fault"),
        "p_driver_noise": Input("p_driver_noise"),
        "p_safe": FIRE_POWER,
        "guard": Input("dc_fault_guard"),
    },
    applies={
        "dc_reaches_load": "yes",
        "line": "none",
        "dc_one_safeguard": "yes",
    },
    limits=AtMost(minor="1", basis={"minor": SAFE_POWER}),
    sources=(
        derivation("with both legs off a shorted switch of a bridge has no way back"),
        SAFE_POWER,
        COMMON_PRACTICE,
    ),
    cautions=(also(COIL, "One safeguard may fail with the stage."),),
    cases=(
        Case(
            {"p_dc_fault": "24.806 W", "p_driver_noise": "10 W", "guard": "detection"},
            gives="1.65375",
            origin="computed: nodal solution of 12.6 V on 6.4 ohm, over 15 W",
        ),
        Case(
            {"p_dc_fault": "24.806 W", "p_driver_noise": "30 W", "guard": "single-fault-test"},
            gives="0.826875",
            origin="derived: less than the coil is rated for",
        ),
    ),
    topic=("protection.dc_detector",),
    fails=BRIDGE,
    passes=BRIDGE.replace("v_rail: 12 V", "v_rail: 5 V"),
)

"""Direct voltage in a voice coil where the output capacitor is missing, against its rating.

A half-bridge on a single supply rests at half the rail. Without an output capacitor each coil
carries its share of that for as long as the amplifier is on, without any fault and without any
signal. blocking-capacitor-present finds the missing capacitor and is critical where the heat can
start a fire, above 15 W. A small loudspeaker burns at less: more than its own rating, as heat
that never ends, in a coil that does not move and so does not cool, destroys it at every use.

The figure is the heat in ONE coil, half of the highest rail over its direct resistance, over the
rating as a noise rating. It differs from dc-fault-power, where up to 15 W is the accepted end of
a loudspeaker after a fault: here nothing has failed. A capacitor ahead of the loudspeaker or a
piezo transducer keeps the direct current out. First fix: an output capacitor for the bass
(blocking-capacitor-corner), or a full bridge.
"""

from ...linter.check import AtMost, Case, Check, Input, derivation
from ..derived.load import SERIES
from ..hazards import COIL


def figure(v_swing: float, series: float, r_e: float, p_driver_noise: float) -> float:
    """Heat of half the swing in one coil over its rating."""
    return (v_swing / 2 / series) ** 2 / r_e / p_driver_noise


SMALL = """
supply: {source: dc-source, rails: single, v_rail: 12 V}
channels:
  main:
    output_stage: {topology: half-bridge}
    filter: {c_block: none}
    loudspeaker: {z_rated: 6 ohm, r_e: 5 ohm, p_rated: RATING, rating_method: aes2-1984}
"""

CHECK = Check(
    title="DC power in the voice coil vs. rating, no output capacitor",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="(v_swing / (2 series))^2 / r_e / p_driver_noise",
    sentence="No output capacitor: {p_driver_noise:*figure} DC in each voice coil without a"
    " signal; rated {p_driver_noise} ({figure:%}).",
    inputs={
        "v_swing": Input("v_swing"),
        "series": SERIES,
        "r_e": Input("r_e"),
        "p_driver_noise": Input("p_driver_noise"),
    },
    applies={
        "output_stage.topology": "half-bridge",
        "supply.rails": "single",
        "filter.c_block": "none",
        "loudspeaker.c_series": "none",
        "loudspeaker.piezo": "none",
        "line": "none",
    },
    limits=AtMost(
        critical="1",
        basis={"critical": derivation("more than its rating, as steady heat without cooling")},
    ),
    sources=(derivation("a node that rests at half the rail, Ohm's law"),),
    cautions=(COIL,),
    cases=(
        Case(
            {"v_swing": "12 V", "series": "1", "r_e": "5 ohm", "p_driver_noise": "6 W"},
            gives="1.2",
            origin="computed: nodal solution of 6 V on 5 ohm, 7.2 W",
        ),
        Case(
            {"v_swing": "24 V", "series": "2", "r_e": "3.2 ohm", "p_driver_noise": "15 W"},
            gives="0.75",
            origin="computed: nodal solution of 12 V on two coils in series, 6 V each",
        ),
    ),
    topic=("filter.c_block",),
    fails=SMALL.replace("RATING", "6 W"),
    passes=SMALL.replace("RATING", "10 W"),
)

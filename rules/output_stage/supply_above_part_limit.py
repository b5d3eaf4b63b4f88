"""Supply of an integrated stage against its absolute maximum.

An integrated power stage has one rating from supply pin to ground pin (or to the negative
supply).  It must hold for the highest rail: full battery, upper tolerance of the converter,
and what a half-bridge pumps back.

Beyond the absolute maximum the part may fail at once, and it fails with the supply across
the output.  Ringing at the pins comes on top and is judged by pin-overshoot; the
recommended range, which the data sheet's figures are guaranteed for, by
supply-above-recommended.  An over-voltage shutdown inside the part stops pumping but does
not shield the part from its supply.  First fixes: a lower rail, a part with a higher
rating, a clamp that holds below the rating at the surge current.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from ..hazards import FIRST_POWER_UP

RATING = derivation("absolute maximum rating of the part")


def figure(v_static_peak: float, v_supply_abs: float) -> float:
    """Highest supply, pin to pin, over the absolute maximum."""
    return v_static_peak / v_supply_abs


CHECK = Check(
    title="Supply voltage vs. absolute maximum of the part",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="v_static_peak / v_supply_abs",
    sentence="The part sees up to {v_static_peak}; absolute maximum {v_supply_abs} ({figure:%}).",
    inputs={
        "v_static_peak": Input("v_static_peak", meaning="supply pin to pin, with pumping"),
        "v_supply_abs": Input("output_stage.device.v_supply_abs"),
    },
    applies={"output_stage.devices": "integrated"},
    limits=AtMost(critical="100 %", basis={"critical": RATING}),
    levers=(
        Lever("supply.v_rail", "0.5 V"),
        Lever("battery.series", "1", when={"rail_feed": "pack"}),
        Lever("supply.bulk.c", "E6"),
    ),
    sources=(RATING, derivation("the leg of the part spans both supply pins")),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {"v_static_peak": "30 V", "v_supply_abs": "37 V"},
            "81.08 %",
            "published: TPA3221 data sheet SLASEE9B, figures given at 30 V, maximum 37 V",
        ),
        Case(
            {"v_static_peak": "55 V", "v_supply_abs": "69 V"},
            "79.71 %",
            "published: e2e.ti.com thread 1440241, peaks of 55 V on a part with 69 V maximum",
        ),
    ),
    topic=("output_stage.device",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 38 V, sinks_current: yes}
channels:
  main:
    output_stage: {topology: full-bridge, devices: integrated, device: {v_supply_abs: 37 V}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 30 V, sinks_current: yes}
channels:
  main:
    output_stage: {topology: full-bridge, devices: integrated, device: {v_supply_abs: 37 V}}
""",
)

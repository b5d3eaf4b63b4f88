"""Supply of an integrated stage against the bottom of its recommended range.

A battery that sags towards its end, or a source with a low tolerance, may take the part
below the range in which it works.  It then mutes, pops or restarts, often in step with the
bass, long before the battery is used up.

The figure compares the lowest idle rail, pin to pin, with the bottom of the range.  Sag
under load is not in it; the checks of the supply look at that.  First fixes: more cells in
series, a step-up converter, a part with a lower range, a higher cut-off of the battery so
that the product stops cleanly.  One limit: the bottom of the range, with a minor one 5 %
above it as room for sag and leads.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation


def figure(v_rail_low: float, rails: str, v_supply_low: float) -> float:
    """Lowest supply, pin to pin, over the bottom of the recommended range."""
    return (2 if rails == "split" else 1) * v_rail_low / v_supply_low


RANGE = derivation("lower end of the recommended range of the part")

CHECK = Check(
    title="Lowest supply vs. minimum supply of the part",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="v_rail_low (twice that where rails are split) / v_supply_low",
    sentence="Lowest supply {v_supply_low:*figure}; the part needs {v_supply_low} ({figure:%}).",
    inputs={
        "v_rail_low": Input("v_rail_low"),
        "rails": Input("supply.rails"),
        "v_supply_low": Input(
            "output_stage.device.v_supply:low", meaning="lowest recommended supply of the part"
        ),
    },
    applies={"output_stage.devices": "integrated"},
    limits=AtLeast(major="100 %", minor="105 %", basis={"major": RANGE, "minor": COMMON_PRACTICE}),
    levers=(
        Lever("supply.v_rail", "0.5 V"),
        Lever("battery.series", "1", when={"rail_feed": "pack"}),
    ),
    sources=(RANGE,),
    cases=(
        Case(
            {"v_rail_low": "8 V", "rails": "single", "v_supply_low": "7 V"},
            "114.3 %",
            "published: TPA3221 data sheet SLASEE9B, p. 6: range from 7 V; 8 V assumed",
        ),
        Case(
            {"v_rail_low": "5 V", "rails": "split", "v_supply_low": "12 V"},
            "83.33 %",
            "derived: two rails of 5 V are 10 V from pin to pin",
        ),
    ),
    topic=("output_stage.device.v_supply",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 6.4 V .. 8.4 V}
channels:
  main:
    output_stage: {topology: full-bridge, devices: integrated, device: {v_supply: 7 V .. 32 V}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 10 V .. 12.6 V}
channels:
  main:
    output_stage: {topology: full-bridge, devices: integrated, device: {v_supply: 7 V .. 32 V}}
""",
)

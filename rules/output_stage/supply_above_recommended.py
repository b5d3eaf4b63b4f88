"""Supply of an integrated stage against the top of its recommended range.

Up to the top of the recommended range the maker guarantees the figures of the data sheet,
protection included; above it only survival, up to the absolute maximum.  In one published
case two of about 1500 units burned on a rail of 52 V that peaked at 55 V, the part recommended
to 53.5 V; the cause was not yet known.

The rail is taken at its highest: full battery, upper tolerance, pumping.  A designer may
and does use the range to its end, so the minor limit is only 3 % below it: a 30 V rail on a
part recommended to 32 V is the headline use of that part.  First fixes: a lower rail, a
tighter converter, more rail capacitance where pumping makes the peak.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation

THREAD = Source("e2e.ti.com thread 1440241", "55 V peaks on a part recommended to 53.5 V")
STATED = derivation("the recommended maximum that the part's data sheet states is the limit itself")


def figure(v_static_peak: float, v_supply_high: float) -> float:
    """Highest supply, pin to pin, over the top of the recommended range."""
    return v_static_peak / v_supply_high


CHECK = Check(
    title="Supply voltage vs. recommended maximum of the part",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="v_static_peak / v_supply_high",
    sentence="The part sees up to {v_static_peak}; recommended maximum {v_supply_high}"
    " ({figure:%}).",
    inputs={
        "v_static_peak": Input("v_static_peak", meaning="supply pin to pin, with pumping"),
        "v_supply_high": Input(
            "output_stage.device.v_supply:high", meaning="highest recommended supply of the part"
        ),
    },
    applies={"output_stage.devices": "integrated"},
    limits=AtMost(major="100 %", minor="97 %", basis={"major": STATED, "minor": COMMON_PRACTICE}),
    levers=(
        Lever("supply.v_rail", "0.5 V"),
        Lever("battery.series", "1", when={"rail_feed": "pack"}),
        Lever("supply.bulk.c", "E6"),
    ),
    sources=(THREAD, derivation("the leg of the part spans both supply pins")),
    cases=(
        Case(
            {"v_static_peak": "55 V", "v_supply_high": "53.5 V"},
            "102.8 %",
            "published: e2e.ti.com thread 1440241, 55 V and 53.5 V; ratio by hand",
        ),
        Case(
            {"v_static_peak": "30 V", "v_supply_high": "32 V"},
            "93.75 %",
            "published: TPA3221 data sheet SLASEE9B, headline use at 30 V",
        ),
    ),
    topic=("output_stage.device",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 52 V .. 55 V, sinks_current: yes}
channels:
  main:
    output_stage:
      topology: full-bridge
      devices: integrated
      device: {v_supply: 18 V .. 53.5 V}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 30 V, sinks_current: yes}
channels:
  main:
    output_stage: {topology: full-bridge, devices: integrated, device: {v_supply: 7 V .. 32 V}}
""",
)

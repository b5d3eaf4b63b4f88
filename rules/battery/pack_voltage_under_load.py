"""Pack voltage at the bass crest against the amplifier's under-voltage lockout.

The pack is the rail here. At low charge, with aged and cold cells, the crest of a loud bass
note pulls it down through its own resistance, its protection and its leads. When the
voltage touches the lockout the amplifier mutes: the product dies on the kick drum at a
charge that the display calls a third.

All channels at rated power, in phase, at the lowest note of the band: the bulk capacitors
do not carry that crest (4.4 mF at 40 Hz are an ohm). The lockout counts at the top of its
tolerance. Below it is major; less than 5 % above it minor (common practice, no source).
Longer loads sag further by polarisation, which is not counted.

Cure: lower resistance, a higher cut-off charge, a limiter that lowers the level with the
pack, or the lockout.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation
from ..formulas.supply import BRIDGE_CURRENT, CONSTANT_POWER


def figure(v_loaded: float, v_trip: float) -> float:
    return v_loaded / v_trip


CHECK = Check(
    title="Pack voltage under load vs. undervoltage lockout",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="v_loaded / v_trip",
    sentence="Bass peaks pull a low pack down to {v_loaded}; undervoltage lockout {v_trip}"
    " ({figure:%}).",
    inputs={
        "v_loaded": Input("v_source_loaded"),
        "v_trip": Input("protection.under_voltage.v_trip"),
    },
    applies={"rail_feed": "pack"},
    limits=AtLeast(
        major="1",
        minor="1.05",
        basis={
            "major": derivation("below the lockout the amplifier switches off"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("battery.parallel", "1", within=3),
        Lever("protection.under_voltage.v_trip", "0.5 V"),
    ),
    sources=(CONSTANT_POWER, BRIDGE_CURRENT),
    cases=(
        Case(
            {"v_loaded": "19.27 V", "v_trip": "17 V"},
            gives="1.133529",
            origin="computed: 20.4 V, 0.12 ohm, 181.8 W by root finding, 19.27 V",
        ),
        Case(
            {"v_loaded": "16.50 V", "v_trip": "17 V"},
            gives="0.970588",
            origin="computed: 20.4 V, 0.36 ohm, 178.8 W by root finding, 16.50 V",
        ),
    ),
    topic=("protection.under_voltage",),
    asked_from="prototype",
    fails="""
supply: {source: battery, rails: single}
battery:
  chemistry: li-ion
  series: 6
  parallel: 2
  cell: {v_oc_low: 3.4 V, r_internal: 28 mohm .. 110 mohm}
channels:
  main: {rated_power: 80 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
protection: {under_voltage: {v_trip: 17 V}}
""",
    passes="""
supply: {source: battery, rails: single}
battery:
  chemistry: li-ion
  series: 6
  parallel: 2
  cell: {v_oc_low: 3.4 V, r_internal: 28 mohm .. 40 mohm}
channels:
  main: {rated_power: 80 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
protection: {under_voltage: {v_trip: 17 V}}
""",
)

"""Corner of the capacitor in series with the load.

A half-bridge on a single supply rests at half the rail; a large capacitor keeps that
direct voltage from the loudspeaker and makes a high-pass with it. At its corner the bass
is 3 dB down. 470 uF and 4 ohm make 85 Hz, which suits a small loudspeaker and no other.
The lowest rated load counts. Half an octave of slack is left before the fault is called
one of function. A band that nobody claims is no yardstick for that: where it is not
given, blocking-capacitor-corner-unclaimed answers instead. The capacitor also holds the step at
switch-on and must carry the load current; both have checks of their own. Cure: a larger
capacitor, or a full bridge, which needs none and gives four times the power from the same
rail.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.capacitor import high_pass_corner


def figure(load_low: float, c_block: float, band_low: float) -> float:
    """Corner over the lowest audio frequency."""
    return high_pass_corner(load_low, c_block) / band_low


ONE_LEG_ONE_RAIL = {"output_stage.topology": "half-bridge", "supply.rails": "single"}
PUBLISHED = (
    Case(
        {"load_low": "4 ohm", "c_block": "680 uF", "band_low": "58 Hz"},
        gives="1.0",
        origin="published: CS4525 data sheet table 19, 58 Hz",
        tolerance=0.02,
    ),
    Case(
        {"load_low": "8 ohm", "c_block": "470 uF", "band_low": "42 Hz"},
        gives="1.0",
        origin="published: CS4525 data sheet table 19, 42 Hz",
        tolerance=0.02,
    ),
)
INPUTS = {
    "load_low": Input("load_low"),
    "c_block": Input("filter.c_block.c"),
    "band_low": Input("band_low"),
}
TABLE_19 = Source("CS4525 data sheet DS726PP1", "table 19, p. 59")
DOWN_3_DB = derivation("3 dB down at the low end of the band")
FORMULA = "1 / (2 pi load_low c_block) / band_low"

CHECK = Check(
    title="Output capacitor corner vs. low band edge",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula=FORMULA,
    sentence="Output capacitor corner {band_low:*figure} ({c_block}, {load_low}); low band edge"
    " {band_low} ({figure:%}).",
    inputs=INPUTS,
    applies={**ONE_LEG_ONE_RAIL, "band_claimed": "yes"},
    limits=AtMost(
        major="1.5",
        minor="1",
        basis={
            "major": COMMON_PRACTICE,
            "minor": DOWN_3_DB,
        },
    ),
    levers=(Lever("filter.c_block.c", "E6"),),
    sources=(TABLE_19,),
    cases=PUBLISHED,
    topic=("filter.c_block.c",),
    asked_from="prototype",
    fails="""
supply: {rails: single}
channels:
  main:
    band: 40 Hz .. 20 kHz
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {c_block: {c: 470 uF}}
""",
    passes="""
supply: {rails: single}
channels:
  main:
    band: 40 Hz .. 20 kHz
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {c_block: {c: 2.2 mF}}
""",
)

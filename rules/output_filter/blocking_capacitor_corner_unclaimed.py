"""Corner of the capacitor in series with the load, where no audio band is claimed.

Nobody claims 20 Hz by saying nothing: 470 uF and 4 ohm make 85 Hz in makers' own circuits,
right for a small loudspeaker. So a corner above the usual 20 Hz is a minor that asks for
the band; with the band stated, blocking-capacitor-corner answers and may well be content.
A corner above 300 Hz is major all the same: what has no bass and no lower middle at all is
not sold without a word on it. Cure: state the band that the product is made for, or a
larger capacitor.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Check, Lever
from .blocking_capacitor_corner import (
    DOWN_3_DB,
    FORMULA,
    INPUTS,
    ONE_LEG_ONE_RAIL,
    PUBLISHED,
    TABLE_19,
    figure,
)

CHECK = Check(
    title="Output capacitor corner vs. usual band edge, no band claimed",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula=FORMULA,
    sentence="Output capacitor corner {band_low:*figure} ({c_block}, {load_low}); no band claimed,"
    " usual low edge {band_low}.",
    inputs=INPUTS,
    applies={**ONE_LEG_ONE_RAIL, "band_claimed": "no"},
    limits=AtMost(
        major="15",
        minor="1",
        basis={"major": COMMON_PRACTICE, "minor": DOWN_3_DB},
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
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {c_block: {c: 470 uF}}
""",
    passes="""
supply: {rails: single}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {c_block: {c: 4.7 mF}}
""",
)

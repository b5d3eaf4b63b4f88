"""The pack's over-current trip above the music.

A protection circuit is mostly chosen from the cells' data. If its lowest trip lies below
what the amplifier draws at the crest of a bass note, the product switches itself off on
loud music, and comes back only with the charger. The crest lasts a part of half a period:
a trip delay longer than that period rides it out, and then the rms current is what the trip
must carry. With a shorter or an unknown delay the crest itself counts.

All channels at rated power and a low, aged pack. Below 1 is major, below 1.1 minor
(common practice, no source). Clipped music draws up to a third more than the sine.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..formulas.maths import choose
from ..formulas.supply import BRIDGE_CURRENT, CONSTANT_POWER, lowest

AT_ONCE = Assumption("0 s", "adverse", derivation("bound: the trip acts at once"))


def figure(
    i_trip: float, t_trip: float, i_peak: float, i_rms: float, f: tuple[float, ...]
) -> float:
    return i_trip / choose(2 * t_trip * lowest(f) > 1, i_rms, i_peak)


CHECK = Check(
    title="Pack over-current trip vs. music current",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="i_trip / i_peak, or / i_rms if t_trip is longer than half a period of f",
    sentence="The pack trips at {i_trip} after {t_trip}; music draws {i_peak} peak, {i_rms} rms"
    " ({figure:%}).",
    inputs={
        "i_trip": Input("battery.protection.i_trip"),
        "t_trip": Input("battery.protection.t_trip", default=AT_ONCE),
        "i_peak": Input("i_source_peak"),
        "i_rms": Input("i_source_rms"),
        "f": Input("all band_low"),
    },
    applies={"supply.source": "battery"},
    limits=AtLeast(
        major="1",
        minor="1.1",
        basis={
            "major": derivation("the trip acts on music within the rating"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("battery.protection.i_trip", "1 A"), Lever("battery.parallel", "1", within=3)),
    sources=(CONSTANT_POWER, BRIDGE_CURRENT),
    cases=(
        Case(
            {
                "i_trip": "8 A",
                "t_trip": "5 ms",
                "i_peak": "9.436 A",
                "i_rms": "5.722 A",
                "f": ("40 Hz",),
            },
            gives="0.847817",
            origin="computed: time simulation at 40 Hz, 20.4 V, 0.12 ohm: 9.436 A crest",
        ),
        Case(
            {
                "i_trip": "8 A",
                "t_trip": "20 ms",
                "i_peak": "9.436 A",
                "i_rms": "5.722 A",
                "f": ("40 Hz",),
            },
            gives="1.398112",
            origin="computed: time simulation at 40 Hz: 5.722 A rms; 20 ms outlast 12.5 ms",
        ),
    ),
    topic=("battery.protection.i_trip",),
    asked_from="prototype",
    fails="""
supply: {source: battery, rails: single}
battery:
  chemistry: li-ion
  series: 6
  parallel: 2
  cell: {v_oc_low: 3.4 V, r_internal: 28 mohm .. 84 mohm}
  protection: {i_trip: {min: 8 A, typ: 10 A, max: 12 A}, t_trip: {min: 5 ms, max: 15 ms}}
channels:
  left: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
  right: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
""",
    passes="""
supply: {source: battery, rails: single}
battery:
  chemistry: li-ion
  series: 6
  parallel: 2
  cell: {v_oc_low: 3.4 V, r_internal: 28 mohm .. 84 mohm}
  protection: {i_trip: {min: 18 A, typ: 20 A, max: 24 A}, t_trip: {min: 5 ms, max: 15 ms}}
channels:
  left: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
  right: {rated_power: 40 W, output_stage: {topology: full-bridge, efficiency: 88 %}}
""",
)

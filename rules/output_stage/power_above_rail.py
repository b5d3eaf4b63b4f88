"""Rated power against the ideal of the rail.

No stage can give more than its rail allows: half the swing squared over twice the load from
a half-bridge, the whole swing from a bridge, less what the resistances take that are
known, cold. Published projects break this law again and again: 300 W into 4 ohm from 48 V,
80 W into 4 ohm from 18 V, 30 W from a half-bridge on 24 V. The rail is taken at its highest,
so a finding here is a plain contradiction in the spec: a wrong load, a peak power, a power
of both channels, or the rail of another version. It holds at every milestone, unless a
tolerance could still clear it.

A rating at a stated distortion may exceed the sine by what clipping adds, 4.8 % at 1 % and
28.8 % at 10 %. Where no distortion is stated the clean sine counts: a power that only a
clipped sine gives is not one until it says so. `rated_thd` settles it.

Within 5 % of the ideal nothing is left for switches, inductors and a sagging rail. Cure:
find the figure that is wrong.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.modulation import clipped_power_ratio

CLEAN = Assumption("0 %", "neutral", derivation("no distortion stated: a clean sine"))


def figure(rated_power: float, rated_thd: float, p_sine_ideal: float) -> float:
    """Rated power over the most that the rails give at the same distortion."""
    return rated_power / (p_sine_ideal * clipped_power_ratio(rated_thd))


CHECK = Check(
    title="Rated power vs. maximum from the rails",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="rated_power / (p_sine_ideal (1 + 0.048 (rated_thd/1 %)^0.778))",
    sentence="Rated power {rated_power}; the rails allow {rated_power:/figure} at {rated_thd}"
    " distortion (clean sine {p_sine_ideal}).",
    inputs={
        "rated_power": Input("rated_power"),
        "rated_thd": Input("rated_thd", default=CLEAN),
        "p_sine_ideal": Input("p_sine_promised"),
    },
    limits=AtMost(
        major="1",
        minor="0.95",
        basis={
            "major": derivation("power of a sine that touches both rails"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("rated_power", "1 W"),
        Lever("supply.v_rail", "1 V"),
        Lever("battery.series", "1", when={"rail_feed": "pack"}, within=2),
    ),
    sources=(
        Source(
            "M. Wulf, 300 W Class D amplifier, documentation V. 1.0, 2019",
            "section 1: 300 W into 4 ohm wanted from 48 V",
        ),
        Source(
            "J. Benfell, ECEN405 class-D amplifier project",
            "README: gate drivers wanted for 18 V and for 80 W at 4 ohm",
        ),
        derivation("Ohm's law with the ideal peak"),
    ),
    cases=(
        Case(
            {"rated_power": "80 W", "rated_thd": "1 %", "p_sine_ideal": "40.5 W"},
            gives="1.8848",
            origin="published: Benfell README, gate drivers for 18 V and 80 W at 4 ohm; 18 V taken"
            " as the rail and 1 % assumed, 40.5 W ideal by hand",
        ),
        Case(
            {"rated_power": "88 W", "rated_thd": "1 %", "p_sine_ideal": "112.5 W"},
            gives="0.7464",
            origin="published: TPA3221 data sheet, p. 9: 88 W at 1 %, 30 V, 4 ohm; 112.5 W by hand",
        ),
        Case(
            {"rated_power": "40 W", "rated_thd": "0 %", "p_sine_ideal": "36 W"},
            gives="1.1111",
            origin="published: NBitWonder notebook, entry 031: 40 W reported from 24 V into 8 ohm"
            " without a distortion, from 46.8 V peak to peak 34.2 W; ratio to 36 W by hand",
        ),
    ),
    topic=("rated_power",),
    asked_from="prototype",
    forbidden=True,
    fails="""
supply: {source: dc-source, rails: single, v_rail: 48 V}
channels:
  main:
    rated_power: 310 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 30 V}
channels:
  main:
    rated_power: 88 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge}
""",
)

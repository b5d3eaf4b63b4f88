"""Rated power against the ideal of the rail.

Whatever the losses, a stage cannot give more than its rail allows: half the swing squared
over twice the load from a half-bridge, the whole swing from a bridge. Published projects
break this law again and again: 300 W into 4 ohm from 48 V, 80 W into 4 ohm from 18 V, 30 W
from a half-bridge on 24 V. The rail is taken at its highest, so a finding here is a plain
contradiction in the spec: a wrong load, a peak power, a power of both channels, or the
rail of another version. A rating at a stated distortion may exceed the sine by what
clipping adds, 4.8 % at 1 % and 28.8 % at 10 %.

A silent distortion is not taken against the design: a power between those at 1 % and at
10 % counts as just reached (minor, figure 1), for the source may well rate at 10 %;
`rated_thd` settles it. What 10 % does not give either stays major.

Within 5 % of the ideal nothing is left for switches, inductors and a sagging rail. Cure:
find the figure that is wrong.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..derived.rated import THD, THD_MOST
from ..formulas.modulation import share_of_clipped_power


def figure(
    rated_power: float, rated_thd: float, thd_most: float, z_load: float, v_ideal: float
) -> float:
    """Rated power over the lossless power at the same distortion."""
    ratio = rated_power * 2 * z_load / v_ideal**2
    return share_of_clipped_power(ratio, rated_thd, thd_most)


CHECK = Check(
    title="Rated power against the ideal of the rail",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="larger of r/k(thd_most) and smaller of r/k(rated_thd) and 1,"
    " r = rated_power 2 z_load / v_ideal^2, k(d) = 1 + 0.048 (d/1 %)^0.778",
    sentence="{rated_power} into {z_load} are {figure} times what a lossless stage with a peak of"
    " {v_ideal} gives at up to {thd_most} of distortion.",
    inputs={
        "rated_power": Input("rated_power"),
        "rated_thd": THD,
        "thd_most": THD_MOST,
        "z_load": Input("z_load"),
        "v_ideal": Input("v_ideal"),
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
        Lever("battery.series", "1", when={"rail_feed": "pack"}),
    ),
    sources=(
        Source(
            "M. Wulf, class-D documentation 2019",
            "300 W into 4 ohm wanted from 48 V; no page given",
        ),
        Source(
            "ECEN405 class-D amplifier project (Benfell)",
            "80 W into 4 ohm from 18 V; no page given",
        ),
        derivation("Ohm's law with the ideal peak"),
    ),
    cases=(
        Case(
            {
                "rated_power": "80 W",
                "rated_thd": "1 %",
                "thd_most": "1 %",
                "z_load": "4 ohm",
                "v_ideal": "18 V",
            },
            gives="1.8847",
            origin="published: Benfell project, 80 W wanted, 40.5 W ideal; ratio by hand",
        ),
        Case(
            {
                "rated_power": "88 W",
                "rated_thd": "1 %",
                "thd_most": "1 %",
                "z_load": "4 ohm",
                "v_ideal": "30 V",
            },
            gives="0.7464",
            origin="published: TPA3221 data sheet, 88 W measured, 112.5 W ideal",
        ),
        Case(
            {
                "rated_power": "130 W",
                "rated_thd": "1 %",
                "thd_most": "10 %",
                "z_load": "4 ohm",
                "v_ideal": "31 V",
            },
            gives="1",
            origin="published: IRAUDAMP12, 130 W from 31 V, distortion not printed; 120.1 W ideal,"
            " 125.9 W at 1 %, 154.7 W at 10 % by hand",
        ),
    ),
    topic=("rated_power",),
    asked_from="prototype",
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

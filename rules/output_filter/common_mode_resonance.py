"""Resonance of inductor and capacitor to ground in a three-level bridge.

In a three-level bridge both legs switch together at idle, and each inductor with its
capacitor to ground sees the whole carrier of its leg. The load does not damp this circuit:
it lies between two terminals that move alike. Where its resonance falls near the carrier
the inductor current grows without limit, stage and inductor get hot with no music, and
the lead radiates. Some distance, a factor of 1.4 to either side, is enough. Below the
carrier is the usual place; far above it the capacitors only work against radio
interference and do no harm. A two-level bridge drives no common-mode carrier, and a
damper from each terminal to ground takes the danger away: then the check does not apply.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source, derivation
from ..formulas.lc import corner
from ..formulas.maths import larger


def figure(l_leg: float, c_ground: float, carrier: float) -> float:
    """Distance of resonance and carrier as a ratio above one."""
    f = corner(l_leg, c_ground)
    return larger(f / carrier, carrier / f)


CHECK = Check(
    title="Common-mode resonance of the filter vs. carrier",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="ratio of 1/(2 pi sqrt(l_leg c_ground)) to carrier, or its inverse where larger",
    sentence="{l_leg} and {c_ground} to ground resonate undamped within a factor of {figure} of"
    " the {carrier} carrier.",
    inputs={
        "l_leg": Input("filter.inductor.l"),
        "c_ground": Input("c_ground_working"),
        "carrier": Input("modulator.carrier"),
    },
    applies={
        "filter_kind": "lc",
        "filter.c_ground": "fitted",
        "levels": "three-level",
        "common_mode_damped": "no",
    },
    limits=AtLeast(major="1.4", basis={"major": COMMON_PRACTICE}),
    levers=(Lever("filter.c_ground.c", "E6"), Lever("filter.inductor.l", "E6")),
    sources=(
        Source(
            "J. Widder and Y. T. Zhao, Understanding output filters for "
            "Class-D amplifiers, EE Times, 9 Jan. 2008",
            "p. 2: undamped common-mode ringing",
        ),
        derivation("resonance of one leg's inductor and capacitor"),
    ),
    cases=(
        Case(
            {"l_leg": "15 uH", "c_ground": "0.22 uF", "carrier": "262.83 kHz"},
            gives="3",
            origin="derived: TPA3001D1 data sheet, figure 35, 15 uH and 0.22 uF: 87.61 kHz by hand;"
            " three times that assumed",
        ),
        Case(
            {"l_leg": "10 uH", "c_ground": "100 pF", "carrier": "400 kHz"},
            gives="12.582",
            origin="computed: node equations of one leg, 5.03 MHz",
        ),
    ),
    topic=("filter.c_ground",),
    peaks_inside=("filter.inductor.l", "filter.c_ground.c", "modulator.carrier"),
    fails="""
channels:
  main:
    output_stage: {topology: full-bridge}
    modulator: {levels: three-level, carrier: 400 kHz}
    filter: {inductor: {l: 10 uH}, c_ground: {c: 15 nF, dielectric: polypropylene}}
""",
    passes="""
channels:
  main:
    output_stage: {topology: full-bridge}
    modulator: {levels: three-level, carrier: 400 kHz}
    filter: {inductor: {l: 10 uH}, c_ground: {c: 680 nF, dielectric: polypropylene}}
""",
)

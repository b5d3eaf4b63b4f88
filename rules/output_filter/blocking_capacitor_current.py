"""Ripple current of the capacitor in series with the load.

All of the load current flows through it. Makers of single-supply stages ask for a ripple
rating at least equal to the load current at full power. Music is an eighth of that power,
so a part that is too small for the sine lives on music for a time: below the sine it is a
matter of margin, and only when an eighth of the power already exceeds the rating, a
factor of 2.83 in current, does the part dry out in ordinary use. Beyond twice that current
programme heats it four times as much as its maker allows: the electrolyte boils, the vent opens,
and what then fails shorted puts direct voltage on the load. That is critical. Cure: a larger
can, a part of lower resistance, or two in parallel.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.capacitor import VENTS
from ..hazards import CAPACITOR


def figure(i_rated_peak: float, i_rated: float) -> float:
    """Load current, rms of a sine at rated power, over the ripple rating."""
    return i_rated_peak / 2**0.5 / i_rated


CHECK = Check(
    title="Output capacitor ripple current vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="i_rated_peak / sqrt(2) / i_rated",
    sentence="Output capacitor carries {i_rated:*figure} rms at rated power; rated {i_rated}"
    " ({figure:%}).",
    inputs={
        "i_rated_peak": Input("i_rated_peak"),
        "i_rated": Input("filter.c_block.i_rated"),
    },
    applies={"output_stage.topology": "half-bridge", "supply.rails": "single"},
    limits=AtMost(
        critical="5.66",
        major="2.83",
        minor="1",
        basis={
            "critical": VENTS,
            "major": derivation("root of 8: programme of an eighth of the power exceeds it"),
            "minor": Source(
                "CS4525 data sheet DS726PP1",
                "p. 59: ripple current rating above the current that passes through it",
            ),
        },
    ),
    levers=(Lever("filter.c_block.i_rated", "0.5 A"),),
    sources=(Source("CS4525 data sheet DS726PP1", "table 19, p. 59"),),
    cases=(
        Case(
            {"i_rated_peak": "1.2247 A", "i_rated": "0.866 A"},
            gives="1",
            origin="published: XMOS, iPod Dock note 1.0, table 3: 3 W into 4 ohm; 0.866 A by hand",
        ),
        Case(
            {"i_rated_peak": "5 A", "i_rated": "1.25 A"},
            gives="2.8284",
            origin="computed: rms of a sampled sine",
        ),
    ),
    cautions=(CAPACITOR,),
    topic=("filter.c_block.i_rated",),
    fails="""
supply: {rails: single}
channels:
  main:
    rated_power: 12 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {c_block: {c: 1000 uF, i_rated: 1.2 A}}
""",
    passes="""
supply: {rails: single}
channels:
  main:
    rated_power: 12 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {c_block: {c: 1000 uF, i_rated: 2.5 A}}
""",
)

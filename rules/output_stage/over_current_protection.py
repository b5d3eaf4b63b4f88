"""Whether the output stage has over-current protection at all.

A screwdriver across the terminals, a chafed lead, a loudspeaker with a burnt coil: shorts
happen, and a class-D stage answers with a current that rises by amperes per microsecond
until something opens.  A supply fuse is far too slow for a semiconductor.

The check asks only whether the protection is there: a trip that is stated, not a section
that leaves it out.  Whether its threshold lies above the music and below destruction is
asked by trip-above-music and trip-below-destruction.  For an integrated stage the answer
is in its data sheet.  Silence is an open question, the word ``none`` a finding.  First
fix: a driver with over-current sensing, or a shunt and a comparator that latch off within
a microsecond.
"""

from ...linter.check import AtLeast, Case, Check, Input, Source, derivation
from ..hazards import SHORTED_STAGE


def figure(over_current: str) -> float:
    """1 where over-current protection is fitted, 0 where it is not."""
    return 1.0 if over_current == "fitted" else 0.0


SHORTS = derivation("short-circuit current rises as V / L; semiconductors fail in microseconds")

CHECK = Check(
    title="Over-current protection of the output stage",
    figure=figure,
    unit="1",
    each="channel",
    stake="safety",
    formula="1 where over_current is fitted, 0 where it is none",
    sentence="{over_current:?No over-current protection of the output stage|Over-current"
    " protection of the output stage: fitted}.",
    inputs={
        "over_current": Input("over_current"),
    },
    limits=AtLeast(critical="1", basis={"critical": SHORTS}),
    sources=(
        SHORTS,
        Source(
            "M. Wulf, 300 W Class D amplifier, documentation V. 1.0, 2019",
            "section 3: stages of a first prototype destroyed in short-circuit tests",
        ),
    ),
    cautions=(SHORTED_STAGE,),
    cases=(
        Case(
            {"over_current": "fitted"},
            "1",
            "published: IRAUDAMP7D reference design senses the on-resistance of its switches",
        ),
        Case({"over_current": "none"}, "0", "derived: nothing limits the current of a short"),
    ),
    topic=("output_stage.over_current",),
    asked_from="prototype",
    fails="""
channels:
  main: {output_stage: {over_current: none}}
""",
    passes="""
channels:
  main: {output_stage: {over_current: {i_trip: 10 A}}}
""",
)

"""Rail of a step-down converter against the source at its lowest.

A step-down converter can hold no rail above its source.  When the source falls to the rail
the switch stays on, and the rail falls with it: the rated power is gone, while every other
check still reckons with the rail that the spec states.

The figure is the lowest source over the lowest stated rail, at rest.  Below 1 is minor:
what is lost then is a few percent; 5 % of the rail are a tenth of the power, major.  The
drop in switch and coil is left out.  Isolated converters and split rails are not bound to
the source in this way; say ``step-up-down`` for the former.

What to do first: more cells, a lower rail, or a converter that steps up and down.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation


def figure(v_source: float, v_rail: float) -> float:
    return v_source / v_rail


SOURCE = """
supply: {source: dc-source, rails: single, converter: step-down, v_rail: 12 V ± 2 %,
  v_source: 10.5 V .. 15 V}
channels:
  main: {rated_power: 10 W}
"""

CHECK = Check(
    title="Lowest source voltage vs. step-down rail",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="v_source / v_rail",
    sentence="Source falls to {v_source}; a step-down converter for {v_rail} needs more than that"
    " rail ({figure:%}).",
    inputs={
        "v_source": Input("v_source_low"),
        "v_rail": Input("supply.v_rail:low", meaning="ONE rail to ground, lowest stated"),
    },
    applies={"supply.converter": "step-down", "supply.rails": "single"},
    limits=AtLeast(
        major="0.95",
        minor="1",
        basis={
            "major": derivation("the power goes with the square of the rail: a tenth is lost"),
            "minor": derivation("a step-down converter gives its input at most"),
        },
    ),
    levers=(Lever("battery.series", "1"),),
    sources=(derivation("no duty cycle makes D V larger than V"),),
    cases=(
        Case(
            {"v_source": "10.5 V", "v_rail": "11.76 V"},
            gives="0.892857",
            origin="computed: 1 / D of an averaged step-down stage, D of 112 %",
        ),
        Case(
            {"v_source": "18 V", "v_rail": "12 V"},
            gives="1.5",
            origin="computed: 1 / D of an averaged step-down stage, D of 66.7 %",
        ),
    ),
    topic=("supply.converter",),
    fails=SOURCE,
    passes=SOURCE.replace("v_source: 10.5 V", "v_source: 13 V"),
)

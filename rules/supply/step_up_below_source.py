"""Rail of a step-up converter against the source at its highest.

A step-up converter passes its input through coil and diode or switch: the rail cannot lie
below the source.  With a full pack above the rail that the spec states, the converter stops
switching, and the rail rises to the pack: capacitors, switches and trips then see more than
they were chosen for.

The figure is the highest stated rail over the highest source: a rail that stays inside its
stated range does no harm.  Below 1 is minor, as a diode in the path may drop the difference;
below 0.95 it no longer does from 10 V on.  Isolated converters and split rails are not bound
to the source in this way; say ``step-up-down`` for the former.

What to do first: fewer cells, a higher rail, or a converter that steps up and down.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation


def figure(v_rail: float, v_source: float) -> float:
    return v_rail / v_source


PACK = """
supply: {source: battery, rails: single, converter: step-up, v_rail: 15 V ± 3 %}
battery: {chemistry: li-ion, series: 4}
channels:
  main: {rated_power: 10 W}
"""

CHECK = Check(
    title="Step-up rail vs. highest source voltage",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="v_rail / v_source",
    sentence="Rail limit {v_rail}; a step-up converter passes on the full source voltage of"
    " {v_source} ({figure:%}).",
    inputs={
        "v_rail": Input("supply.v_rail:high", meaning="ONE rail to ground, highest stated"),
        "v_source": Input("v_source_high"),
    },
    applies={"supply.converter": "step-up", "supply.rails": "single"},
    limits=AtLeast(
        major="0.95",
        minor="1",
        basis={
            "major": derivation("a diode drops 0.5 V, 5 % of 10 V"),
            "minor": derivation("a step-up converter passes its input"),
        },
    ),
    levers=(Lever("battery.series", "1"),),
    sources=(derivation("no duty cycle makes V / (1 - D) smaller than V"),),
    cases=(
        Case(
            {"v_rail": "15.45 V", "v_source": "16.9 V"},
            gives="0.914201",
            origin="computed: 1 / (1 - D) of an averaged step-up stage, D of -9.385 %",
        ),
        Case(
            {"v_rail": "5 V", "v_source": "4.2 V"},
            gives="1.190476",
            origin="computed: 1 / (1 - D) of an averaged step-up stage, D of 16 %",
        ),
    ),
    topic=("supply.converter",),
    fails=PACK,
    passes=PACK.replace("v_rail: 15 V", "v_rail: 20 V"),
)

"""Whether an L-C filter has a capacitor at all.

An inductor alone is no filter: above some tens of kilohertz the voice coil is an inductor as
well, the two divide the carrier instead of stopping it, and without a loudspeaker nothing is
left at all.  A filter that is called L-C, or that has an inductor, needs a capacitor across
the load, or from each terminal to ground.  The figure counts the kinds of capacitor that are
fitted; none is major.  It asks nothing of a bead or of a stage that drives its loudspeaker
bare; those have checks of their own.

What to do first: fit the capacitor that goes with the inductor and the load, or call the
filter what it is (`filter.type`).
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation

DIVIDES = derivation("inductor and voice coil are a divider without a frequency of its own")


def figure(c_across: str, c_ground: str) -> float:
    return float(c_across == "fitted") + float(c_ground == "fitted")


BRIDGE = """
channels:
  main:
    output_stage: {topology: full-bridge}
    filter: {inductor: {l: 10 uH}, c_across: none, c_ground: none}
"""

CHECK = Check(
    title="Capacitor of the output filter",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="1 for c_across fitted, 1 for c_ground fitted",
    sentence="{figure:?No capacitor in the L-C filter|L-C filter capacitor fitted} (across the"
    " load: {c_across}; to ground: {c_ground}).",
    inputs={"c_across": Input("filter.c_across"), "c_ground": Input("filter.c_ground")},
    applies={"filter_kind": "lc"},
    limits=AtLeast(major="1", basis={"major": DIVIDES}),
    levers=(Lever("filter.c_across.c", "E6"),),
    sources=(DIVIDES,),
    cases=(
        Case(
            {"c_across": "none", "c_ground": "none"},
            gives="0",
            origin="derived: counted by hand from the spec",
        ),
        Case(
            {"c_across": "fitted", "c_ground": "none"},
            gives="1",
            origin="common practice: one capacitor across the load, by hand",
        ),
    ),
    topic=("filter.inductor",),
    fails=BRIDGE,
    passes=BRIDGE.replace("c_across: none", "c_across: {c: 1 uF}"),
)

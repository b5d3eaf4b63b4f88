"""Power of a source that nothing would interrupt.

A short in a lead, a connector or a board makes a pack deliver all it has: at the worst
fault the square of its voltage over four times its resistance, kilowatts from a handful of
lithium cells.  Above 100 W a source belongs to the highest class of fire hazard (class 3 of
IEC 62368-1), and something has to end the fault: a fuse, wherever it sits (state it with its
place), or a source that limits its own current (``supply.self_limiting``).

The protection circuit of a pack counts as long as the current of a dead short is no more
than what it is rated to interrupt (``battery.protection.i_breaking``): its transistors are
otherwise the first to fail, and they fail shorted.  A trip current alone says nothing of it.

The figure is that power where nothing ends the fault, otherwise nothing.  Above 100 W is
critical.  Take the full voltage and the lowest resistance: new cells, warm.  First fix: a
fuse with a direct-current rating at the first cell, before any wiring.
"""

from ...linter.check import AtMost, Case, Check, Input, derivation
from ..formulas.safety import FIRE_POWER
from ..hazards import ARC, CONDUCTOR


def figure(p_unended: float) -> float:
    return p_unended


PACK = """
supply: {source: battery, converter: none}
battery:
  {chemistry: li-ion, series: 6, parallel: 2, cell: {r_internal: 20 mohm .. 60 mohm},
  protection: none}
protection: {fuse: none}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Short-circuit power that nothing interrupts",
    figure=figure,
    unit="W",
    each="product",
    stake="safety",
    formula="p_unended: 0 where fuse, pack or source end the fault",
    sentence="{figure:?Fuse, pack or source interrupts a short circuit|Nothing interrupts a short"
    " circuit; it can draw #}.",
    inputs={
        "p_unended": Input("p_unended"),
    },
    limits=AtMost(critical="100 W", basis={"critical": FIRE_POWER}),
    sources=(derivation("power matching: v^2 / 4 r"), FIRE_POWER),
    cautions=(
        CONDUCTOR,
        ARC,
    ),
    cases=(
        Case(
            {"p_unended": "2646 W"},
            gives="2646 W",
            origin="computed: maximum of load power over resistance, 25.2 V behind 0.06 ohm",
        ),
        Case(
            {"p_unended": "65 W"},
            gives="65 W",
            origin="derived: a source of 65 W gives no more",
        ),
    ),
    topic=("protection.fuse", "battery.protection"),
    asked_from="prototype",
    fails=PACK,
    passes=PACK.replace("protection: {fuse: none}", "protection: {fuse: {i_rated: 10 A}}"),
)

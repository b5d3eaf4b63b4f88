"""Power of a battery that nothing would interrupt.

A short in a lead, a connector or a board makes the pack deliver all it has: at the worst
fault the square of its voltage over four times its resistance, kilowatts from a handful of
lithium cells.  Above 100 W a source belongs to the highest class of fire hazard (class 3 of
IEC 62368-1), and something has to end the fault: a fuse next to the cells, or the switches
of the pack's protection.

The figure is that power where the spec has neither, otherwise nothing.  Above 100 W is
critical.  Take the full voltage and the lowest resistance: new cells, warm.  First cure: a
fuse with a direct-current rating at the first cell, before any wiring.
"""

from typing import Any

from ...linter.check import AtMost, Case, Caution, Check, Input, derivation
from ..formulas.safety import FIRE_POWER

ENDS_IT = "fitted"


def figure(p_fault: Any, fuse: str, pack_protection: str) -> Any:
    return 0 * p_fault if ENDS_IT in (fuse, pack_protection) else p_fault


PACK = """
supply: {source: battery, converter: none}
battery:
  {chemistry: li-ion, series: 6, parallel: 2, cell: {r_internal: 20 mohm .. 60 mohm},
  protection: none}
protection: {fuse: none}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Battery without anything that interrupts a short",
    figure=figure,
    unit="W",
    each="product",
    stake="safety",
    formula="p_fault if both fuse and pack_protection are none, else 0",
    sentence="A fault may draw {figure} from the pack without an end (available {p_fault}; fuse:"
    " {fuse}, protection of the pack: {pack_protection}).",
    inputs={
        "p_fault": Input("p_fault", "W", "largest power that the source gives to a fault"),
        "fuse": Input("protection.fuse", "word", "fuse of the source, or none"),
        "pack_protection": Input("battery.protection", "word", "protection of the pack, or none"),
    },
    applies={"supply.source": "battery"},
    limits=AtMost(critical="100 W", basis={"critical": FIRE_POWER}),
    sources=(derivation("power matching: v^2 / 4 r"), FIRE_POWER),
    cautions=(
        Caution(
            "WARNING",
            "A shorted pack burns skin and starts fires at any voltage. Fuse it at the cells, work"
            " with insulated tools, take off rings and watches.",
        ),
    ),
    cases=(
        Case(
            {"p_fault": "2646 W", "fuse": "none", "pack_protection": "none"},
            gives="2646 W",
            origin="computed: maximum of load power over resistance, 25.2 V behind 0.06 ohm",
        ),
        Case(
            {"p_fault": "2646 W", "fuse": "fitted", "pack_protection": "none"},
            gives="0 W",
            origin="derived: a fuse ends the fault",
        ),
    ),
    topic=("protection.fuse", "battery.protection"),
    asked_from="prototype",
    fails=PACK,
    passes=PACK.replace("protection: {fuse: none}", "protection: {fuse: {i_rated: 10 A}}"),
)

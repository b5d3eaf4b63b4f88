"""Blocking voltage of the part that blocks a reversed source.

While the source is reversed the blocking transistor or diode holds it off, and behind it
the capacitors may still be charged from before: both voltages add across it.  A part that
was chosen for its on-resistance at the pack's voltage, 30 V on 25 V, breaks down on the day
that it is needed.

The figure is twice the highest voltage of the source over the rating, drain to source of a
transistor, reverse voltage of a diode.  A rating is absolute: above 1 is critical.  A shunt
diode sees the source the right way round only, and is left out.  First fix: a part rated
two and a half times the source.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..hazards import CAPACITOR

RATING = derivation("reversed source and charged capacitors add across the blocking part")


def figure(v_source_high: float, v_block: float) -> float:
    return 2 * v_source_high / v_block


PACK = """
supply: {source: battery, converter: none}
battery: {chemistry: li-ion, series: 6, cell: {v_charge: 4.2 V}}
protection: {reverse_polarity: {method: p-channel, r_on: 6 mohm, v_block: 30 V}}
channels: {main: {rated_power: 20 W}}
"""

CHECK = Check(
    title="Reversed source voltage vs. blocking part rating",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="2 v_source_high / v_block",
    sentence="Blocking part sees {v_block:*figure} with the {v_source_high} source reversed; rated"
    " {v_block} ({figure:%}).",
    inputs={
        "v_source_high": Input("v_source_high"),
        "v_block": Input("protection.reverse_polarity.v_block"),
    },
    applies={
        "supply.source": ("battery", "dc-source"),
        "protection.reverse_polarity.method": ("schottky", "p-channel", "n-channel"),
    },
    limits=AtMost(critical="1", minor="0.9", basis={"critical": RATING, "minor": COMMON_PRACTICE}),
    levers=(
        Lever("protection.reverse_polarity.v_block", ("30 V", "40 V", "60 V", "80 V", "100 V")),
    ),
    sources=(RATING,),
    cautions=(CAPACITOR,),
    cases=(
        Case(
            {"v_source_high": "25.2 V", "v_block": "30 V"},
            gives="1.68",
            origin="computed: nodal solution: -25.2 V in, +25.2 V held: 50.4 V on a 30 V part",
        ),
        Case(
            {"v_source_high": "14.4 V", "v_block": "40 V"},
            gives="0.72",
            origin="published: utilitiesbunker.com, 14.4 V a lead-acid block; a 40 V part assumed",
        ),
    ),
    topic=("protection.reverse_polarity",),
    fails=PACK,
    passes=PACK.replace("v_block: 30 V", "v_block: 60 V"),
)

"""Gate of the transistor that blocks a reversed source.

The transistor is turned on by the source itself: its gate goes to the other pole, so it
sees the full voltage of the source, charge end and tolerance included.  A part of 20 V
gate rating on a pack of six lithium cells is beyond its absolute maximum every time that
the pack is full, and fails as a short without a sign.

It speaks only where the gate is not clamped.  Above the rating is critical, above 80 % of
it minor, as surges come on top (common practice, no source).  First fix: a zener diode
from gate to source with a series resistor.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..hazards import CAPACITOR

RATING = derivation("a gate rating is an absolute limit")


def figure(v_source_high: float, v_gss: float) -> float:
    return v_source_high / v_gss


PACK = """
supply: {source: battery, converter: none}
battery: {chemistry: li-ion, series: 6, cell: {v_charge: 4.2 V}}
protection: {reverse_polarity: {method: p-channel, r_on: 6 mohm, v_gss: 20 V, gate_clamp: no}}
channels: {main: {rated_power: 20 W}}
"""

CHECK = Check(
    title="Blocking transistor gate voltage vs. rating",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="v_source_high / v_gss",
    sentence="Gate of the blocking transistor sees {v_source_high} without a clamp; rated {v_gss}"
    " ({figure:%}).",
    inputs={
        "v_source_high": Input("v_source_high"),
        "v_gss": Input("protection.reverse_polarity.v_gss"),
    },
    applies={
        "supply.source": ("battery", "dc-source"),
        "protection.reverse_polarity.method": ("p-channel", "n-channel"),
        "protection.reverse_polarity.gate_clamp": "no",
    },
    limits=AtMost(critical="1", minor="0.8", basis={"critical": RATING, "minor": COMMON_PRACTICE}),
    levers=(Lever("protection.reverse_polarity.v_gss", ("12 V", "16 V", "20 V", "25 V", "30 V")),),
    sources=(RATING, derivation("the gate lies at one pole, the source terminal at the other")),
    cautions=(CAPACITOR,),
    cases=(
        Case(
            {"v_source_high": "25.2 V", "v_gss": "20 V"},
            gives="1.26",
            origin="derived: six lithium cells at 4.2 V on a gate of 20 V",
        ),
        Case(
            {"v_source_high": "16 V", "v_gss": "20 V"},
            gives="0.8",
            origin="common practice: 20 V gates are clamped above about 16 V",
        ),
    ),
    topic=("protection.reverse_polarity",),
    fails=PACK,
    passes=PACK.replace("series: 6", "series: 3"),
)

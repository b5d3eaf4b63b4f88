"""Claimed efficiency far below what class-D stages reach.

A linear class-B stage reaches 78.5 % at full swing on paper and 55 to 65 % at rated power
in practice.  Published class-D amplifiers measure 79 to 91 % at rated power into the loads
that they are made for.  A claim below 70 % at rated power means that a good part of the
reason for switching is lost: too much dead time, hard switching of large charges, resistance
in the path of a low load, or an idle loss that rivals the output.

Minor: it works, and the heat checks judge whether it stays cool.  First fix: look which
loss term is the largest; a good design has conduction and charge losses of equal size.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source, derivation

CLASS_B = derivation("class B at full swing: pi / 4; at half the power: pi / 4 over root 2")
MEASURED = Source(
    "TPA3221 data sheet SLASEE9B; International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
    "fig. 6: 79.6 % into 3 ohm, 85.5 % into 4 ohm, 91 % into 8 ohm; "
    "fig. 15: 86.8 % at 120 W into 4 ohm",
)


def figure(efficiency: float) -> float:
    return efficiency


CHECK = Check(
    title="Claimed efficiency vs. measured class D",
    figure=figure,
    unit="%",
    each="product",
    stake="performance",
    formula="efficiency",
    sentence="Claimed efficiency {figure}; measured class-D amplifiers reach 79 to 91 %, linear"
    " stages 55 to 65 %.",
    inputs={"efficiency": Input("claims.efficiency")},
    limits=AtLeast(minor="70 %", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("claims.efficiency", "1 %"),),
    sources=(MEASURED, CLASS_B, COMMON_PRACTICE),
    cases=(
        Case(
            {"efficiency": "79.56 %"},
            gives="79.56 %",
            origin="published: TPA3221 fig. 6, 150 W into 3 ohm, the least of its curves",
        ),
        Case(
            {"efficiency": "55.7 %"},
            gives="55.7 %",
            origin="published: J. Estefania Vilumbrales, thesis 2017, annexes p. 34: 30 V, 5.1 ohm",
        ),
    ),
    topic=("claims.efficiency",),
    fails="""
claims: {efficiency: 56 %}
channels: {main: {rated_power: 50 W}}
""",
    passes="""
claims: {efficiency: 82 %}
channels: {main: {rated_power: 50 W}}
""",
)

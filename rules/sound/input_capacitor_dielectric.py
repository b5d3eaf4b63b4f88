"""Class-2 ceramic as input coupling capacitor.

The capacitance of a class-2 ceramic depends on its voltage, so it distorts as far as there
is signal across it.  Well above the corner there is none; near the corner there is a good
part.  The figure is the share of the signal that lies across the capacitor at the low end
of the band.  Up to a tenth nothing is said: a large ceramic with its corner a decade below
the band does no harm, while one chosen just for the corner distorts the bass.

What to do first: a film capacitor of the same value, or a ten times larger ceramic.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..formulas.maths import PI


def figure(r_in: float, c_in: float, band_low: float) -> float:
    u = 2 * PI * r_in * c_in * band_low
    return 1 / (1 + u**2) ** 0.5


CHECK = Check(
    title="Signal across a class-2 ceramic at the input",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="1 / (1 + (2 pi r_in c_in band_low)^2)^0.5",
    sentence="Input class-2 ceramic drops {figure} of the signal at {band_low} ({c_in}, {r_in}).",
    inputs={
        "r_in": Input("signal.r_in"),
        "c_in": Input("signal.c_in"),
        "band_low": Input("band_low"),
    },
    applies={"signal.c_in_dielectric": "ceramic-class-2"},
    limits=AtMost(minor="10 %", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("signal.c_in", "E6"),),
    sources=(derivation("divider of capacitor and input resistance"), COMMON_PRACTICE),
    cases=(
        Case(
            {"r_in": "10 kohm", "c_in": "2.2 uF", "band_low": "7.2343 Hz"},
            gives="70.711 %",
            origin="derived: at the corner both parts of the divider have the same modulus",
        ),
        Case(
            {"r_in": "20 kohm", "c_in": "1 uF", "band_low": "20 Hz"},
            gives="36.971 %",
            origin="computed: complex divider",
        ),
    ),
    topic=("signal.c_in_dielectric",),
    fails="""
signal: {r_in: 20 kohm, c_in: 1 uF, c_in_dielectric: ceramic-class-2}
channels:
  main: {band: 20 Hz .. 20 kHz}
""",
    passes="""
signal: {r_in: 20 kohm, c_in: 10 uF, c_in_dielectric: ceramic-class-2}
channels:
  main: {band: 20 Hz .. 20 kHz}
""",
)

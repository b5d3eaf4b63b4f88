"""Zobel network across the loudspeaker against the coil that it is to level.

The inductance of the coil lets the impedance rise with frequency and leaves the output
filter undamped.  A resistor and a capacitor across the loudspeaker level it: exactly with
R = Re and C = Le / Re^2, in the trade's form with R = 1.25 Re and C = Le / R^2.

Real coils are lossy, so measured boxes want other values: the designer of one kit computed
8.1 ohm and 28 uF and found 8 ohm and 47 uF better.  Hence a factor of two is let pass in
both the resistor and the time constant.  Beyond a factor of four the arm either does
nothing or, with too small a resistor, is itself the lowest load of the amplifier.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.driver import largest

KIT = Source(
    "Dayton BR-1 loudspeaker kit manual", "p. 4: 6.5 ohm and 1.87 mH need 8.125 ohm, 28.3 uF"
)


def figure(r: float, c: float, r_e: float, l_e: float) -> float:
    size = r / (1.25 * r_e)
    capacitance = c * r**2 / l_e
    return largest([size, 1 / size, capacitance, 1 / capacitance])


FITTED = """
channels:
  main:
    loudspeaker:
      z_rated: 8 ohm
      r_e: 6.5 ohm
      l_e: 1.87 mH
      zobel: {r: 8.2 ohm, c: 2.7 uF, p_rated: 10 W}
"""

CHECK = Check(
    title="Voice-coil Zobel network vs. design value",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="largest of r / (1.25 r_e), c r^2 / l_e and their reciprocals",
    sentence="Zobel network {r}, {c} is a factor of {figure} off its design value (coil {r_e},"
    " {l_e}).",
    inputs={
        "r": Input("loudspeaker.zobel.r"),
        "c": Input("loudspeaker.zobel.c"),
        "r_e": Input("r_e"),
        "l_e": Input("loudspeaker.l_e"),
    },
    limits=AtMost(minor="2", basis={"minor": KIT}),
    levers=(Lever("loudspeaker.zobel.c", "E6"), Lever("loudspeaker.zobel.r", "E12")),
    sources=(KIT, derivation("Re + s Le beside R + 1/(s C) is constant for R = Re, C = Le/Re^2")),
    cases=(
        Case(
            {"r": "8.125 ohm", "c": "28.3 uF", "r_e": "6.5 ohm", "l_e": "1.87 mH"},
            gives="1.00094",
            origin="published: Dayton BR-1 kit manual, p. 4, computed there for that coil",
        ),
        Case(
            {"r": "8 ohm", "c": "47 uF", "r_e": "6.5 ohm", "l_e": "1.87 mH"},
            gives="1.60856",
            origin="published: Dayton BR-1 kit manual, p. 4, found better by measurement",
        ),
    ),
    topic=("loudspeaker.zobel",),
    fails=FITTED,
    passes=FITTED.replace("c: 2.7 uF", "c: 27 uF"),
)

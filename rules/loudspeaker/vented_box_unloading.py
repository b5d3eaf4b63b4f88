"""Protection of a vented box below its tuning.

Below its tuning a vented box no longer holds the cone: the port lets the air out, and the
driver moves as if it stood free, while it radiates next to nothing.  Rumble, plosives and
switch-on thumps that no one hears then throw the coil out of the gap.  So a vented box
wants an electrical high-pass of second order or more at 0.8 to 0.9 of the tuning.

The figure is what the high-pass takes away an octave below the tuning.  It joins corner
and order in one number: second order at 0.8 of the tuning takes 8.8 dB, at 0.6 it takes
4.9 dB, and no filter takes nothing.  A high-pass in the signal processing ahead of the
amplifier counts: write it in the spec.  A passive radiator lets the cone go in the same
way round its own resonance, which lies about there.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, derivation
from ..derived.excursion import HIGH_PASS
from ..formulas.acoustics import power_decibel
from ..formulas.driver import SMALL_VENTED


def figure(f_high_pass: float, order: float, f_b: float) -> float:
    return power_decibel(1 + (2 * f_high_pass / f_b) ** (2 * order))


CHECK = Check(
    title="High-pass attenuation below the vented box tuning",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="10 log10(1 + (2 f_high_pass / f_b)^(2 order))",
    sentence="{f_high_pass:?No high-pass|High-pass #}: {figure} attenuation an octave below the"
    " {f_b} tuning, where the box unloads the cone.",
    inputs={
        **HIGH_PASS,
        "f_b": Input("loudspeaker.enclosure.f_b"),
    },
    applies={
        "loudspeaker.piezo": "none",
        "loudspeaker.enclosure.type": ("vented", "passive-radiator"),
    },
    limits=AtLeast(
        major="4.5 dB",
        minor="8.5 dB",
        basis={
            "major": derivation("second order at 0.6 of the tuning takes 4.9 dB"),
            "minor": derivation("second order at 0.8 of the tuning takes 8.8 dB"),
        },
    ),
    levers=(Lever("loudspeaker.high_pass.f", "1 Hz"),),
    sources=(SMALL_VENTED,),
    cases=(
        Case(
            {"f_high_pass": "40 Hz", "order": 2, "f_b": "40 Hz"},
            gives="12.304 dB",
            origin="computed: scipy Butterworth high-pass of second order, 40 Hz, at 20 Hz",
        ),
        Case(
            {"f_high_pass": "40 Hz", "order": 2, "f_b": "60 Hz"},
            gives="6.191 dB",
            origin="computed: scipy Butterworth high-pass of second order, 40 Hz, at 30 Hz",
        ),
    ),
    topic=("loudspeaker.enclosure",),
    fails="""
channels:
  main:
    loudspeaker:
      z_rated: 4 ohm
      high_pass: none
      enclosure: {type: vented, v_b: 12 L, f_b: 54 Hz}
""",
    passes="""
channels:
  main:
    loudspeaker:
      z_rated: 4 ohm
      high_pass: {f: 46 Hz, order: 2}
      enclosure: {type: vented, v_b: 12 L, f_b: 54 Hz}
""",
)

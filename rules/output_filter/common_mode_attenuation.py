"""Attenuation of the carrier that both terminals of a three-level bridge carry together.

Between its terminals a three-level bridge has no carrier, only twice of it. Each leg still
switches at the carrier, and at idle both do so together: to ground, both wires of the
loudspeaker lead carry the whole square wave of a leg. A capacitor across the load sees nothing
of it; what stops it is each inductor with the capacitor from its own terminal to ground. With
33 uH and 0.1 uF it is 17 dB at 250 kHz where the load sees 39 dB between the terminals.

What is left costs nothing at the load. It couples into radio reception and into wiring beside
the lead, and radiates with its length. 20 dB, a resonance at a third of the carrier, is the
limit from practice; less is minor, as makers' own filters of 17 dB are sold. A resonance at the
carrier itself is judged by common-mode-resonance, a filter without any capacitor to ground by
the length of its lead. Cure: larger capacitors to ground, less one across the load.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
    from_memory,
)
from ..formulas.maths import log10


def figure(common_mode_gain: float) -> float:
    """Attenuation of one leg to ground, in dB."""
    return -20 * log10(common_mode_gain)


CHECK = Check(
    title="Common-mode carrier attenuation of the filter",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="-20 log10 common_mode_gain",
    sentence="Filter attenuates the common-mode carrier by {figure} ({common_mode_gain} left at"
    " each terminal).",
    inputs={
        "common_mode_gain": Input("common_mode_gain", unit="%"),
    },
    applies={"filter_kind": "lc", "levels": "three-level", "grounded": "yes"},
    limits=AtLeast(minor="20 dB", basis={"minor": COMMON_PRACTICE}),
    levers=(
        Lever("filter.c_ground.c", "E6"),
        Lever("filter.inductor.l", "E6"),
        Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),
    ),
    sources=(
        derivation("half of a symmetrical bridge: no current in what lies across the load"),
        Source(
            "TPA3001D1 data sheet SLOS398E",
            "p. 18, fig. 36: 33 uH, 0.1 uF to ground on each side, 0.47 uF across the load",
        ),
        from_memory("TPA3001D1 data sheet: carrier of 250 kHz"),
    ),
    cases=(
        Case(
            {"common_mode_gain": "14.0083 %"},
            gives="17.07 dB",
            origin="computed: both legs by node equations, 33 uH and 0.1 uF at 250 kHz",
        ),
        Case(
            {"common_mode_gain": "5.8824 %"},
            gives="24.61 dB",
            origin="derived: at three root two times the resonance 1/(18 - 1) is left, by hand",
        ),
    ),
    topic=("filter.c_ground",),
    peaks_inside=("filter.inductor.l", "filter.c_ground.c", "modulator.carrier"),
    fails="""
channels:
  main:
    output_stage: {topology: full-bridge}
    modulator: {type: natural-sampling, levels: three-level, carrier: 250 kHz}
    filter:
      inductor: {l: 33 uH}
      c_across: {c: 470 nF, dielectric: polypropylene}
      c_ground: {c: 100 nF, dielectric: polypropylene}
""",
    passes="""
channels:
  main:
    output_stage: {topology: full-bridge}
    modulator: {type: natural-sampling, levels: three-level, carrier: 250 kHz}
    filter:
      inductor: {l: 33 uH}
      c_ground: {c: 1 uF, dielectric: polypropylene}
""",
)

"""Loudspeaker driven without an inductor-capacitor filter.

Without a filter the loudspeaker sees the bridge's pulses. A two-level stage has a full
square wave there at idle: its fundamental is 1.27 times the peak of the largest sine. The
voice coil's inductance limits the current, but the pulses waste power day and night, heat
the coil and radiate from the lead; a ferrite bead does nothing against it. A three-level
bridge gives no differential voltage at idle, which is why all good filterless parts use
it. The check takes the modulation alone, because a coil's inductance at the carrier is
hardly ever known. So a full bridge without stated levels, integrated or discrete, is
asked for them and not condemned: the whole answer hangs on that one word. A half bridge has
two levels whatever it says. A published half-bridge dock without filter is caught rightly.
Cure: three-level modulation, or a filter.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Constant,
    Input,
    Lever,
    Source,
    derivation,
)


def figure(levels: str, square: float) -> float:
    """Fundamental of the carrier at idle over the peak of the largest sine."""
    return square if levels == "two-level" else 0 * square


CHECK = Check(
    title="Idle carrier on a loudspeaker without filter",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="square for levels two-level, else 0",
    sentence="Without a filter, {levels} drive puts {figure:?no|a full-swing} idle carrier on the"
    " loudspeaker.",
    inputs={
        "levels": Input("levels_at_least"),
        "square": Constant(
            "1.2732",
            "fundamental of a square wave of amplitude 1",
            derivation("4/pi, Fourier series of a square wave"),
        ),
    },
    applies={"filter_kind": ("bead", "filterless")},
    limits=AtMost(
        major="0.5",
        basis={"major": COMMON_PRACTICE},
    ),
    levers=(Lever("modulator.levels", ("three-level",)),),
    sources=(
        Source("TPA2001D1 data sheet SLOS338D", "p. 6: why three-level drive needs no filter"),
        Source(
            "TPA2008D2 data sheet SLOS413C",
            "pp. 12 and 13: at idle high current in opposite phase, little in phase",
        ),
    ),
    cases=(
        Case(
            {"levels": "two-level"},
            gives="1.2732",
            origin="computed: spectrum of a sampled square wave",
        ),
        Case(
            {"levels": "three-level"},
            gives="0",
            origin="published: TPA2001D1 data sheet p. 6, no differential voltage at idle",
        ),
    ),
    topic=("output_stage",),
    fails="""
channels:
  main:
    output_stage: {topology: half-bridge}
    filter: {type: filterless}
""",
    passes="""
channels:
  main:
    output_stage: {topology: full-bridge}
    modulator: {levels: three-level}
    filter: {type: filterless}
""",
)

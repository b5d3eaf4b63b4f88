"""Heating current of the inductor at rated power.

The rated current of an inductor is the one that heats it by a stated rise, mostly 40 K.
The heat goes with the square: at 1.4 times the rated current the rise is 80 K, and a part
in warm air reaches the limit of its wire and core. The figure takes a continuous sine at
rated power, which music never is; so a figure above one is a reminder for the sine test,
and only above 1.4, where the sine test itself would destroy the part, a fault.

Ripple is included, and counts with the resistance that the winding has at the carrier: skin
and proximity effect make it ten times that at direct current and more, so that one ampere of
ripple can heat like three of audio. Core loss is not included: it has a check of its own.
Cure: a larger part, a lower resistance at the same inductance, stranded or flat wire, less
ripple.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.maths import larger


def figure(
    i_inductor_rms: float, i_rated_peak: float, r_ac: float, dcr: float, i_rms: float
) -> float:
    """Direct current that heats as much over heating current."""
    audio = i_rated_peak**2 / 2
    ripple = i_inductor_rms**2 - audio
    return (audio + larger(r_ac / dcr, 1.0) * ripple) ** 0.5 / i_rms


CHECK = Check(
    title="Inductor heating current vs. rating",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="sqrt(i_rated_peak^2/2 + r_ac/dcr (i_inductor_rms^2 - i_rated_peak^2/2)) / i_rms",
    sentence="Inductor heating current {i_rms:*figure} rms at rated power; rated {i_rms}"
    " ({figure:%}).",
    inputs={
        "i_inductor_rms": Input("i_inductor_rms"),
        "i_rated_peak": Input("i_rated_peak"),
        "r_ac": Input("filter.inductor.r_ac"),
        "dcr": Input("dcr_stated"),
        "i_rms": Input("filter.inductor.i_rms"),
    },
    applies={"filter_kind": "lc"},
    limits=AtMost(
        major="1.4",
        minor="1",
        basis={
            "major": derivation("twice the rated heat, 80 K where 40 K are rated"),
            "minor": derivation("the heating current of the data sheet"),
        },
    ),
    levers=(
        Lever(
            "filter.inductor.i_rms",
            ("1 A", "2 A", "3 A", "4 A", "5 A", "7 A", "10 A", "13 A", "16 A", "20 A"),
        ),
    ),
    sources=(
        Source("Murata, Power Inductors tutorial", "page 2: rise of 40 K"),
        derivation("heat of copper goes with the square of the current"),
    ),
    cases=(
        Case(
            {
                "i_inductor_rms": "5 A",
                "i_rated_peak": "7.07107 A",
                "r_ac": "20 mohm",
                "dcr": "20 mohm",
                "i_rms": "7 A",
            },
            gives="0.7143",
            origin="computed: 100 W into 4 ohm over the 7 A for 40 K of a Sagami 7W14A of 10 uH;"
            " 20 mohm assumed",
        ),
        Case(
            {
                "i_inductor_rms": "5.507 A",
                "i_rated_peak": "7.74597 A",
                "r_ac": "400 mohm",
                "dcr": "20 mohm",
                "i_rms": "13 A",
            },
            gives="0.46530",
            origin="computed: heat of 5.477 A in 20 mohm and of 0.574 A in 400 mohm, 0.7317 W,"
            " over that of 13 A in 20 mohm, 3.38 W; the root",
        ),
    ),
    topic=("filter.inductor.i_rms",),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 150 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge}
    modulator: {type: natural-sampling, carrier: 400 kHz}
    filter: {inductor: {l: 10 uH, dcr: 20 mohm, r_ac: 0.1 ohm, i_rms: 3 A}}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge}
    modulator: {type: natural-sampling, carrier: 400 kHz}
    filter: {inductor: {l: 10 uH, dcr: 20 mohm, r_ac: 0.1 ohm, i_rms: 7 A}}
""",
)

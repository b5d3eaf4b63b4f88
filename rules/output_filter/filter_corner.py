"""Corner of the output filter against the audio band.

A corner below the top of the band cuts treble that the product promises, and the phase
there turns fast. This check only places the corner; how much treble is lost over the rated
loads is judged by the treble response, and what is left of the carrier by the carrier
attenuation, because a corner alone says neither: with a Q of 0.7 the filter is 3 dB down
at its corner, with a Q of 1.4 it is 3 dB up. Published amplifiers with 27 kHz corners are
1.1 dB down at 20 kHz and sell well; corners need not stay above 30 kHz. A corner that the
spec states is compared with the one that follows from the parts. Of two sections the lower natural
frequency counts, with all capacitors in place. Cure: a smaller inductor
or capacitor, both for the same Q.
"""

from ...linter.check import AtLeast, Case, Check, Input, Lever, Source, derivation


def figure(f_corner: float, band_high: float) -> float:
    """Corner over the highest audio frequency."""
    return f_corner / band_high


CHECK = Check(
    title="Filter corner vs. top of the band",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="f_corner / band_high",
    sentence="Filter corner {f_corner}; top of the band {band_high} ({figure:%}).",
    inputs={
        "f_corner": Input("f_corner_lowest"),
        "band_high": Input("band_high"),
    },
    applies={"filter_kind": "lc", "filter_in_loop": "no"},
    limits=AtLeast(
        minor="1", basis={"minor": derivation("a corner inside the band cuts the band")}
    ),
    levers=(Lever("filter.inductor.l", "E6"), Lever("filter.c_across.c", "E6")),
    sources=(
        Source("MAX4295 data sheet", "p. 11: 30 kHz"),
        Source("TPA3001D1 data sheet SLOS398E", "p. 18, figs. 35 and 36: 27 kHz"),
    ),
    cases=(
        Case(
            {"f_corner": "30 kHz", "band_high": "20 kHz"},
            gives="1.5",
            origin="published: MAX4295 data sheet p. 11, 30 uH and 0.937 uF for 30 kHz",
        ),
        Case(
            {"f_corner": "20 kHz", "band_high": "20 kHz"},
            gives="1",
            origin="published: Group 14, University of Moratuwa, report 2026, p. 17: fourth "
            "order, 20 kHz",
        ),
    ),
    topic=("filter.inductor", "filter.corner"),
    fails="""
channels:
  main:
    band: 20 Hz .. 20 kHz
    output_stage: {topology: half-bridge}
    filter: {inductor: {l: 47 uH}, c_across: {c: 2.2 uF, dielectric: polypropylene}}
""",
    passes="""
channels:
  main:
    band: 20 Hz .. 20 kHz
    output_stage: {topology: half-bridge}
    modulator: {feedback: before-filter}
    filter: {inductor: {l: 22 uH}, c_across: {c: 680 nF, dielectric: polypropylene}}
""",
)

"""Treble response of the filter over the rated loads.

A filter is right for one resistance. Into half of it the treble droops, into twice of it it
rises: 22 uH and 0.68 uF are 0.3 dB down at 20 kHz into 4 ohm and 1.5 dB up into 8 ohm. The check
takes the filter with every rated load as a resistor and compares the largest deviation of the
band, up or down, with what the spec allows; where it claims nothing, treble-response-unclaimed
answers. Mostly that is at the top; a corner inside the band peaks below it: 100 uH and 2.09 uF
into 69 ohm rise by 20 dB at 11 kHz and by 7 dB at 18 kHz. A damper counts: its capacitor belongs
to the filter below its own corner. A reference board with 22 uH, 0.47 uF and a damper of 10 ohm
and 0.1 uF measured 0.67 dB down at 20 kHz into 4 ohm where this computes 0.50. It does not apply
where the loop takes its signal behind the filter: such a loop levels the response. The real
loudspeaker with its coil has a check of its own. Cure: inductor and capacitor for the middle of
the rated loads, or a higher corner.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation


def figure(treble_deviation: float, f_deviation: float, response: float) -> float:
    """Largest deviation over the deviation allowed; f_deviation tells where it lies."""
    return treble_deviation / response * (f_deviation / f_deviation)


CHECK = Check(
    title="Treble deviation over the rated loads vs. limit",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="treble_deviation / response, treble_deviation at f_deviation",
    sentence="Response deviates by {treble_deviation} at {f_deviation} over the rated loads; limit"
    " {response}.",
    inputs={
        "treble_deviation": Input("treble_deviation"),
        "f_deviation": Input("f_deviation"),
        "response": Input("claims.response"),
    },
    applies={
        "filter_kind": "lc",
        "filter_in_loop": "no",
        "response_claimed": "yes",
        "loudspeaker.piezo": "none",
    },
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={
            "major": derivation("deviation allowed by the spec"),
            "minor": derivation("half of it is left for amplifier and loudspeaker"),
        },
    ),
    otherwise="a higher carrier, or a second section, so that the corner of the filter can rise",
    levers=(
        Lever("filter.inductor.l", "E12"),
        Lever("filter.c_across.c", "E12"),
        Lever("filter.c_ground.c", "E12", {"output_stage.topology": "full-bridge"}),
    ),
    sources=(
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 11, fig. 8: frequency response, 4 ohm and 8 ohm",
        ),
        derivation("Kirchhoff's laws along the ladder"),
    ),
    cases=(
        Case(
            {"treble_deviation": "3.0103 dB", "f_deviation": "30 kHz", "response": "3.01 dB"},
            gives="1.0",
            origin="published: MAX4295 data sheet p. 11, Butterworth for 30 kHz: half the power",
            tolerance=0.002,
        ),
        Case(
            {"treble_deviation": "1.532 dB", "f_deviation": "20 kHz", "response": "3 dB"},
            gives="0.510667",
            origin="computed: node equations solved with matrices, 22 uH and 0.68 uF into 8 ohm",
        ),
    ),
    topic=("filter.inductor", "filter.c_across", "filter.c_ground"),
    asked_from="prototype",
    peaks_inside=("filter.inductor.l", "filter.c_across.c", "filter.c_ground.c"),
    fails="""
claims: {response: 3 dB}
channels:
  main:
    band: 20 Hz .. 20 kHz
    load_range: 2 ohm .. 8 ohm
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {inductor: {l: 47 uH}, c_across: {c: 680 nF, dielectric: polypropylene}}
""",
    passes="""
claims: {response: 3 dB}
channels:
  main:
    band: 20 Hz .. 20 kHz
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {feedback: before-filter}
    filter: {inductor: {l: 22 uH}, c_across: {c: 470 nF, dielectric: polypropylene}}
""",
)

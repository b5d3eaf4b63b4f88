"""Treble response of the filter with the real voice coil.

A voice coil is a resistor in series with an inductance. In the treble the inductance takes over,
draws less current and no longer damps the filter: the response rises toward the corner, and
above the band the filter peaks. 22 uH and 0.68 uF with 6.5 ohm rise by 0.5 dB at 20 kHz with a
coil of 0.1 mH and by 1.9 dB with 0.5 mH, like the filter without load. The check compares the
largest deviation of the band, up or down, with what the spec allows, coil at its cold
resistance. It speaks only where the coil's inductance and a deviation are stated and the loop
does not take its signal behind the filter. Cure: a series R-C across the loudspeaker that keeps
its impedance level, a higher corner, or a loop around the filter.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation


def figure(treble_deviation_coil: float, f_deviation_coil: float, response: float) -> float:
    """Deviation with the network of coils over the one allowed; f_deviation_coil tells where."""
    return treble_deviation_coil / response * (f_deviation_coil / f_deviation_coil)


CHECK = Check(
    title="Treble deviation with the voice coil vs. limit",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="treble_deviation_coil / response, treble_deviation_coil at f_deviation_coil",
    sentence="Response deviates by {treble_deviation_coil} at {f_deviation_coil} with the voice"
    " coil; limit {response}.",
    inputs={
        "treble_deviation_coil": Input("treble_deviation_coil"),
        "f_deviation_coil": Input("f_deviation_coil"),
        "response": Input("claims.response"),
    },
    applies={
        "filter_kind": "lc",
        "filter_in_loop": "no",
        "response_claimed": "yes",
        "loudspeaker.zobel": "none",
        "loudspeaker.piezo": "none",
        "line": "none",
    },
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={
            "major": derivation("deviation allowed by the spec"),
            "minor": derivation("half of it is left for amplifier and loudspeaker"),
        },
    ),
    levers=(Lever("filter.inductor.l", "E12"), Lever("filter.c_across.c", "E12")),
    sources=(
        derivation("Kirchhoff's laws along the ladder with the coil as its end"),
        Source(
            "E. Mattingly, TPA3255_ClassD_PBTL, README and recorded sweeps",
            "sweep of 19 Nov. 2025, 18:06: 2.25 of the mid band at 50.8 kHz into 15 ohm",
        ),
    ),
    cases=(
        Case(
            {
                "treble_deviation_coil": "1.859 dB",
                "f_deviation_coil": "20 kHz",
                "response": "3 dB",
            },
            gives="0.619667",
            origin="computed: node equations solved with matrices, coil of 6.5 ohm and 0.5 mH",
        ),
        Case(
            {
                "treble_deviation_coil": "0.5225 dB",
                "f_deviation_coil": "20 kHz",
                "response": "0.5225 dB",
            },
            gives="1.0",
            origin="computed: node equations solved with matrices, coil of 6.5 ohm and 0.1 mH",
        ),
    ),
    topic=("loudspeaker.l_e",),
    peaks_inside=(
        "filter.inductor.l",
        "filter.c_across.c",
        "filter.c_ground.c",
        "loudspeaker.l_e",
        "loudspeaker.r_e",
    ),
    fails="""
claims: {response: 3 dB}
channels:
  main:
    band: 20 Hz .. 20 kHz
    output_stage: {topology: half-bridge}
    filter: {inductor: {l: 33 uH}, c_across: {c: 1 uF, dielectric: polypropylene}}
    loudspeaker: {z_rated: 8 ohm, r_e: 6.5 ohm, l_e: 0.5 mH}
""",
    passes="""
claims: {response: 3 dB}
channels:
  main:
    band: 20 Hz .. 20 kHz
    output_stage: {topology: half-bridge}
    modulator: {feedback: before-filter}
    filter: {inductor: {l: 22 uH}, c_across: {c: 470 nF, dielectric: polypropylene}}
    loudspeaker: {z_rated: 8 ohm, r_e: 6.5 ohm, l_e: 0.1 mH}
""",
)

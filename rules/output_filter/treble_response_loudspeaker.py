"""Treble response of the filter with the real voice coil.

A voice coil is a resistor in series with an inductance. In the treble the inductance
takes over, draws less current and no longer damps the filter: the response rises toward
the corner, and above the band the filter peaks. 22 uH and 0.68 uF with 6.5 ohm rise by
0.5 dB at 20 kHz with a coil of 0.1 mH and by 1.9 dB with 0.5 mH, like the filter without
load. The check compares the deviation at the top of the band with what the spec allows,
coil at its cold resistance. It speaks only where the coil's inductance is stated and the
loop does not take its signal behind the filter. Cure: a series R-C across the loudspeaker
that keeps its impedance level, a higher corner, or a loop around the filter.
"""

from typing import Any

from ...linter.check import Assumption, AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.lc import deviation_db

NONE = derivation("no second section fitted")
NO_DAMPER = derivation("no damper fitted")


def figure(
    band_high: Any,
    l_total: Any,
    c_total: Any,
    r_e: Any,
    l_e: Any,
    series: Any,
    parallel: Any,
    n_legs: Any,
    dcr: Any,
    l_2: Any,
    c_2: Any,
    damper_r: Any,
    damper_c: Any,
    connection: str,
    response: Any,
) -> Any:
    """Deviation with the network of coils over the deviation allowed."""
    coils = series / parallel
    in_series = n_legs if connection == "each-terminal" else 1
    found = deviation_db(
        band_high,
        l_total,
        c_total,
        r_e * coils,
        l_e * coils,
        n_legs * dcr,
        n_legs * l_2,
        c_2,
        damper_r * in_series,
        damper_c / in_series,
    )
    return abs(found) / response


CHECK = Check(
    title="Treble response with the voice coil",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="abs of the deviation in dB at band_high with (r_e + 2 pi j band_high l_e)"
    " series/parallel behind the ladder l_total with n_legs dcr, c_total, n_legs l_2, c_2 and"
    " beside it damper_r in series with damper_c (connection each-terminal: r times n_legs, c"
    " over n_legs), over response",
    sentence="At {band_high}, with a voice coil of {r_e} and {l_e}, the filter deviates by"
    " {figure} times the {response} allowed.",
    inputs={
        "band_high": Input("band_high", "Hz", "highest audio frequency of the channel"),
        "l_total": Input("l_total", "H", "inductance in line with the load"),
        "c_total": Input("c_total", "F", "capacitance across the load"),
        "r_e": Input("r_e", "ohm", "DC resistance of one voice coil, cold"),
        "l_e": Input("loudspeaker.l_e", "H", "inductance of one voice coil"),
        "series": Input("loudspeaker.series", "1", "loudspeakers in series"),
        "parallel": Input("loudspeaker.parallel", "1", "loudspeakers in parallel"),
        "n_legs": Input("n_legs", "1", "legs of the channel"),
        "dcr": Input("filter.inductor.dcr", "mohm", "resistance of one inductor"),
        "l_2": Input(
            "filter.second_stage.l",
            "H",
            "second inductor of one leg",
            Assumption("0 H", "absent", NONE),
        ),
        "c_2": Input(
            "filter.second_stage.c",
            "F",
            "second capacitor across the load",
            Assumption("0 F", "absent", NONE),
        ),
        "damper_r": Input(
            "filter.damper.r",
            "ohm",
            "resistor of one damper",
            Assumption("1 ohm", "absent", NO_DAMPER),
        ),
        "damper_c": Input(
            "filter.damper.c",
            "F",
            "capacitor of one damper",
            Assumption("0 F", "absent", NO_DAMPER),
        ),
        "connection": Input(
            "filter.damper.connection",
            "word",
            "how the damper is connected",
            Assumption("across", "absent", NO_DAMPER),
        ),
        "response": Input("claims.response", "dB", "deviation allowed in the band"),
    },
    applies={"filter_kind": "lc", "filter_in_loop": "no", "loudspeaker.zobel": "none"},
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={
            "major": derivation("deviation allowed by the spec, 3 dB where it is silent"),
            "minor": derivation("half of it is left for amplifier and loudspeaker"),
        },
    ),
    levers=(Lever("filter.inductor.l", "E12"), Lever("filter.c_across.c", "E12")),
    sources=(
        derivation("Kirchhoff's laws along the ladder with the coil as its end"),
        Source("Mattingly, class-D amplifier measurements", "gain 2.25 at 50.8 kHz into 15 ohm"),
    ),
    cases=(
        Case(
            {
                "band_high": "20 kHz",
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "r_e": "6.5 ohm",
                "l_e": "0.5 mH",
                "series": 1.0,
                "parallel": 1.0,
                "n_legs": 1.0,
                "dcr": "0 ohm",
                "l_2": "0 H",
                "c_2": "0 F",
                "damper_r": "1 ohm",
                "damper_c": "0 F",
                "connection": "across",
                "response": "1.859 dB",
            },
            gives="1.0",
            origin="computed: node equations solved with matrices, +1.859 dB",
        ),
        Case(
            {
                "band_high": "20 kHz",
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "r_e": "6.5 ohm",
                "l_e": "0.1 mH",
                "series": 1.0,
                "parallel": 1.0,
                "n_legs": 1.0,
                "dcr": "0 ohm",
                "l_2": "0 H",
                "c_2": "0 F",
                "damper_r": "1 ohm",
                "damper_c": "0 F",
                "connection": "across",
                "response": "0.5225 dB",
            },
            gives="1.0",
            origin="computed: node equations solved with matrices, +0.5225 dB",
        ),
    ),
    topic=("loudspeaker.l_e",),
    asked_from=None,
    peaks_inside=(
        "filter.inductor.l",
        "filter.c_across.c",
        "filter.c_ground.c",
        "loudspeaker.l_e",
        "loudspeaker.r_e",
    ),
    fails="""
channels:
  main:
    band: 20 Hz .. 20 kHz
    output_stage: {topology: half-bridge}
    filter: {inductor: {l: 33 uH}, c_across: {c: 1 uF, dielectric: polypropylene}}
    loudspeaker: {z_rated: 8 ohm, r_e: 6.5 ohm, l_e: 0.5 mH}
""",
    passes="""
channels:
  main:
    band: 20 Hz .. 20 kHz
    output_stage: {topology: half-bridge}
    modulator: {feedback: before-filter}
    filter: {inductor: {l: 22 uH}, c_across: {c: 470 nF, dielectric: polypropylene}}
    loudspeaker: {z_rated: 8 ohm, r_e: 6.5 ohm, l_e: 0.1 mH}
""",
)

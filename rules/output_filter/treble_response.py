"""Treble response of the filter over the rated loads.

A filter is right for one resistance. Into half of it the treble droops, into twice of it it
rises: 22 uH and 0.68 uF are 0.3 dB down at 20 kHz into 4 ohm and 1.5 dB up into 8 ohm. The
check takes the filter with every rated load as a resistor and compares the larger deviation
at the top of the band with what the spec allows (3 dB where it says nothing). A damper
counts: its capacitor belongs to the filter below its own corner. A reference board with 22
uH, 0.47 uF and a damper of 10 ohm and 0.1 uF measured 0.67 dB down at 20 kHz into 4 ohm where
this computes 0.50. It does not apply where the loop takes its signal behind the filter: such
a loop levels the response. The real loudspeaker with its coil has a check of its own. Cure:
inductor and capacitor for the middle of the rated loads, or a higher corner.
"""

from typing import Any

from ...linter.check import Assumption, AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.lc import deviation_db
from ..formulas.maths import larger

NONE = derivation("no second section fitted")
NO_DAMPER = derivation("no damper fitted")


def figure(
    band_high: Any,
    l_total: Any,
    c_total: Any,
    load_low: Any,
    load_high: Any,
    n_legs: Any,
    dcr: Any,
    l_2: Any,
    c_2: Any,
    damper_r: Any,
    damper_c: Any,
    connection: str,
    response: Any,
) -> Any:
    """Larger deviation over the deviation allowed."""
    in_series = n_legs if connection == "each-terminal" else 1
    far = (n_legs * dcr, n_legs * l_2, c_2, damper_r * in_series, damper_c / in_series)
    low = deviation_db(band_high, l_total, c_total, load_low, 0 * l_total, *far)
    high = deviation_db(band_high, l_total, c_total, load_high, 0 * l_total, *far)
    return larger(abs(low), abs(high)) / response


CHECK = Check(
    title="Treble response over the rated loads",
    figure=figure,
    unit="1",
    each="channel",
    stake="performance",
    formula="larger of the deviations in dB at band_high with load_low and load_high behind the"
    " ladder l_total with n_legs dcr, c_total, n_legs l_2, c_2 and beside the load damper_r in"
    " series with damper_c (connection each-terminal: r times n_legs, c over n_legs), over"
    " response",
    sentence="At {band_high}, with loads from {load_low} to {load_high}, the filter deviates by"
    " {figure} times the {response} allowed.",
    inputs={
        "band_high": Input("band_high", "Hz", "highest audio frequency of the channel"),
        "l_total": Input("l_total", "H", "inductance in line with the load"),
        "c_total": Input("c_total", "F", "capacitance across the load"),
        "load_low": Input("load_low", "ohm", "lowest rated load"),
        "load_high": Input("load_high", "ohm", "highest rated load"),
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
    applies={"filter_kind": "lc", "filter_in_loop": "no"},
    limits=AtMost(
        major="1",
        minor="0.5",
        basis={
            "major": derivation("deviation allowed by the spec, 3 dB where it is silent"),
            "minor": derivation("half of it is left for amplifier and loudspeaker"),
        },
    ),
    levers=(
        Lever("filter.inductor.l", "E12"),
        Lever("filter.c_across.c", "E12"),
        Lever("filter.c_ground.c", "E12"),
    ),
    sources=(
        Source("IRAUDAMP7D reference design, rev 2.9", "frequency response, 4 ohm and 8 ohm"),
        derivation("Kirchhoff's laws along the ladder"),
    ),
    cases=(
        Case(
            {
                "band_high": "30 kHz",
                "l_total": "30 uH",
                "c_total": "0.937 uF",
                "load_low": "4 ohm",
                "load_high": "4 ohm",
                "n_legs": 1.0,
                "dcr": "0 ohm",
                "l_2": "0 H",
                "c_2": "0 F",
                "damper_r": "1 ohm",
                "damper_c": "0 F",
                "connection": "across",
                "response": "3.01 dB",
            },
            gives="1.0",
            origin="published: MAX4295 data sheet p. 11, Butterworth filter for 30 kHz",
            tolerance=0.002,
        ),
        Case(
            {
                "band_high": "20 kHz",
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "load_low": "4 ohm",
                "load_high": "8 ohm",
                "n_legs": 1.0,
                "dcr": "0 ohm",
                "l_2": "0 H",
                "c_2": "0 F",
                "damper_r": "1 ohm",
                "damper_c": "0 F",
                "connection": "across",
                "response": "1.532 dB",
            },
            gives="1.0",
            origin="computed: node equations solved with matrices, +1.532 dB into 8 ohm",
        ),
    ),
    topic=("filter.inductor", "filter.c_across", "filter.c_ground"),
    peaks_inside=("filter.inductor.l", "filter.c_across.c", "filter.c_ground.c"),
    fails="""
channels:
  main:
    band: 20 Hz .. 20 kHz
    load_range: 2 ohm .. 8 ohm
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {inductor: {l: 47 uH}, c_across: {c: 680 nF, dielectric: polypropylene}}
""",
    passes="""
channels:
  main:
    band: 20 Hz .. 20 kHz
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {feedback: before-filter}
    filter: {inductor: {l: 22 uH}, c_across: {c: 470 nF, dielectric: polypropylene}}
""",
)

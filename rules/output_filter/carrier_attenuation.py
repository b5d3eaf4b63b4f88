"""Attenuation of the carrier by the output filter.

The filter has to stop the lowest frequency that the bridge puts between its inputs: the
carrier of a two-level stage, twice the carrier of a three-level bridge. The figure comes
from the real network, inductor resistance and second section included, so a
fourth-order filter is treated fairly; without the load, because a voice coil is an
inductor at the carrier and does not help (a filter of nothing but inductors fails). Less
than 20 dB, a carrier at three times the corner, is no filter; the trade's usual 30 dB of a
nominal design leave 27 dB when inductor and capacitor both sit at the low end of their
usual tolerances, and that is the lower limit here. Small filters at or above the carrier,
meant against radio interference in filterless parts, are another thing and state `bead`
or `filterless`. Cure: a lower corner, a higher carrier, three-level modulation or a second section.
"""

from typing import Any

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.lc import ladder_gain
from ..formulas.maths import log10

NO_LOAD = float("inf")
NONE = derivation("no second section fitted")


def figure(
    f_carrier_effective: Any,
    l_total: Any,
    c_total: Any,
    n_legs: Any,
    dcr: Any,
    l_2: Any,
    c_2: Any,
) -> Any:
    """Attenuation between the inputs of the filter and the load, in dB."""
    gain = ladder_gain(
        f_carrier_effective, l_total, c_total, NO_LOAD, n_legs * dcr, n_legs * l_2, c_2
    )
    return -20 * log10(gain)


CHECK = Check(
    title="Attenuation of the carrier",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="-20 log10 of the gain of the ladder l_total with n_legs dcr, c_total, n_legs l_2,"
    " c_2, without load, at f_carrier_effective",
    sentence="The filter ({l_total}, {c_total}) attenuates the carrier at {f_carrier_effective} by"
    " {figure}.",
    inputs={
        "f_carrier_effective": Input("f_carrier_effective", "Hz", "lowest carrier frequency"),
        "l_total": Input("l_total", "H", "inductance in line with the load"),
        "c_total": Input("c_total", "F", "capacitance across the load"),
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
    },
    applies={"filter_kind": "lc"},
    limits=AtLeast(
        major="20 dB", minor="27 dB", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(
        Lever("filter.inductor.l", "E6"),
        Lever("filter.c_across.c", "E6"),
        Lever("filter.c_ground.c", "E6"),
        Lever("modulator.carrier", "10 kHz"),
    ),
    sources=(
        derivation("Kirchhoff's laws along the ladder; 40 dB per decade above the corner"),
        Source("Universidad de Cantabria thesis 2017", "25 kHz corner at 165 kHz: 32.8 dB"),
    ),
    cases=(
        Case(
            {
                "f_carrier_effective": "400 kHz",
                "l_total": "22 uH",
                "c_total": "0.68 uF",
                "n_legs": 1.0,
                "dcr": "0 ohm",
                "l_2": "0 H",
                "c_2": "0 F",
            },
            gives="39.416 dB",
            origin="computed: node equations solved with matrices",
        ),
        Case(
            {
                "f_carrier_effective": "165 kHz",
                "l_total": "70 uH",
                "c_total": "0.579 uF",
                "n_legs": 2.0,
                "dcr": "0 ohm",
                "l_2": "0 H",
                "c_2": "0 F",
            },
            gives="32.8 dB",
            origin="published: Universidad de Cantabria thesis, 25 kHz corner, 32.8 dB"
            " (asymptote; the true curve is 0.2 dB lower)",
            tolerance=0.01,
        ),
    ),
    topic=("filter.inductor", "filter.c_across", "filter.c_ground"),
    fails="""
channels:
  main:
    output_stage: {topology: half-bridge}
    modulator: {carrier: 150 kHz}
    filter: {inductor: {l: 10 uH}, c_across: {c: 680 nF, dielectric: polypropylene}}
""",
    passes="""
channels:
  main:
    output_stage: {topology: half-bridge}
    modulator: {carrier: 400 kHz}
    filter: {inductor: {l: 22 uH ± 20 %}, c_across: {c: 680 nF, dielectric: polypropylene}}
""",
)

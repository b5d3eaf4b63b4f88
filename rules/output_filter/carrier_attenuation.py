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

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source, derivation
from ..formulas.maths import log10


def figure(carrier_gain: float) -> float:
    """Attenuation between the inputs of the filter and the load, in dB."""
    return -20 * log10(carrier_gain)


CHECK = Check(
    title="Carrier attenuation of the filter without load",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="-20 log10 carrier_gain",
    sentence="Filter attenuates the carrier by {figure} without load (passes {carrier_gain}).",
    inputs={
        "carrier_gain": Input("carrier_gain", unit="%"),
    },
    applies={"filter_kind": "lc"},
    limits=AtLeast(
        major="20 dB", minor="27 dB", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(
        Lever("filter.inductor.l", "E6"),
        Lever("filter.c_across.c", "E6"),
        Lever("filter.c_ground.c", "E6", {"output_stage.topology": "full-bridge"}),
        Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),
    ),
    sources=(
        derivation("Kirchhoff's laws along the ladder; 40 dB per decade above the corner"),
        Source(
            "J. Estefania Vilumbrales, thesis, Universidad de Cantabria, 2017",
            "report p. 18: 25 kHz corner at 165 kHz: 32.8 dB",
        ),
    ),
    cases=(
        Case(
            {"carrier_gain": "1.06957 %"},
            gives="39.416 dB",
            origin="computed: node equations solved with matrices, 22 uH, 0.68 uF, 400 kHz",
        ),
        Case(
            {"carrier_gain": "2.34953 %"},
            gives="32.8 dB",
            origin="published: J. Estefania Vilumbrales, thesis 2017, p. 18: 25 kHz at 165 kHz,"
            " 32.8 dB (asymptote; without load the curve is 0.2 dB lower)",
            tolerance=0.01,
        ),
    ),
    topic=("filter.inductor", "filter.c_across", "filter.c_ground"),
    asked_from="prototype",
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

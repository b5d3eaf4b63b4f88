"""Resistance of the inductors against the load.

The copper of both inductors is in line with the load; its share of the load's resistance
is the share of power that becomes heat there, and it lowers the damping of the cone. A
bridge counts two inductors. Three percent are 0.13 dB and nobody hears them, but at 100 W
they are 3 W in two small parts. The limit is about economy, not about function: the power
that is really missing shows in the output power, the heat in the heating current. Cure: a
larger part of the same inductance, or less inductance at a higher carrier.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..derived.ways import left_out


def figure(n_legs: float, dcr: float, z_load: float) -> float:
    """Copper of all inductors over the load."""
    return n_legs * dcr / z_load


CHECK = Check(
    title="Inductor resistance vs. load",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="n_legs dcr / z_load",
    sentence="Inductor resistance {dcr} each, {figure} of the {z_load} load in all.",
    inputs={
        "n_legs": Input("n_legs"),
        "dcr": Input("filter.inductor.dcr", default=left_out("0 ohm", "copper of the inductors")),
        "z_load": Input("z_load"),
    },
    applies={"filter_kind": "lc"},
    limits=AtMost(minor="3 %", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("filter.inductor.dcr", "1 mohm"),),
    sources=(
        derivation("divider of load and copper"),
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 28: specifies 20 mohm or less; 4 ohm",
        ),
    ),
    cases=(
        Case(
            {"n_legs": 1.0, "dcr": "20 mohm", "z_load": "4 ohm"},
            gives="0.5 %",
            origin="computed: by hand, IRAUDAMP7D: 20 mohm, 4 ohm",
        ),
        Case(
            {"n_legs": 2.0, "dcr": "300 mohm", "z_load": "10.8 ohm"},
            gives="5.5556 %",
            origin="published: J. Estefania Vilumbrales, thesis 2017, annexes p. 13: 0.3 ohm each, "
            "p. 37: 10.8 ohm; share by hand",
        ),
    ),
    topic=("filter.inductor.dcr",),
    fails="""
channels:
  main:
    rated_load: 8 ohm
    output_stage: {topology: full-bridge}
    filter: {inductor: {l: 35 uH, dcr: 300 mohm}}
""",
    passes="""
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    filter: {inductor: {l: 22 uH, dcr: 20 mohm}}
""",
)

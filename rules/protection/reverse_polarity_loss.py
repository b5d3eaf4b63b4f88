"""Heat of the part that blocks a reversed source.

The whole supply current runs through it.  A Schottky diode drops its forward voltage: heat
is that voltage times the mean current.  A transistor is a resistance: heat is its resistance
times the square of the rms current, a fraction of the diode's.

A surface-mounted package on ordinary board copper sheds about 2 W at an acceptable rise
(common practice, no source), which makes more than that minor: it needs copper or a
heatsink of its own, and its heat belongs into the inside air.  The figure is at rated power
of all channels; music gives less.  First fix: a transistor in place of the diode.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation


def figure(p_blocking: float) -> float:
    return p_blocking


DIODE = """
supply: {source: dc-source, rails: single, v_rail: 24 V, r_source: 50 mohm, bulk: {c: 470 uF}}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    band: 60 Hz .. 16 kHz
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 88 %}
protection: {reverse_polarity: {method: schottky, v_f: 0.45 V}}
"""

CHECK = Check(
    title="Power in the reverse-polarity part",
    figure=figure,
    unit="W",
    each="product",
    stake="performance",
    formula="p_blocking",
    sentence="Reverse-polarity part dissipates {figure} at rated power.",
    inputs={"p_blocking": Input("p_blocking")},
    applies={"supply.source": ("battery", "dc-source")},
    limits=AtMost(minor="2 W", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("protection.reverse_polarity.r_on", "1 mohm"),),
    sources=(derivation("a drop times the mean current, a resistance times the squared rms"),),
    cases=(
        Case(
            {"p_blocking": "2.061 W"},
            gives="2.061 W",
            origin="computed: 0.45 V at a mean of 4.580 A, averaged over a period by quadrature",
        ),
        Case(
            {"p_blocking": "0.4452 W"},
            gives="0.4452 W",
            origin="derived: 5 mohm at 9.436 A rms, the crest of the same current taken as rms",
        ),
    ),
    topic=("protection.reverse_polarity",),
    fails=DIODE,
    passes=DIODE.replace("method: schottky, v_f: 0.45 V", "method: p-channel, r_on: 6 mohm"),
)

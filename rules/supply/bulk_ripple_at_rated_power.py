"""Ripple current of the bulk capacitors at a rated sine.

The same sum as at programme level, with all channels at rated power. A sine at full power
lasts for minutes on a test bench and never in music; capacitors take minutes to heat, and
they are judged for their life at programme level. So a group that is within its rating at
programme and beyond it at rated sine is usable and only minor: it limits how long a
continuous full-power test, a siren or an organ pedal may last.

If the product is sold for continuous tones, take this figure as the one that counts.
First fix: more capacitors side by side, or film capacitors at the switches that take the
carrier part.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.bulk import CARRIER_RIPPLE
from ..formulas.supply import BRIDGE_CURRENT


def figure(i_bulk: float, i_ripple: float) -> float:
    return i_bulk / i_ripple


CHECK = Check(
    title="Bulk capacitor ripple current at rated power vs. rating",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="i_bulk / i_ripple",
    sentence="Bulk capacitors of a rail carry {i_bulk} rms at rated power; rated {i_ripple}"
    " ({figure:%}).",
    inputs={
        "i_bulk": Input("i_bulk_rated"),
        "i_ripple": Input("supply.bulk.i_ripple"),
    },
    limits=AtMost(
        minor="1", basis={"minor": derivation("the printed life no longer holds at full sine")}
    ),
    levers=(Lever("supply.bulk.i_ripple", "0.5 A"),),
    sources=(
        BRIDGE_CURRENT,
        CARRIER_RIPPLE,
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 4, table 1: 120 W, 4 ohm; p. 21, fig. 25: 470 uF per rail and channel",
        ),
    ),
    cases=(
        Case(
            {"i_bulk": "2.291 A", "i_ripple": "3 A"},
            gives="0.763667",
            origin="computed: switched waveform, 5 A at depth 0.8 on a half bridge: 2.291 A",
        ),
        Case(
            {"i_bulk": "2.55 A", "i_ripple": "2 A"},
            gives="1.275",
            origin="computed: switched waveform, carrier part of a two-level bridge, 5 A, 0.8",
        ),
    ),
    topic=("supply.bulk.i_ripple",),
    fails="""
supply:
  source: dc-source
  rails: split
  v_rail: 35 V
  r_source: 500 mohm
  bulk: {c: 940 uF, i_ripple: 1.5 A}
channels:
  main:
    rated_power: 120 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
""",
    passes="""
supply:
  source: dc-source
  rails: single
  v_rail: 30 V
  r_source: 50 mohm
  bulk: {c: 3300 uF, i_ripple: 6 A}
channels:
  main:
    rated_power: 50 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge}
    modulator: {levels: three-level}
""",
)

"""Ripple current of the bulk capacitors at programme level.

Ripple current heats a capacitor through its series resistance; its rating is the current
that it carries for its printed life at its printed temperature. Two parts add in squares:
the carrier part, since the source lead is an inductance at the carrier and the capacitors
at the switches are small, and the audio part as far as the source does not carry it.

Heat needs minutes, so the programme counts: one eighth of the power of the sine unless
the spec states another crest factor. A sine at rated power is judged apart and only as
minor, since no music holds it: a reference board draws 3 A from its capacitors at rated
sine, 1 A at programme, and lives. Above the rating is major, above 70 % of it minor
(common practice; a rating holds at one frequency and temperature).

All of the carrier part is put on the bulk capacitors; a good film or ceramic group takes
some of it. Channels on one clock add their carrier currents straight.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.bulk import CARRIER_RIPPLE
from ..formulas.supply import BRIDGE_CURRENT, EIGHTH_POWER


def figure(i_bulk: float, i_ripple: float) -> float:
    return i_bulk / i_ripple


CHECK = Check(
    title="Bulk capacitor ripple current at programme level vs. rating",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="i_bulk / i_ripple",
    sentence="Bulk capacitors of a rail carry {i_bulk} rms at programme level; rated {i_ripple}"
    " ({figure:%}).",
    inputs={
        "i_bulk": Input("i_bulk_programme"),
        "i_ripple": Input("supply.bulk.i_ripple"),
    },
    limits=AtMost(
        major="1",
        minor="0.7",
        basis={
            "major": derivation("the printed life no longer holds"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("supply.bulk.i_ripple", "0.5 A"),),
    sources=(
        BRIDGE_CURRENT,
        CARRIER_RIPPLE,
        EIGHTH_POWER,
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 4, table 1: 120 W, 4 ohm; p. 21, fig. 25: 470 uF per rail and channel",
        ),
    ),
    cases=(
        Case(
            {"i_bulk": "1.346 A", "i_ripple": "2 A"},
            gives="0.673",
            origin="computed: switched waveform, 15 W into 4 ohm from 35 V, no source: 1.346 A",
        ),
        Case(
            {"i_bulk": "2.291 A", "i_ripple": "1.5 A"},
            gives="1.52733",
            origin="computed: switched waveform, 5 A at depth 0.8 on a half bridge: 2.291 A",
        ),
    ),
    topic=("supply.bulk.i_ripple",),
    asked_from="production",
    fails="""
supply:
  source: dc-source
  rails: split
  v_rail: 35 V
  r_source: 500 mohm
  bulk: {c: 940 uF, i_ripple: 0.5 A}
channels:
  main:
    rated_power: 120 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
""",
    passes="""
supply:
  source: dc-source
  rails: split
  v_rail: 35 V
  r_source: 50 mohm
  bulk: {c: 940 uF, i_ripple: 3 A}
channels:
  main:
    rated_power: 120 W
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
""",
)

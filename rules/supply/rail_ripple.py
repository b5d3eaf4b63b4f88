"""Ripple of the rail at the lowest note.

A bridge draws its power in pulses of twice the audio frequency, a half bridge in pulses of
the audio frequency itself, which are larger. Source and bulk capacitors share this current
like any two impedances in parallel. In the bass the source carries nearly all of it: 3.3 mF
at 40 Hz are 1.2 ohm, beside some 50 milliohm of a stiff source or pack. Rules that size
the capacitors as if the source gave a steady current ask for twenty times too much.

So the ripple is what the source resistance makes of the current, and without a stated
resistance there is nothing to judge. It is asked for where ripple or capacitance of the source
is stated, so that a bare source raises no question. The figure counts all channels at rated
power at their lowest note, peak to peak. Above 10 % of the rail the design pays for voltage
that it does not use (minor; common practice, no source). Whether the trough still carries
the claimed power is judged for each channel by itself.

First fix: a lower source resistance; only then capacitors.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever
from ..formulas.supply import BRIDGE_CURRENT, SHARED_RIPPLE


def figure(v_rail_ripple: float, v_rail: float) -> float:
    return v_rail_ripple / v_rail


CHECK = Check(
    title="Rail ripple at the lowest note",
    figure=figure,
    unit="%",
    each="product",
    stake="performance",
    formula="v_rail_ripple / v_rail",
    sentence="The lowest note at rated power moves the {v_rail} rail by {v_rail_ripple} peak to"
    " peak ({figure}).",
    inputs={
        "v_rail_ripple": Input("v_rail_ripple"),
        "v_rail": Input("v_rail_low"),
    },
    limits=AtMost(minor="10 %", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("supply.r_source", "1 mohm"), Lever("supply.bulk.c", "E6")),
    sources=(BRIDGE_CURRENT, SHARED_RIPPLE),
    cases=(
        Case(
            {"v_rail_ripple": "0.666 V", "v_rail": "30 V"},
            gives="2.22 %",
            origin="computed: phasor and ODE, 200 W, 30 V, 20 Hz, 3.3 mF, 50 mohm",
        ),
        Case(
            {"v_rail_ripple": "5.25 V", "v_rail": "35 V"},
            gives="15 %",
            origin="published: IRAUDAMP7D manual, figure 29, rails near 35 V swing 5 .. 5.5 V",
        ),
    ),
    topic=("supply.r_source", "battery.cell.r_internal", "supply.c_source", "supply.ripple"),
    fails="""
supply: {source: dc-source, rails: single, v_rail: 24 V, r_source: 400 mohm, bulk: {c: 2200 uF}}
channels:
  main:
    rated_power: 90 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, efficiency: 90 %}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 30 V, r_source: 50 mohm, bulk: {c: 3300 uF}}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, efficiency: 90 %}
""",
)

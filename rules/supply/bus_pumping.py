"""Rise of the rail by bus pumping.

A half bridge sends load current back into the rail that is not at work: while the output
is positive, the lower switch feeds the negative rail, and the other way round. A rectifier,
most converters and any series diode cannot take this current, so the rail capacitors are
charged above the source, once in every half cycle of the lowest note. The rise goes with
one over frequency, load and capacitance, and it is largest not at full output but at a
depth of 2/pi. All half bridges that play the same bass add up. A full bridge returns only
what a reactive loudspeaker returns, a few per cent of that; while the phase of its
impedance at the low end of the band is not stated, a bridge is taken to return nothing,
and a pass leans on it.

First fix: feed the bass of two channels to their half bridges in opposition and turn one
loudspeaker round, so that one channel draws what the other returns. Otherwise more
capacitance, a bridge, a source that sinks, or a high-pass.

More than 10 % of rail is the point from which the rise deserves its own sum (a share of
the rail alone says little; the trip and the ratings are judged by their own checks).
The total capacitance counts, the source's own included: a reference board with 470 uF a
channel shows 5 V on a bench supply where the board alone would give 30 V or more. While that
capacitance is unknown, half bridges stay open. A source that is not known to sink is
taken not to: a pass counts, a finding names it.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever
from ..formulas.pumping import BRIDGE_PUMPING, HALF_BRIDGE_PUMPING, PUMPING_TREND


def figure(v_pumping: float, v_rail: float) -> float:
    return v_pumping / v_rail


CHECK = Check(
    title="Rail rise by bus pumping",
    figure=figure,
    unit="%",
    each="product",
    stake="performance",
    formula="v_pumping / v_rail",
    sentence="Bus pumping lifts the {v_rail} rail by {v_pumping} at the lowest notes ({figure}).",
    inputs={
        "v_pumping": Input("v_pumping"),
        "v_rail": Input("v_rail_high"),
    },
    limits=AtMost(minor="10 %", basis={"minor": COMMON_PRACTICE}),
    levers=(Lever("supply.bulk.c", "E6"),),
    sources=(HALF_BRIDGE_PUMPING, BRIDGE_PUMPING, PUMPING_TREND),
    cases=(
        Case(
            {"v_pumping": "6.737 V", "v_rail": "50 V"},
            gives="13.474 %",
            origin="computed: switched simulation, 50 V, 4 ohm, 20 Hz, 4700 uF (6.735 V)",
        ),
        Case(
            {"v_pumping": "5.25 V", "v_rail": "35 V"},
            gives="15 %",
            origin="computed: IRAUDAMP7D, fig. 29: rails near 35 V swing 5.25 V, all taken as rise",
        ),
    ),
    topic=("supply.sinks_current", "supply.c_source", "supply.bulk"),
    asked_from="prototype",
    fails="""
supply:
  source: dc-source
  rails: split
  v_rail: 50 V
  sinks_current: no
  c_source: 0 F
  bulk: {c: 1000 uF}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {m_max: 90 %}
    loudspeaker: {phase: 0 deg}
""",
    passes="""
supply:
  source: dc-source
  rails: split
  v_rail: 50 V
  sinks_current: no
  c_source: 10 mF
  bulk: {c: 10 mF}
channels:
  main:
    rated_load: 8 ohm
    output_stage: {topology: half-bridge}
    modulator: {m_max: 90 %}
    loudspeaker: {phase: 0 deg}
""",
)

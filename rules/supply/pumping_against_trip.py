"""Pumped rail against the over-voltage trip.

When the bass pumps the rail up to the over-voltage trip, the amplifier mutes, the rail
falls, the amplifier starts again: a loud passage is chopped. This is the usual way in which
pumping shows itself, on the bench and in the field, and it is a fault of function, not of
strength: the trip does its work and nothing is destroyed. Hence major, no more.

The trip counts at its lowest, the rail at its highest. Where the rail alone reaches the trip
over-voltage-trip-window says so; this check then judges only what the pumping adds. It does
not concern a source that sinks, nor bridges while no phase of their loads is stated:
bus-pumping asks for it. A battery that is the rail itself sinks the current and does not
pump, unless a series diode keeps the current out.

First fix: opposite phase for the bass of two half bridges, then capacitance. Raising the
trip helps only as far as capacitors and switches allow it, and is no proposal here.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, Source, derivation
from ..formulas.maths import larger
from ..formulas.pumping import BRIDGE_PUMPING, HALF_BRIDGE_PUMPING


def figure(v_rail: float, v_pumping: float, v_trip: float) -> float:
    return (v_rail + v_pumping) / larger(v_trip, v_rail)


CHECK = Check(
    title="Pumped rail vs. over-voltage trip",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="(v_rail + v_pumping) / larger of v_trip and v_rail",
    sentence="Bus pumping lifts the {v_rail} rail by {v_pumping}; over-voltage trip {v_trip}.",
    inputs={
        "v_rail": Input("v_rail_high"),
        "v_pumping": Input("v_pumping"),
        "v_trip": Input("protection.over_voltage.v_trip"),
    },
    applies={"protection.over_voltage": "fitted", "rail_pumps": "yes"},
    limits=AtMost(
        major="1", basis={"major": derivation("at the trip the amplifier stops playing")}
    ),
    levers=(Lever("supply.bulk.c", "E6"),),
    sources=(
        HALF_BRIDGE_PUMPING,
        BRIDGE_PUMPING,
        Source(
            "R. MacLachlan, laboratory notebook",
            "27 Jun 2019: rail climbs from 75 V to 90 V, the trip cycles on and off",
        ),
    ),
    cases=(
        Case(
            {"v_rail": "75 V", "v_pumping": "15 V", "v_trip": "80 V"},
            gives="1.125",
            origin="published: R. MacLachlan, notebook, 27 Jun 2019: 75 V to 90 V, trip at 80 V",
        ),
        Case(
            {"v_rail": "50 V", "v_pumping": "6.737 V", "v_trip": "60 V"},
            gives="0.94562",
            origin="computed: switched simulation, 50 V, 4 ohm, 20 Hz, 4700 uF (6.735 V)",
        ),
    ),
    topic=("protection.over_voltage",),
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
protection: {over_voltage: {v_trip: 60 V}}
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
protection: {over_voltage: {v_trip: 60 V}}
""",
)

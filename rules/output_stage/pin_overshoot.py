"""Ringing at the supply pins of an integrated stage against its absolute maximum.

Each edge moves the load current from one switch to the other, and the inductance between
the pins and the local capacitor answers with L di/dt.  The peak is measured at the pins
with a short probe; a rail that is clean at the bulk capacitor says nothing about it.  Power
stages that burn at the supply pins usually have their local capacitors too far away.

The ringing is taken as stated (``output_stage.v_overshoot``, best measured) or estimated from
the loop inductance and the edge: L I / t, the least that a ramp of current leaves, while the
supply stays within the range that the maker recommends for the part with its own edges, else
twice that, the bound of an undamped loop.  An estimate never makes this finding critical, and a
pass on it waits for a measurement at production.  First fixes: the local ceramic capacitors on
the same side and next to the pins, a plane below them, a small snubber at the output pins,
a lower rail.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation
from ..hazards import STAGE_LOST


def figure(v_static_peak: float, v_pin_overshoot: float, v_supply_abs: float) -> float:
    """Peak at the pins over the absolute maximum."""
    return (v_static_peak + v_pin_overshoot) / v_supply_abs


CHECK = Check(
    title="Supply pin voltage with ringing vs. absolute maximum",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="(v_static_peak + v_pin_overshoot) / v_supply_abs",
    sentence="Supply pins see {v_supply_abs:*figure} ({v_static_peak} plus {v_pin_overshoot}"
    " ringing); absolute maximum {v_supply_abs} ({figure:%}).",
    inputs={
        "v_static_peak": Input("v_static_peak", meaning="supply pin to pin, with pumping"),
        "v_pin_overshoot": Input("v_pin_overshoot"),
        "v_supply_abs": Input("output_stage.device.v_supply_abs"),
    },
    applies={"output_stage.devices": "integrated"},
    limits=AtMost(
        critical="100 %",
        minor="95 %",
        basis={
            "critical": derivation("absolute maximum rating of the part"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("output_stage.l_loop", "0.5 nH"),
        Lever("supply.v_rail", "0.5 V"),
        Lever("battery.series", "1", when={"rail_feed": "pack"}),
        Lever("supply.bulk.c", "E6"),
    ),
    sources=(
        derivation("L di/dt of the loop on top of the supply"),
        Source("e2e.ti.com threads 1085293 and 1349788", "supply pins burned, local decoupling"),
    ),
    cautions=(STAGE_LOST,),
    cases=(
        Case(
            {"v_static_peak": "55 V", "v_pin_overshoot": "15 V", "v_supply_abs": "69 V"},
            "101.4 %",
            "computed: rail peak of e2e.ti.com thread 1440241 with 5 nH, 12 A, 8 ns: 15 V",
        ),
        Case(
            {"v_static_peak": "30 V", "v_pin_overshoot": "4 V", "v_supply_abs": "37 V"},
            "91.89 %",
            "derived: 30 V rail with 4 V of ringing",
        ),
    ),
    topic=("output_stage.l_loop", "output_stage.v_overshoot"),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 30 V, sinks_current: yes}
channels:
  main:
    output_stage:
      topology: full-bridge
      devices: integrated
      v_overshoot: {value: 9 V, from: measured}
      device: {v_supply_abs: 37 V}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 30 V, sinks_current: yes}
channels:
  main:
    output_stage:
      topology: full-bridge
      devices: integrated
      v_overshoot: {value: 4 V, from: measured}
      device: {v_supply_abs: 37 V}
""",
)

"""Junction temperature with the fan stopped, in a sine at rated power that lasts.

A fan wears out, clogs or is blocked, and nobody notices: it is the fault that a blown heatsink
has to survive. The heatsink is then left with what it has in still air, and the junction follows
it up, to where an over-temperature trip with a sensor that can be there ends the rise, or to
its limit.

The rating may fail then, the part may not: only its absolute maximum counts, and it is critical
where it is missed by more than such an estimate may err. A heatsink temperature that was measured
with the fan running says nothing here. First fixes: a trip at the heatsink or the package, a
detector of the fan that mutes, a heatsink that needs no fan.
"""

from ...linter.check import (
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    derivation,
)
from ..formulas.maths import smaller
from ..hazards import RUNAWAY
from .junction_at_rated_sine import CHECK as WITH_FAN


def figure(t_j_max: float, t_junction_stopped: float, t_junction_trip: float) -> float:
    """Distance from the limit, in the steady state without fan or at the trip."""
    return t_j_max - smaller(t_junction_stopped, t_junction_trip)


BLOWN = """
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: integrated
      p_idle: 1 W
      efficiency: 85 %
      device: {t_j_max: 150 degC, r_th_jc: 1 K/W, r_th_cs: 0 K/W}
thermal:
  enclosure: none
  heatsink: {r_th_sa: 12 K/W, fan: {r_th_sa: 2 K/W}, place: outside, touch: under-1-s,
    material: metal}
safety: {users: ordinary}
protection: {over_temperature: TRIP}
"""

CHECK = Check(
    title="Junction temperature with the fan stopped vs. limit",
    figure=figure,
    unit="K",
    each="channel",
    stake="rating",
    formula="t_j_max - smaller of t_junction_stopped and t_junction_trip",
    sentence="Fan stopped, rated sine: junction {t_junction_stopped}; with the over-temperature"
    " trip {figure:+below|above} its {t_j_max} limit.",
    inputs={
        "t_j_max": Input("output_stage.device.t_j_max"),
        "t_junction_stopped": Input("t_junction_stopped"),
        "t_junction_trip": WITH_FAN.inputs["t_junction_trip"],
    },
    applies={"thermal.heatsink.fan": "fitted"},
    limits=AtLeast(
        critical="-10 K",
        major="0 K",
        basis={key: WITH_FAN.limits.basis[key] for key in ("critical", "major")},
    ),
    levers=(
        Lever("thermal.heatsink.r_th_sa",
              ("0.5 K/W", "1 K/W", "1.5 K/W", "2 K/W", "3 K/W", "4 K/W", "6 K/W", "8 K/W")),
        Lever("protection.over_temperature.t_trip", "5 K"),
    ),
    sources=(derivation("heat balance with the heatsink in still air"),),
    cautions=(RUNAWAY,),
    cases=(
        Case({"t_j_max": "150 degC", "t_junction_stopped": "264 degC",
              "t_junction_trip": "400 degC"}, gives="-114 K",
             origin="computed: by hand, 40 degC + 17.2 W x (12 + 1) K/W"),
        Case({"t_j_max": "150 degC", "t_junction_stopped": "264 degC",
              "t_junction_trip": "107 degC"}, gives="43 K",
             origin="computed: by hand, a trip at 90 degC and 17 W x 1 K/W"),
    ),
    fails=BLOWN.replace("TRIP", "none"),
    passes=BLOWN.replace("TRIP", "{t_trip: 90 degC, at: heatsink}"),
    topic=("thermal.heatsink.fan",),
    asked_from="prototype",
)  # fmt: skip

"""Junction temperature with the heatsink covered, while the programme plays.

A newspaper lies on the fins, the amplifier stands in a curtain or in a rack without a gap: the
safety standards of audio equipment cover each group of openings in turn, because somebody will.
Air then reaches half of the fins at best, and the heatsink counts with twice the thermal
resistance that it has in free air (common practice, no source).

It is an abnormal use and lasts as long as nobody notices, so the programme counts, at one
eighth of the rated power or at the stated crest factor if that is more, and only the absolute
maximum of the junction.  A trip with a sensor that can be there ends the rise.  Without one
the switches are lost: major, and not critical, because how far a heatsink is covered is a guess.
Heatsinks with a fan are judged with the fan stopped.  First fix: a trip at the heatsink.
"""

from ...linter.check import AtLeast, Case, Check, Input, derivation, quoted
from ..hazards import RUNAWAY
from .stopped_fan_junction import CHECK as FAN_STOPPED
from .stopped_fan_junction import figure as left

COVERED = quoted(
    "EN 60065, 6th edition, clause 4.3.10",
    "as told on the mailing list emc-pstc, message 12409: openings likely to be covered at once,"
    " by a newspaper or a curtain, are covered in turn",
)


def figure(t_j_max: float, t_junction_covered: float, t_junction_trip: float) -> float:
    """Distance from the limit, in the steady state or at the trip."""
    return left(t_j_max, t_junction_covered, t_junction_trip)


FINS = """
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: integrated
      p_idle: 2 W
      efficiency: 85 %
      device: {t_j_max: 150 degC, r_th_jc: 1 K/W, r_th_cs: 0 K/W}
environment: {ambient: 0 degC .. 40 degC}
signal: {crest_factor: 12 dB}
thermal:
  enclosure: none
  heatsink: {r_th_sa: 12 K/W, fan: none, place: outside, touch: under-1-s, material: metal}
safety: {users: ordinary}
protection: {over_temperature: TRIP}
"""

CHECK = Check(
    title="Junction temperature with the heatsink covered vs. limit",
    figure=figure,
    unit="K",
    each="channel",
    stake="rating",
    formula="t_j_max - smaller of t_junction_covered and t_junction_trip",
    sentence="Heatsink covered, programme playing: junction {t_junction_covered}; with the"
    " over-temperature trip {figure:+below|above} its {t_j_max} limit.",
    inputs={
        "t_j_max": Input("output_stage.device.t_j_max"),
        "t_junction_covered": Input("t_junction_covered"),
        "t_junction_trip": FAN_STOPPED.inputs["t_junction_trip"],
    },
    applies={"heatsink": "fitted", "thermal.heatsink.fan": "none"},
    limits=AtLeast(major="0 K", basis={"major": FAN_STOPPED.limits.basis["major"]}),
    levers=FAN_STOPPED.levers,
    sources=(COVERED, derivation("heat balance with twice the resistance of the heatsink")),
    cautions=(RUNAWAY,),
    cases=(
        Case(
            {
                "t_j_max": "150 degC",
                "t_junction_covered": "153.8 degC",
                "t_junction_trip": "400 degC",
            },
            gives="-3.8 K",
            origin="computed: by hand, 40 degC + 4.55 W x (24 + 1) K/W",
        ),
        Case(
            {
                "t_j_max": "150 degC",
                "t_junction_covered": "153.8 degC",
                "t_junction_trip": "107 degC",
            },
            gives="43 K",
            origin="computed: by hand, a trip at 90 degC and 17 W x 1 K/W",
        ),
    ),
    topic=("thermal.heatsink",),
    fails=FINS.replace("TRIP", "none"),
    passes=FINS.replace("TRIP", "{t_trip: 90 degC, at: heatsink}"),
)

"""Over-temperature trip against the temperature in stated use.

A trip that acts at a summer concert is a fault of the design and not a protection.  In
the hottest stated ambient, with the air of the box and the sun on it, the place where the
trip senses must stay below the lower end of its tolerance while the programme plays, or
during a lasting sine where the cooling is stated for a full sine.

Published cases are many: small integrated stages on a bare board that shut down as the
supply rises from 16 to 18 V.  First fixes: better cooling, a higher trip if the junction
has room for it, less power in continuous use.  A trip sensed on the board cannot be
judged: nothing tells how warm that spot is. Discrete switches have no sensor at the junction:
see over-temperature-sensor.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source


def figure(t_trip: float, t_sensed: float) -> float:
    """How far the sensed temperature stays below the trip."""
    return t_trip - t_sensed


_BASE = """
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
  heatsink: {r_th_sa: 10 K/W, place: outside}
protection: {over_temperature: {t_trip: TRIP, at: heatsink}}
"""

CHECK = Check(
    title="Sensor temperature in use vs. over-temperature trip",
    figure=figure,
    unit="K",
    each="channel",
    stake="rating",
    formula="t_trip - t_sensed",
    sentence="Over-temperature sensor reaches {t_sensed} in stated use, {figure:+below|above} the"
    " {t_trip} trip.",
    inputs={
        "t_trip": Input("protection.over_temperature.t_trip"),
        "t_sensed": Input("t_sensed"),
    },
    applies={"protection.over_temperature.at": ("heatsink", "case", "junction")},
    limits=AtLeast(
        major="0 K",
        minor="10 K",
        basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE},
    ),
    levers=(
        Lever("thermal.heatsink.r_th_sa",
              ("0.5 K/W", "1 K/W", "1.5 K/W", "2 K/W", "3 K/W", "4 K/W", "6 K/W", "8 K/W")),
        Lever("protection.over_temperature.t_trip", "5 K"),
    ),
    sources=(
        Source("sonocotta, esp32-audio-dock, README",
               "TAS5805M: shutdown at 16 V bare, 17 and 18 V with two sizes of heatsink"),
        Source("International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
               "p. 5: 54 degC at 2 x 15 W; p. 25: trip at 100 degC"),
    ),
    cases=(
        Case({"t_trip": "100 degC", "t_sensed": "54 degC"}, gives="46 K",
             origin="published: IRAUDAMP7D rev 2.9, case at 2 x 15 W in 25 degC"),
        Case({"t_trip": "100 degC", "t_sensed": "69 degC"}, gives="31 K",
             origin="computed: by hand, the same 29 K above an ambient of 40 degC"),
    ),
    fails=_BASE.replace("TRIP", "75 degC"),
    passes=_BASE.replace("TRIP", "100 degC"),
    topic=("protection.over_temperature",),
)  # fmt: skip

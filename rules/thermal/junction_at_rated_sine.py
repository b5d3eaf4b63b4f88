"""Junction temperature in a sine at rated power that lasts.

A full sine on every channel is no music, but somebody will play it: a test bench, an
organ note, a stuck oscillator.  It need not be comfortable, it must be safe.  So the
junction is taken in the steady state of rated power on all channels, with the hot
on-resistance, and only its absolute maximum makes this check more than a remark; it is
critical where it misses that by more than such an estimate may err.

Where the part would end its heat before there is a balance, no resistance is known and none
is made up: the heat stays as it is there, and where it leads is the finding. A rating that
lasts for a time (`rated_duration`) is judged at its end, on a stage that is warm from its
programme; heatsink or board then need their time constant or mass.

Where an over-temperature trip senses the heatsink, the rise ends there: the junction is
then no hotter than the heatsink at the trip plus its own rise above it.  An integrated
stage of which nothing else is said is taken to shut itself down at its limit.  Without a
trip nothing ends the rise.  First fixes: a trip at the heatsink, then a larger one.

A published board of 2 x 120 W reaches about 125 degC in 25 degC air and trips after
150 s; so a junction that comes within 25 K of its limit is only a remark.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.maths import smaller
from ..hazards import HOT_SURFACE


def figure(t_j_max: float, t_junction_rated: float, t_junction_trip: float) -> float:
    """Distance from the limit, at the steady state or at the trip."""
    return t_j_max - smaller(t_junction_rated, t_junction_trip)


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
  heatsink: {r_th_sa: SINK, place: outside}
protection: {over_temperature: none}
"""

CHECK = Check(
    title="Junction temperature at a continuous rated sine vs. limit",
    figure=figure,
    unit="K",
    each="channel",
    stake="rating",
    formula="t_j_max - smaller of t_junction_rated and t_junction_trip",
    sentence="Continuous rated sine heats the junction to {t_junction_rated}; counting the trip,"
    " {figure:+below|above} its {t_j_max} limit.",
    inputs={
        "t_j_max": Input("output_stage.device.t_j_max"),
        "t_junction_rated": Input("t_junction_rated"),
        "t_junction_trip": Input("t_junction_trip", default=Assumption(
                float("inf"), "absent", derivation("without a trip nothing ends the rise")
            )),
    },
    limits=AtLeast(
        critical="-10 K",
        major="0 K",
        minor="25 K",
        basis={
            "critical": derivation("absolute maximum, missed by more than the 20 % that heat"
                                   " and resistance of an estimate are uncertain"),
            "major": Source("absolute maximum of the device data sheet", "no page given"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("thermal.heatsink.r_th_sa",
              ("0.5 K/W", "1 K/W", "1.5 K/W", "2 K/W", "3 K/W", "4 K/W", "6 K/W", "8 K/W")),
        Lever("protection.over_temperature.t_trip", "5 K"),
    ),
    sources=(Source("IRAUDAMP7D reference design rev 2.9",
                    "2 x 120 W: case 80 degC, shutdown after 150 s, trip at 100 degC"
                    "; no page given"),),
    cautions=(HOT_SURFACE,),
    cases=(
        Case({"t_j_max": "150 degC", "t_junction_rated": "158.6 degC",
              "t_junction_trip": "400 degC"}, gives="-8.6 K",
             origin="computed: root finding for 8 A, 20 mohm rising 1.75 times, 0.4 W, 40 K/W, "
             "50 degC gives 158.6 degC"),
        Case({"t_j_max": "150 degC", "t_junction_rated": "190 degC",
              "t_junction_trip": "145 degC"}, gives="5 K",
             origin="computed: by hand, IRAUDAMP7D at its trip of 100 degC, 7.1 K/W and 6.3 W "
             "a package"),
    ),
    fails=_BASE.replace("SINK", "6 K/W"),
    passes=_BASE.replace("SINK", "3 K/W"),
    topic=("output_stage.device.t_j_max", "output_stage.device.r_th_jc",
           "output_stage.device.r_th_ja", "thermal.heatsink"),
    asked_from="prototype",
)  # fmt: skip

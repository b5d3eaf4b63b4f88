"""Touch temperature of the heatsink.

A heatsink that reaches the outside is the hottest metal that people can touch.

The limits depend on how long a hand stays and on the material: metal gives its heat to the
skin much faster than plastic. They are limits of the product standard for a room of 25 degC
and are not moved to hotter ambients, so the rise at one eighth of the power counts and not
the temperature on the hottest day; a programme of less power (a stated crest factor above
12 dB) does not lower it, one of more power raises it. All values of the table are from
memory and are not verified against the standard: buy it before claiming conformity.

Above the first class a marking is needed and the surface must not need to be touched; above
the second one ordinary persons must not be able to reach it. Instructed and skilled persons
are allowed the second class. First fixes: a larger heatsink, a guard, a plastic cover. The
sun is not part of that judgement, but in the sun a dark surface gets 25 K hotter still.
"""

from ...linter.check import Case, Check, Input, Lever
from ..formulas.constants import TABLE_KELVIN
from ..hazards import HOT_SURFACE
from .touch_temperature_enclosure import FORMULA, LIMITS, SOURCES, TOUCHED, figure

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
  heatsink: {r_th_sa: SINK, place: outside, touch: under-1-s, material: metal}
safety: {users: ordinary}
"""

CHECK = Check(
    title="Heatsink touch temperature vs. limit",
    figure=figure,
    unit="K",
    each="product",
    stake="safety",
    formula=FORMULA,
    sentence="Heatsink rises {rise} above a 25 °C room, to {figure:+below|above} the touch limit"
    " ({material}, touched {touch:words}).",
    inputs={
        "touch": Input("thermal.heatsink.touch"),
        "material": Input("thermal.heatsink.material"),
        "users": Input("safety.users"),
        "rise": Input("heatsink_rise"),
        "kelvin": TABLE_KELVIN,
    },
    applies={"heatsink_to_touch": "fitted", "thermal.heatsink.touch": TOUCHED},
    limits=LIMITS,
    levers=(
        Lever("thermal.heatsink.r_th_sa",
              ("0.5 K/W", "1 K/W", "1.5 K/W", "2 K/W", "3 K/W", "4 K/W", "6 K/W", "8 K/W")),
    ),
    sources=SOURCES,
    cautions=(HOT_SURFACE,),
    cases=(
        Case({"touch": "under-1-s", "material": "metal", "users": "ordinary", "rise": "48 K",
              "kelvin": "1 K"}, gives="-3 K",
             origin="computed: by hand, 88 degC in 40 degC is 73 degC in a room, TS1 ends at 70"),
        Case({"touch": "under-1-s", "material": "metal", "users": "instructed", "rise": "48 K",
              "kelvin": "1 K"}, gives="7 K",
             origin="computed: by hand, the same surface against TS2 at 80 degC"),
    ),
    fails=_BASE.replace("SINK", "16 K/W"),
    passes=_BASE.replace("SINK", "6 K/W"),
    topic=("thermal.heatsink",),
    asked_from="production",
)  # fmt: skip

"""Touch temperature of the enclosure.

All heat that is set free in the box leaves through its walls, by natural convection and
radiation. The mean wall counts here; above a heat source it is hotter.

The limits depend on how long a hand stays and on the material: metal gives its heat to the
skin much faster than plastic. They are limits of the product standard for a room of 25 degC
and are not moved to hotter ambients, so the rise at one eighth of the power counts and not
the temperature on the hottest day. All values of the table are from memory and are not
verified against the standard: buy it before claiming conformity.

Above the first class a marking is needed and the surface must not need to be touched; above
the second one ordinary persons must not be able to reach it. Instructed and skilled persons
are allowed the second class. First fixes: a larger box, vents, the heatsink outside. The
sun is not part of that judgement, but in the sun a dark surface gets 25 K hotter still.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtLeast,
    Case,
    Check,
    Input,
    from_memory,
)
from ..formulas.constants import TABLE_KELVIN
from ..formulas.touch import allowed_rise
from ..hazards import HOT_SURFACE


def figure(touch: str, material: str, users: str, rise: float, kelvin: float) -> float:
    """Rise still allowed over a room of 25 degC."""
    return allowed_rise(touch, material, users) * kelvin - rise


FORMULA = "(limit of touch, material, users - 25) kelvin - rise"
TOUCHED = ("under-1-s", "1-to-10-s", "10-s-to-1-min", "over-1-min")
LIMITS = AtLeast(
    critical="-10 K",
    major="0 K",
    minor="5 K",
    basis={
        "critical": from_memory("IEC 62368-1 table 38, class TS2"),
        "major": from_memory("IEC 62368-1 table 38, class TS1"),
        "minor": COMMON_PRACTICE,
    },
)
SOURCES = (
    from_memory("IEC 62368-1 clause 9, table 38; 77 degC of plastic seen quoted"),
    from_memory("ISO 13732-1 and IEC Guide 117, burn thresholds behind the table"),
)
_BASE = """
supply: {source: dc-source, rails: single, v_rail: 40 V}
channels:
  main:
    rated_power: 100 W
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: integrated
      p_idle: IDLE
      efficiency: 75 %
      device: {t_j_max: 150 degC, r_th_jc: 1 K/W, r_th_cs: 0 K/W}
thermal:
  heatsink: {r_th_sa: 1 K/W, place: inside}
  enclosure:
    width: 150 mm
    height: 120 mm
    depth: 80 mm
    touch: over-1-min
    material: plastic
safety: {users: ordinary}
"""

CHECK = Check(
    title="Enclosure touch temperature vs. limit",
    figure=figure,
    unit="K",
    each="product",
    stake="safety",
    formula=FORMULA,
    sentence="Enclosure rises {rise} above a 25 °C room, to {figure:+below|above} the touch limit"
    " ({material}, touched {touch:words}).",
    inputs={
        "touch": Input("thermal.enclosure.touch"),
        "material": Input("thermal.enclosure.material"),
        "users": Input("safety.users"),
        "rise": Input("enclosure_rise"),
        "kelvin": TABLE_KELVIN,
    },
    applies={"thermal.enclosure.touch": TOUCHED},
    limits=LIMITS,
    sources=SOURCES,
    cautions=(HOT_SURFACE,),
    cases=(
        Case({"touch": "1-to-10-s", "material": "plastic", "users": "ordinary", "rise": "7.33 K",
              "kelvin": "1 K"}, gives="44.67 K",
             origin="computed: root finding gives 7.33 K for 0.3 x 0.2 x 0.1 m and 15 W; 77 - 25"),
        Case({"touch": "over-1-min", "material": "wood", "users": "ordinary", "rise": "20 K",
              "kelvin": "1 K"}, gives="3 K",
             origin="computed: by hand, 48 degC less 25 degC less 20 K"),
    ),
    fails=_BASE.replace("IDLE", "20 W"),
    passes=_BASE.replace("IDLE", "2 W"),
    topic=("thermal.enclosure",),
    asked_from="production",
)  # fmt: skip

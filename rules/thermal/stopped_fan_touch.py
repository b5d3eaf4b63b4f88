"""Touch temperature of the heatsink with its fan stopped.

A fan stops unnoticed, and the metal that it kept cool is then what somebody touches. Under such
a single fault the product standard allows a surface the second class, 10 K above the first one;
beyond it ordinary persons are burnt. The rise at one eighth of the power in still air counts, in
a room of 25 degC, as with the fan running.

A trip that senses the heatsink or the case of a switch ends the rise of the heatsink, and counts
where it acts; one on the board or inside a part lets the heatsink get as hot as it will. All
values of the table are from memory and are not verified against the standard. First fixes: a
lower trip at the heatsink, a larger heatsink, a guard.
"""

from ...linter.check import (
    Assumption,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    derivation,
    from_memory,
)
from ..formulas.constants import T_ROOM, TABLE_KELVIN
from ..formulas.maths import smaller
from ..formulas.touch import allowed_rise
from ..hazards import HOT_SURFACE, also
from .stopped_fan_junction import BLOWN
from .touch_temperature_enclosure import SOURCES, TOUCHED


def figure(
    touch: str, material: str, users: str, rise: float, t_trip: float, t_room: float, kelvin: float
) -> float:
    """Rise still allowed over a room of 25 degC, fan stopped."""
    return allowed_rise(touch, material, users) * kelvin - smaller(rise, t_trip - t_room)


CHECK = Check(
    title="Heatsink touch temperature with the fan stopped vs. limit",
    figure=figure,
    unit="K",
    each="product",
    stake="safety",
    formula="(limit of touch, material, users - 25) kelvin - smaller of rise and t_trip - t_room",
    sentence="Fan stopped: heatsink rises {rise} in a 25 °C room; with the trip"
    " {figure:+below|above} the touch limit ({material}, {touch}).",
    inputs={
        "touch": Input("thermal.heatsink.touch"),
        "material": Input("thermal.heatsink.material"),
        "users": Input("safety.users"),
        "rise": Input("rise_stopped"),
        "t_trip": Input("t_heatsink_trip", default=Assumption(
                float("inf"), "absent", derivation("without a trip nothing ends the rise")
            )),
        "t_room": T_ROOM,
        "kelvin": TABLE_KELVIN,
    },
    applies={"thermal.heatsink.fan": "fitted", "thermal.heatsink.touch": TOUCHED},
    limits=AtLeast(
        critical="-10 K",
        minor="0 K",
        basis={
            "critical": from_memory("IEC 62368-1 table 38, class TS2 under single fault"),
            "minor": from_memory("IEC 62368-1 table 38, class TS1"),
        },
    ),
    levers=(
        Lever("thermal.heatsink.r_th_sa",
              ("0.5 K/W", "1 K/W", "1.5 K/W", "2 K/W", "3 K/W", "4 K/W", "6 K/W", "8 K/W")),
        Lever("protection.over_temperature.t_trip", "5 K"),
    ),
    sources=SOURCES,
    cautions=(also(HOT_SURFACE, "Guard or mark what people can reach."),),
    cases=(
        Case({"touch": "under-1-s", "material": "metal", "users": "ordinary", "rise": "80 K",
              "t_trip": "75 degC", "t_room": "25 degC", "kelvin": "1 K"}, gives="-5 K",
             origin="computed: by hand, the trip ends it at 75 degC, TS1 at 70 degC"),
        Case({"touch": "under-1-s", "material": "metal", "users": "ordinary", "rise": "30 K",
              "t_trip": "75 degC", "t_room": "25 degC", "kelvin": "1 K"}, gives="15 K",
             origin="computed: by hand, 70 - 25 - 30"),
    ),
    fails=BLOWN.replace("TRIP", "none").replace("12 K/W", "30 K/W"),
    passes=BLOWN.replace("TRIP", "{t_trip: 60 degC ± 4 K, at: heatsink}"),
    topic=("thermal.heatsink.fan",),
    asked_from="prototype",
)  # fmt: skip

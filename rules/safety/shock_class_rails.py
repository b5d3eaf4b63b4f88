"""Largest direct voltage between parts of the supply that a hand can bridge.

Rails judged one by one hide what counts: two rails of 45 V are 45 V to ground, but 90 V
from one to the other, and fingers reach both.  The figure takes all rails together, or the
source ahead of a converter where that is higher, at full charge and with its tolerance.

Up to 60 V direct voltage is felt at most (class 1 of IEC 62368-1): bare parts are allowed.
Up to 120 V hurts without injuring (class 2): for anyone but instructed or skilled persons
one barrier has to be in between.  Above that even a shroud is not enough.  The figure is the
voltage over what the access allows: 60 V bare for ordinary persons, 120 V bare for the
instructed and skilled, 120 V behind a shroud.  Above 1 is critical; within 5 % is minor, as
one more cell or another charger crosses it.  Rails in an enclosure that takes a tool to open
are not judged here; for their service see the checks of the stored charge.

First fix: fewer cells in series, or an enclosure.  All limits are from memory.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever
from ..formulas.constants import DC_CLASS_1, DC_CLASS_2
from ..formulas.safety import ENERGY_CLASSES
from ..hazards import SHOCK


def figure(v_touch: float, users: str, access: str, class_1: float, class_2: float) -> float:
    return v_touch / (class_1 if access == "bare" and users == "ordinary" else class_2)


RAILS = """
supply: {source: dc-source, rails: split, v_rail: 45 V ± 2 %}
safety: {users: ordinary, rail_access: bare}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Touchable rail voltage vs. limit",
    figure=figure,
    unit="1",
    each="product",
    stake="safety",
    formula="v_touch / (class_1 for bare parts (access) and ordinary users, else class_2)",
    sentence="{v_touch} DC between parts of the supply; limit {v_touch:/figure} for {users}"
    " persons with {access} access.",
    inputs={
        "v_touch": Input("v_touch"),
        "users": Input("safety.users"),
        "access": Input("access_seen"),
        "class_1": DC_CLASS_1,
        "class_2": DC_CLASS_2,
    },
    applies={"access_seen": ("bare", "shrouded")},
    limits=AtMost(
        critical="1",
        minor="0.95",
        basis={"critical": ENERGY_CLASSES, "minor": ENERGY_CLASSES},
    ),
    levers=(
        Lever("supply.v_rail", "1 V"),
        Lever("battery.series", "1", when={"rail_feed": "pack"}),
    ),
    sources=(ENERGY_CLASSES,),
    cautions=(SHOCK,),
    cases=(
        Case(
            {"v_touch": "90 V", "users": "ordinary", "access": "bare"},
            gives="1.5",
            origin="derived: two rails of 45 V, 90 V from one to the other",
        ),
        Case(
            {"v_touch": "58.8 V", "users": "ordinary", "access": "bare"},
            gives="0.98",
            origin="from memory: class 1 ends at 60 V; fourteen lithium cells at 4.2 V",
        ),
    ),
    topic=("safety.rail_access",),
    asked_from="prototype",
    fails=RAILS,
    passes=RAILS.replace("45 V", "25 V"),
)

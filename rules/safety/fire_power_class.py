"""Power of the source in a fault against the enclosure that has to hold a fire.

What a source can feed into a bad contact or a shorted part decides how far a fire gets.  Up
to 15 W nothing spreads, up to 100 W a reasonable enclosure holds it, above that, class 3 of
IEC 62368-1, the material of enclosure and wiring has to be chosen for it.  Nearly every
battery of lithium cells is in class 3: the square of its full voltage over four times its
lowest resistance is kilowatts.  An electronic source counts with the most that it gives.

The figure is that power where the enclosure is not made to contain a fire, otherwise
nothing.  Above 100 W is major, not critical: the standard knows other ways, such as flame
class and distance of everything that burns, and the fuse is judged elsewhere.  First fix:
an enclosure of flame class V-1 or metal without openings below the source.
"""

from ...linter.check import AtMost, Case, Check, Input, Lever, derivation
from ..formulas.safety import FIRE_POWER
from ..hazards import CONDUCTOR


def figure(p_fault: float, fire_enclosure: str) -> float:
    return 0 * p_fault if fire_enclosure == "yes" else p_fault


PACK = """
supply: {source: battery, converter: none}
battery: {chemistry: li-ion, series: 6, parallel: 2, cell: {r_internal: 20 mohm .. 60 mohm}}
safety: {fire_enclosure: no}
channels: {main: {rated_power: 50 W}}
"""

CHECK = Check(
    title="Fault power vs. fire enclosure",
    figure=figure,
    unit="W",
    each="product",
    stake="safety",
    formula="p_fault unless fire_enclosure is yes",
    sentence="{figure:?Fault power is contained|A fault can draw # uncontained} (fire enclosure:"
    " {fire_enclosure}).",
    inputs={
        "p_fault": Input("p_fault"),
        "fire_enclosure": Input("safety.fire_enclosure"),
    },
    limits=AtMost(major="100 W", basis={"major": FIRE_POWER}),
    otherwise="an enclosure made to contain a fire, or a source that gives less to a fault",
    levers=(Lever("safety.fire_enclosure", ("yes",)),),
    sources=(FIRE_POWER, derivation("power matching: v^2 / 4 r")),
    cautions=(CONDUCTOR,),
    cases=(
        Case(
            {"p_fault": "2646 W", "fire_enclosure": "no"},
            gives="2646 W",
            origin="computed: maximum of load power over resistance, 25.2 V behind 0.06 ohm",
        ),
        Case(
            {"p_fault": "65 W", "fire_enclosure": "no"},
            gives="65 W",
            origin="derived: a source of 65 W gives no more",
        ),
    ),
    topic=("safety.fire_enclosure",),
    asked_from="production",
    fails=PACK,
    passes=PACK.replace("fire_enclosure: no", "fire_enclosure: yes"),
)

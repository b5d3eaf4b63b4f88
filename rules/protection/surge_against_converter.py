"""What a surge of the vehicle leaves for the input of a converter.

A converter between vehicle and rail keeps surges from the amplifier, but takes them itself,
and its input is often rated for little more than the nominal supply.  Where no surge is
stated, the load dump that a central clamp leaves is taken: 35 V in a 12 V system, 58 V in a
24 V system.  That flatters: without such a clamp it is 79 V and more.

The figure is what a suppressor leaves, or all of it without one, over the absolute maximum
of the converter's input.  Above 1 is critical, above 0.9 minor (common practice).  First
fix: a suppressor whose stand-off voltage lies above the charging voltage, or a converter
made for vehicles.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, derivation
from ..derived.surge import LOAD_DUMP
from ..hazards import SHORTED_STAGE

RATING = derivation("an absolute maximum rating is exceeded")


def figure(v_surge: float, v_abs: float) -> float:
    return v_surge / v_abs


VEHICLE = """
environment: {place: vehicle}
supply:
  {source: dc-source, rails: single, converter: step-up, v_source: 11 V .. 15 V, v_source_abs: 30 V}
protection: {surge: none}
channels: {main: {rated_power: 20 W}}
"""

CHECK = Check(
    title="Supply surge vs. converter input rating",
    figure=figure,
    unit="1",
    each="product",
    stake="rating",
    formula="v_surge / v_abs",
    sentence="Supply surge {v_surge} at the converter; input rated {v_abs} ({figure:%}).",
    inputs={
        "v_surge": Input("v_surge_terminal"),
        "v_abs": Input("supply.v_source_abs"),
    },
    applies={
        "environment.place": "vehicle",
        "supply.converter": ("step-up", "step-down", "step-up-down"),
    },
    limits=AtMost(critical="1", minor="0.9", basis={"critical": RATING, "minor": COMMON_PRACTICE}),
    levers=(Lever("supply.v_source_abs", ("40 V", "60 V", "80 V", "100 V")),),
    sources=(RATING, LOAD_DUMP),
    cautions=(SHORTED_STAGE,),
    cases=(
        Case(
            {"v_surge": "35 V", "v_abs": "30 V"},
            gives="1.166667",
            origin="published: ISO 16750-2 test B as quoted by Itech, 35 V; 30 V input assumed",
        ),
        Case(
            {"v_surge": "58 V", "v_abs": "100 V"},
            gives="0.58",
            origin="published: ISO 16750-2 test B as quoted by Itech, 58 V; input of 100 V assumed",
        ),
    ),
    topic=("environment.place",),
    asked_from="prototype",
    fails=VEHICLE,
    passes=VEHICLE.replace("v_source_abs: 30 V", "v_source_abs: 60 V"),
)

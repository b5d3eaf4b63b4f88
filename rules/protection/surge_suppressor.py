"""A surge suppressor ahead of the converter in a vehicle.

A converter between vehicle and rail keeps surges from the amplifier, but takes them itself,
and its input is often rated for little more than the nominal supply.  Where the spec puts
the product into a vehicle, feeds it through a converter and says nothing of a suppressor,
nothing in it catches the surge.

That is minor, not more: the converter may have been made for vehicles, which the spec has
no field for; then record the deviation with the converter's input rating.  First cure: a
suppressor whose stand-off voltage lies above the charging voltage.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, from_memory

LOAD_DUMP = from_memory("ISO 16750-2 and ISO 7637-2", "load dump of vehicles")


def figure(suppressor: str) -> float:
    return float(suppressor == "fitted")


VEHICLE = """
environment: {place: vehicle}
supply: {source: dc-source, rails: single, converter: step-up, v_source: 11 V .. 15 V}
protection: {surge: none}
channels: {main: {rated_power: 20 W}}
"""

CHECK = Check(
    title="Surge suppressor ahead of a converter in a vehicle",
    figure=figure,
    unit="1",
    each="product",
    stake="performance",
    formula="1 if suppressor is fitted, else 0",
    sentence="The converter is fed by a vehicle; surge suppressor at its input: {suppressor}.",
    inputs={"suppressor": Input("protection.surge", "word", "surge suppressor, or none")},
    applies={
        "environment.place": "vehicle",
        "supply.converter": ("step-up", "step-down", "step-up-down"),
    },
    limits=AtLeast(minor="1", basis={"minor": COMMON_PRACTICE}),
    sources=(LOAD_DUMP, COMMON_PRACTICE),
    cases=(
        Case(
            {"suppressor": "none"},
            gives="0",
            origin="from memory: ISO 16750-2 asks vehicles' equipment to bear a load dump",
        ),
        Case(
            {"suppressor": "fitted"},
            gives="1",
            origin="common practice: a suppressor at the input terminals",
        ),
    ),
    topic=("environment.place",),
    asked_from=None,
    fails=VEHICLE,
    passes=VEHICLE.replace("surge: none", "surge: {v_rwm: 18 V, v_clamp: 29 V, i_pp: 50 A}"),
)

"""Whether the over-temperature trip has a sensor where the spec puts it.

A trip protects the switches only through its sensor.  A trip at the heatsink of a stage
without heatsink, or at the junction of discrete switches, which have no sensor inside,
is a protection on paper: the spec contradicts itself, and nothing ends the rise of the
junction.  Switches with a temperature diode of their own are rare; state such a sensor as
`case` with `below_junction`.

The figure is 2 where the sensor can be where it is said to be, 1 where the spec says that
there is no trip, 0 where the stated place does not exist.  A contradiction is major; no trip
at all is minor here, because junction-at-rated-sine, stopped-fan-junction and
covered-heatsink-junction then follow the junction up to the end.  Integrated stages of which
nothing is said are taken to bring a trip along.  First fixes: a sensor on the heatsink or on
the package; for integrated stages the trip of the part.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Source, derivation


def figure(trip_place: str, heatsink: str, devices: str) -> float:
    """2: a sensor that can be there; 1: no trip; 0: a place that does not exist."""
    if trip_place == "none":
        return 1.0
    no_sink = trip_place == "heatsink" and heatsink != "fitted"
    no_die_sensor = trip_place == "junction" and devices == "discrete"
    return 0.0 if no_sink or no_die_sensor else 2.0


_BASE = """
channels: {main: {output_stage: {devices: discrete}}}
thermal: {heatsink: none}
protection: {over_temperature: {t_trip: 90 degC, at: PLACE}}
"""

NO_PLACE = derivation("a sensor on a part that is not there senses nothing")

CHECK = Check(
    title="Location of the over-temperature sensor",
    figure=figure,
    unit="1",
    each="channel",
    stake="rating",
    formula="1 where trip_place is none; 0 where it is the heatsink and heatsink is none, or the"
    " junction and devices are discrete; else 2",
    sentence="{trip_place:?No over-temperature sensor|Over-temperature sensor at: #} (heatsink"
    " {heatsink}, {devices} switches).",
    inputs={
        "trip_place": Input("trip_place"),
        "heatsink": Input("heatsink"),
        "devices": Input("output_stage.devices"),
    },
    limits=AtLeast(
        major="1",
        minor="2",
        basis={"major": NO_PLACE, "minor": COMMON_PRACTICE},
    ),
    sources=(
        NO_PLACE,
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 25: sensor beside the switches on the heatsink, trip at 100 degC",
        ),
    ),
    cases=(
        Case(
            {"trip_place": "heatsink", "heatsink": "fitted", "devices": "discrete"},
            gives="2",
            origin="published: IRAUDAMP7D rev 2.9, thermistor on the heatsink of discrete switches",
        ),
        Case(
            {"trip_place": "junction", "heatsink": "fitted", "devices": "discrete"},
            gives="0",
            origin="derived: a discrete switch has drain, gate and source, and no sensor",
        ),
        Case(
            {"trip_place": "none", "heatsink": "none", "devices": "integrated"},
            gives="1",
            origin="derived: no trip stated",
        ),
    ),
    topic=("protection.over_temperature",),
    asked_from="prototype",
    fails=_BASE.replace("PLACE", "heatsink"),
    passes=_BASE.replace("PLACE", "case"),
)

"""The way of the heat: outer air, inside air, heatsink, case, junction."""

from collections.abc import Mapping

from ...linter.check import Input, Words
from ...linter.picture import Amount, Row, Scale, Shown
from .parts import shown

TRIP = Input("protection.over_temperature.t_trip")


def _trip(when: Mapping[str, Words]) -> Shown:
    return Shown("trip", (Amount({"value": TRIP}, when=when),), "trip")


PICTURE = Scale(
    title="How hot does it get, from the air to the junction?",
    each="channel",
    axis="temperature",
    unit="degC",
    rows=(
        Row("Outer air", (shown("hottest", "ambient_hottest"),)),
        Row("Air round the parts", (shown("programme", "t_air_inside"),), ("enclosure-air",)),
        Row("Heatsink", (
            shown("programme", "t_heatsink"),
            shown("rated power", "t_heatsink_rated", "second"),
            _trip({"trip_place": "heatsink"}),
        ), ("over-temperature-trip-in-use",)),
        Row("Case", (
            shown("programme", "t_case_programme"),
            _trip({"trip_place": ("case", "board")}),
        )),
        Row("Junction", (
            shown("programme", "t_junction_programme"),
            shown("rated power", "t_junction_rated", "second"),
            _trip({"trip_place": "junction"}),
            shown("absolute maximum", "output_stage.device.t_j_max", "limit"),
        ), ("junction-temperature-margin", "junction-at-rated-sine", "over-temperature-trip")),
        Row("Inductor, copper loss alone", (
            shown("rated power", "t_inductor", "second"),
        ), ("inductor-copper",), aside=True),
    ),
    note="Where a part ends its heat by itself, the temperature is the one that it would reach.",
    chain=True,
    least=3,
    value="programme",
    second="rated power",
)  # fmt: skip

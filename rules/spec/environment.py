"""Where the product is used."""

from typing import ClassVar

from ...linter.check import from_memory
from ...linter.declare import Nature, Section, Value, count, quantity, text, usually, word

PLACES = ("indoor", "outdoor", "vehicle")
RECEIVERS = ("none", "nearby", "in-product")


class Environment(Section):
    """Where the product is used: air, height, sun, dirt."""

    nature: ClassVar[Nature] = "use"

    ambient: Value | None = quantity(
        "degC",
        "air round the whole product in use, coldest to hottest; not the air in the box",
        "-40 .. 85 degC",
        possible="-100 .. 150 degC",
        given="range",
        default=usually("0 degC .. 40 degC"),
        example="0 degC .. 40 degC",
        promise="wider",
    )
    altitude: Value | None = quantity(
        "m",
        "highest place of use above sea level; thin air cools and insulates less",
        "0 or 10 .. 5000 m",
        possible="0 .. 9000 m",
        default=usually("2000 m", from_memory("IEC 60664-1: insulation holds up to 2000 m")),
        example="300 m",
        promise="higher",
    )
    solar: Value | None = quantity(
        "W/m2",
        "sun on the enclosure, 0 W/m2 in the shade; default: 1000 W/m2 outdoors, else none",
        "0 or 100 .. 1150 W/m2",
        possible="0 .. 1500 W/m2",
        example="900 W/m2",
    )
    pollution_degree: Value | None = count(
        "pollution degree at the board, IEC 60664-1; default: 2, outdoors 3 unless in a box of"
        " IP54",
        "1 .. 3",
        possible="1 .. 3",
    )
    place: str | None = word(
        PLACES,
        "where the product is used; a vehicle brings supply surges",
        default=usually("indoor"),
    )
    ip_code: str | None = text(
        "claimed IP code of the enclosure, IEC 60529; default: no claim",
        example="IP54",
        promise="stated",
    )
    am_receiver: str | None = word(
        RECEIVERS,
        "AM radio in the product or near it",
        default=usually("nearby"),
    )

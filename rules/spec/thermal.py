"""Where the heat goes."""

from typing import ClassVar, Literal

from ...linter.declare import (
    Nature,
    Section,
    Value,
    absent,
    adverse,
    count,
    quantity,
    section,
    usually,
    word,
)
from .designs import NO_HEATSINK

TOUCHES = ("unreachable", "under-1-s", "1-to-10-s", "10-s-to-1-min", "over-1-min")
HEATSINKS = ("metal", "plastic")
MATERIALS = ("metal", "glass", "plastic", "wood")


class Fan(Section):
    """Fan that blows along the fins of the heatsinks."""

    r_th_sa: Value | None = quantity(
        "K/W",
        "thermal resistance of ONE heatsink in this air, to the air that is blown in",
        "0.02 .. 10 K/W",
        given="typ",
    )
    air_speed: Value | None = quantity(
        "m/s", "air along the fins, where the resistance in it is not known", "0.5 .. 8 m/s"
    )


class Heatsink(Section):
    """Heatsink of the power devices."""

    r_th_sa: Value | None = quantity(
        "K/W",
        "thermal resistance of ONE heatsink to the air round it; default: r_th_ja is used if given",
        "0.05 .. 40 K/W",
        given="typ",
    )
    fan: Fan | Literal["none"] | None = section(Fan, part="fan", can_be_none=True, default=absent())
    mass: Value | None = quantity("kg", "mass of ONE heatsink, aluminium", "0.01 .. 9 kg")
    count: Value | None = count(
        "equal heatsinks that share all packages",
        "1 .. 16",
        default=absent(1.0),
        nature="topology",
    )
    place: str | None = word(
        ("inside", "outside"),
        "in the air of the box, or in the outer air",
        default=adverse("inside"),
        nature="topology",
    )
    t: Value | None = quantity(
        "degC",
        "heatsink temperature that was measured or is held; default: solved",
        "20 .. 120 degC",
        possible="-100 .. 700 degC",
        nature="outcome",
    )
    touch: str | None = word(
        TOUCHES, "longest touch of the heatsink that is expected", nature="use"
    )
    material: str | None = word(HEATSINKS, "material of the surface of the heatsink")


class Enclosure(Section):
    """Enclosure of the amplifier; width, height and depth are outer sizes."""

    width: Value | None = quantity(
        "mm",
        "outer width; default: the air inside is taken as the ambient",
        "25 .. 2500 mm",
        example="320 mm",
    )
    height: Value | None = quantity(
        "mm",
        "outer height; default: the air inside is taken as the ambient",
        "25 .. 2500 mm",
        example="260 mm",
    )
    depth: Value | None = quantity(
        "mm",
        "outer depth; default: the air inside is taken as the ambient",
        "25 .. 2500 mm",
        example="180 mm",
    )
    emissivity: Value | None = quantity(
        "1",
        "thermal emissivity of the outer surface",
        "0.05 .. 1",
        possible="0.001 .. 1",
        default=usually("0.9"),
        example="0.9",
    )
    openings: str | None = word(
        ("sealed", "vented"),
        "sealed box, or one with vents",
        default=adverse("sealed"),
        nature="topology",
    )
    touch: str | None = word(
        TOUCHES, "longest touch of the enclosure that is expected", nature="use"
    )
    material: str | None = word(MATERIALS, "material of the surface of the enclosure")


class BoardCopper(Section):
    """Copper of the board that cools ONE package."""

    area: Value | None = quantity(
        "mm2",
        "copper that cools ONE package, on the layer that has most of it",
        "10 .. 9000 mm2",
        concerns=NO_HEATSINK,
    )
    pad_area: Value | None = quantity(
        "mm2", "copper under the pad of ONE package", "1 .. 900 mm2", concerns=NO_HEATSINK
    )
    layers: Value | None = count(
        "layers of about that copper, joined under the package", "1 .. 12", concerns=NO_HEATSINK
    )
    vias: Value | None = count(
        "vias under ONE package that join the layers; 0: none",
        "0 or 1 .. 200",
        possible="0 .. 900",
        concerns=NO_HEATSINK,
    )


class Thermal(Section):
    """Heatsink, enclosure, board copper, and what they were sized for."""

    nature: ClassVar[Nature] = "outcome"

    heatsink: Heatsink | Literal["none"] | None = section(
        Heatsink, part="heatsink", can_be_none=True
    )
    enclosure: Enclosure | Literal["none"] | None = section(
        Enclosure, part="enclosure", can_be_none=True
    )
    t_air_inside: Value | None = quantity(
        "degC",
        "air round the parts in the hottest ambient, measured or set, while the programme plays;"
        " default: solved",
        "-40 .. 110 degC",
        possible="-100 .. 300 degC",
        example="55 degC",
    )
    board_copper: BoardCopper | None = section(
        BoardCopper, part="board copper", concerns=NO_HEATSINK
    )
    time_constant: Value | None = quantity(
        "s",
        "time to 63 % of the rise of the heatsink, or of the board without one; default: from the"
        " mass",
        "10 .. 3600 s",
        example="180 s",
    )
    basis: str | None = word(
        ("one-eighth", "one-third", "full-sine"),
        "signal for which the cooling was sized, as a part of the rated power",
    )

"""The air of the parts: ambient, enclosure, sun, and the heat of a converter."""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Derived,
    Input,
    Way,
    derivation,
    from_memory,
)
from ..formulas.enclosure import walls
from ..formulas.heat import Air
from .cooling import ALTITUDE
from .ways import as_stated

AMBIENT = Input("environment.ambient")
TEXTBOOK = from_memory("McAdams, Heat Transmission: simplified correlations for air")
STEPPING = {"supply.converter": ("step-up", "step-down", "step-up-down")}


def shaded() -> float:
    """No sun."""
    return 0.0


def full_sun() -> float:
    """Sun on a surface that faces it, W/m2."""
    return 1000.0


def held_air(ambient: float, t_air: float, hottest: float) -> Air:
    """Inside air known in the hottest ambient: in a cooler one it is cooler by as much.

    >>> held_air(273.15, 309.15, 308.15).t_held
    274.15
    """
    return Air(ambient, ambient + (t_air - hottest), None)


def open_air(ambient: float, t_air: float) -> Air:
    """Inside air that follows the ambient."""
    return Air(ambient, t_air, None)


def boxed_air(
    ambient: float,
    width: float,
    height: float,
    depth: float,
    emissivity: float,
    openings: str,
    sun: float,
    altitude: float,
) -> Air:
    """Inside air of a box in still air."""
    return Air(ambient, None, walls(width, height, depth, emissivity, openings, sun, altitude))


def no_loss() -> float:
    """Nothing is converted."""
    return 0.0


def heat_over_output(efficiency: float) -> float:
    """Heat of a converter over the power that it delivers."""
    return 1 / efficiency - 1


def _size(which: str) -> Input:
    return Input(f"thermal.enclosure.{which}")


BOX = {
    "ambient": AMBIENT,
    "width": _size("width"),
    "height": _size("height"),
    "depth": _size("depth"),
    "emissivity": Input("thermal.enclosure.emissivity"),
    "openings": Input("thermal.enclosure.openings"),
    "sun": Input("sun"),
    "altitude": ALTITUDE,
}

DERIVED: tuple[Derived, ...] = (
    Derived(
        "sun",
        "W/m2",
        "product",
        "sun on the enclosure",
        (
            Way(
                as_stated,
                {"value": Input("environment.solar")},
                "value",
            ),
            Way(
                full_sun,
                {},
                "1000 W/m2",
                when={"environment.place": "outdoor"},
                assumes=Assumption(None, "adverse", from_memory("IEC 60068-2-5, full sun")),
            ),
            Way(shaded, {}, "0", when={"environment.place": ("indoor", "vehicle")}),
        ),
    ),
    Derived(
        "t_air_open",
        "degC",
        "product",
        "inside air where no enclosure is described",
        (
            Way(as_stated, {"value": AMBIENT}, "value", when={"thermal.enclosure": "none"}),
            Way(
                as_stated,
                {"value": AMBIENT},
                "value",
                assumes=Assumption(
                    None,
                    "floor",
                    derivation("no box is warmer inside than one of no size, which is the ambient"),
                ),
            ),
        ),
        stated_at="thermal.t_air_inside",
        agree=0.0,
    ),
    Derived(
        "air_path",
        "set",
        "product",
        "the air of the parts",
        (
            Way(
                held_air,
                {
                    "ambient": AMBIENT,
                    "t_air": Input("thermal.t_air_inside"),
                    "hottest": Input("environment.ambient:high"),
                },
                "ambient + (t_air - hottest); ambient",
            ),
            Way(
                boxed_air,
                BOX,
                "walls of width, height, depth, emissivity, openings in ambient, sun, altitude",
            ),
            Way(
                open_air,
                {"ambient": AMBIENT, "t_air": Input("t_air_open")},
                "t_air; ambient",
            ),
        ),
        sources=(TEXTBOOK, COMMON_PRACTICE, derivation("of the same heat the rise stays the same")),
        parts={"t_ambient": "degC", "t_held": "degC"},
    ),
    Derived(
        "converter_share",
        "1",
        "product",
        "heat of the converter over what it delivers",
        (
            Way(no_loss, {}, "0", when={"supply.converter": "none"}),
            Way(
                heat_over_output,
                {"efficiency": Input("supply.converter_efficiency")},
                "1 / efficiency - 1",
                when=STEPPING,
            ),
        ),
        sources=(derivation("the converter is in the same box"),),
    ),
)

"""How warm the air in a box is at least: bounds on an inside air that the spec states.

A stated inside air replaces the heat balance of the box, and with it the sun and all heat that
is set free inside.  So it is held against the balance with half of the heat and with the sun
that a white wall takes up.  What nobody states counts for nothing: no sun, open vents, the
surface that radiates best.  A fan in a box that is not sealed carries heat away that a balance
of still air does not know, so such a box has no bound but the ambient.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Way,
    derivation,
    from_memory,
)
from ..formulas.enclosure import walls
from ..formulas.heat import Air, Solution, air_inside
from .air import BOX, shaded
from .temperature import PROGRAMME
from .ways import as_stated, left_out

HALF = Constant("0.5", "least part of the heat in the box", COMMON_PRACTICE)
WHITE = from_memory("solar absorptance of paints", "white 0.25 to 0.3, against 0.8 of the balance")
BALANCE = derivation("heat balance of the box with half of its heat, in the hottest ambient")
SHADE = Assumption("0 W/m2", "floor", derivation("a box in the shade takes up no sun"))
OPEN = Assumption("vented", "favourable", derivation("of the two words the one that cools better"))
BRIGHT = Assumption("0.95", "favourable", from_memory("emissivity tables: paints 0.90 to 0.95"))
SILENT = Assumption("not given", "absent", COMMON_PRACTICE)
STILL = {"box_air": "still"}

_WARMED: dict[str, Input | Constant] = {
    **BOX,
    "ambient": Input("environment.ambient:high"),
    "emissivity": Input("thermal.enclosure.emissivity", default=BRIGHT),
    "openings": Input("thermal.enclosure.openings", default=OPEN),
    "sun": Input("sun_least"),
    "white": Constant("0.375", "sun that a white wall takes up over that of the balance", WHITE),
    "share": HALF,
}
_TERMS = "width, height, depth, emissivity, openings, white sun, altitude"


def still() -> str:
    """Nothing moves the air in the box but its own warmth."""
    return "still"


def blown() -> str:
    """A fan moves the air in the box, and perhaps through it."""
    return "blown"


def set_free(solution: Solution) -> float:
    """What the inside air takes up."""
    return solution.heat_in_box


def warmed(
    ambient: float,
    width: float,
    height: float,
    depth: float,
    emissivity: float,
    openings: str,
    sun: float,
    altitude: float,
    white: float,
    share: float,
    heat: float,
) -> float:
    """Inside air of a box in still air with a share of its heat."""
    box = walls(width, height, depth, emissivity, openings, white * sun, altitude)
    return air_inside(share * heat, Air(ambient, None, box))[0]


def _bound(name: str, meaning: str, heat: Input, neutral: bool = False) -> Derived:
    way = Way(warmed, {**_WARMED, "heat": heat}, f"air in ambient, {_TERMS}, of share heat")
    return Derived(
        name,
        "degC",
        "product",
        meaning,
        (Way(way.figure, way.inputs, way.formula, when=STILL),),
        bounds_from_below=("thermal.t_air_inside",),
        bounds_by="practice",
        bounds_neutral=neutral,
        sources=(BALANCE, WHITE),
    )


DERIVED: tuple[Derived, ...] = (
    Derived(
        "openings_stated",
        "word",
        "product",
        "whether the box is sealed or vented, if somebody says so",
        (
            Way(
                as_stated,
                {"value": Input("thermal.enclosure.openings", default=SILENT)},
                "value",
            ),
        ),
    ),
    Derived(
        "box_air",
        "word",
        "product",
        "whether a fan moves the air in the box",
        (
            Way(still, {}, "still", when={"openings_stated": "sealed"}),
            Way(
                blown,
                {},
                "blown",
                when={"heatsink": "fitted", "thermal.heatsink.fan": "fitted"},
            ),
            Way(still, {}, "still"),
        ),
    ),
    Derived(
        "sun_least",
        "W/m2",
        "product",
        "sun on the enclosure, if somebody says so",
        (
            Way(as_stated, {"value": Input("environment.solar")}, "value"),
            Way(shaded, {}, "0", assumes=SHADE),
        ),
    ),
    Derived(
        "heat_in_box",
        "W",
        "product",
        "heat that is set free in the box while the programme plays",
        (Way(set_free, {"solution": PROGRAMME}, "of solution"),),
    ),
    _bound(
        "t_air_warmed",
        "what the air in the box reaches in the hottest ambient with half of its heat, sealed or"
        " vented as stated, and the sun on a white wall",
        Input("heat_in_box"),
        neutral=True,
    ),
    _bound(
        "t_air_least",
        "what the air in the box reaches in the hottest ambient with half of the other heat in it"
        " and the sun on a white wall",
        Input("supply.p_auxiliary", default=left_out("0 W", "other heat in the box")),
    ),
)

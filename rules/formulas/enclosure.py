"""Air and walls of a box that is cooled by itself: natural convection and radiation.

Plain functions on SI floats or arrays.  Symbols and units stand in brackets.
"""

from typing import NamedTuple

from .maths import at_rest, larger

STEFAN_BOLTZMANN = 5.670e-8
"""Radiation constant [W/(m2 K4)]."""

SIDE, TOP, BOTTOM = 1.42, 1.32, 0.59
"""Natural convection of a wall: heat flow per area is C dT^1.25 / L^0.25, L in metres.
Simplified air correlations of the heat transfer textbooks (McAdams, from memory); against
Nu = 0.59 Ra^0.25 with air properties they lie about 5 % low."""

INNER_FILM = 5.0
"""Heat transfer from the inside air to the wall [W/(m2 K)], common practice, no source."""

VENTED_SHARE = 0.5
"""Rise of the inside air with air holes, over that of the sealed box: common practice, no
source; nothing is known of the holes."""

ABSORBED = 0.8
"""Share of the sun that a painted wall takes up, common practice, no source: white 0.3,
black 0.95."""


WALL_START = 10.0
"""Rise of a wall [K] whose steepness gives the first guess."""

WALL_AT_REST = 1e-6
"""After a Newton step below this [K] the next would be of the order of its square."""

WALL_STEPS = 5
"""Newton steps of the wall; the tests compare with a root finder."""


class Walls(NamedTuple):
    """What the outside of a box does with heat.

    sides, top, bottom [W/K^1.25]: convection; radiating [W/K4]: emissivity times area
    times Stefan-Boltzmann; film [W/K]: inside air to wall; air_share: 1 sealed, less when
    vented; sun [W]: taken up from the sun.
    """

    convection: float
    radiating: float
    film: float
    air_share: float
    sun: float


def convection_factor(altitude: float) -> float:
    """Natural convection at a height over that at sea level.

    altitude [m]; a pure number.  Heat flow goes as the square root of the density of the
    air: the Rayleigh number holds its square, and the flow goes as Ra^0.25.
    Valid to 11 km.  Source: density of the standard atmosphere, ISO 2533.
    At 2000 m the standard prints 1.007 kg/m3 against 1.225, a ratio of 0.822.
    Units: altitude [m]; returns [1].

    >>> round(convection_factor(2000.0) ** 2, 3)
    0.822
    """
    return (1 - 2.25577e-5 * altitude) ** (4.25588 / 2)


def walls(
    width: float,
    height: float,
    depth: float,
    emissivity: float,
    openings: str,
    sun: float,
    altitude: float,
) -> Walls:
    """The cooling of a rectangular box that stands free in still air.

    width, height, depth [m]; emissivity; openings ``sealed`` or ``vented``; sun [W/m2];
    altitude [m].  All six faces are free.  The sun meets the box from the direction in
    which it shows the largest area.
    Source: textbook correlations; the largest shadow of a box is the length of the vector
    of its three face areas (derivation).
    Units: width [m], height [m], depth [m], emissivity [1], openings [word], sun [W/m2],
    altitude [m]; returns [bundle].
    """
    front, side, top = width * height, depth * height, width * depth
    span = 2 * top / (width + depth)
    thin_air = convection_factor(altitude)
    convection = thin_air * (
        SIDE * 2 * (front + side) / height**0.25 + (TOP + BOTTOM) * top / span**0.25
    )
    area = 2 * (front + side + top)
    return Walls(
        convection=convection,
        radiating=emissivity * STEFAN_BOLTZMANN * area,
        film=thin_air * INNER_FILM * area,
        air_share=VENTED_SHARE if openings == "vented" else 1.0,
        sun=ABSORBED * sun * (front**2 + side**2 + top**2) ** 0.5,
    )


def wall_rise_and_slope(heat: float, t_ambient: float, box: Walls) -> tuple[float, float]:
    """Mean rise of the outside of a box, and how steeply the heat rises with it (W/K).

    heat set free inside; t_ambient of the air round it; box from ``walls``.
    Solved by Newton's rule: the heat that a wall gives off is convex in its rise, so that
    after the first step the rise comes down to the solution from above.
    Units: heat [W], t_ambient [K], box [bundle]; returns [K].
    """
    slope = box.convection * WALL_START**0.25 + 4 * box.radiating * t_ambient**3
    rise = larger((heat + box.sun) / slope, 1e-6)
    for _ in range(WALL_STEPS):
        t_wall = t_ambient + rise
        by_air = box.convection * rise**0.25
        by_light = box.radiating * t_wall**3
        given_off = by_air * rise + by_light * t_wall - box.radiating * t_ambient**4
        slope = 1.25 * by_air + 4 * by_light
        before, rise = rise, larger(rise + (heat + box.sun - given_off) / slope, 1e-6)
        if at_rest(before, rise, WALL_AT_REST):
            break
    return rise, slope


def wall_rise(heat: float, t_ambient: float, box: Walls) -> float:
    """Mean rise of the outside of a box above the air round it.

    heat [W] set free inside; t_ambient [K]; box from ``walls``; gives [K].
    Valid for up to about 60 K and boxes from 0.1 to 1 m; 10 to 20 % uncertain.
    Source: natural convection and radiation to surroundings at ambient temperature.
    Units: heat [W], t_ambient [K], box [bundle]; returns [K].

    >>> box = walls(0.3, 0.1, 0.2, 0.9, "sealed", 0.0, 0.0)
    >>> round(wall_rise(15.0, 308.15, box), 2)
    7.33
    """
    return wall_rise_and_slope(heat, t_ambient, box)[0]

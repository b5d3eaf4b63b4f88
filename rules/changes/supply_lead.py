"""A thicker supply lead, with its rating and the fuse for what it lets through.

More copper is what a hot lead needs, not a braver rating.  Until the lead is chosen its rating
is three quarters of what one wire stands in free air, for warm surroundings and neighbours.
A thicker lead lets more current into a short circuit: the fuse must break it.
"""

from ...linter.check import COMMON_PRACTICE, Input
from ...linter.design_change import DesignChange, Follow
from ..formulas.conductors import LEAD_SIZES, wire_current
from .cells_in_series import SHORT_CIRCUIT

OVERLOAD = 1.45


def usual_rating(area: float) -> float:
    """Three quarters of the current of one wire in free air."""
    return 0.75 * wire_current(area)


RATING = Follow(
    "wiring.supply_lead.i_rated",
    usual_rating,
    {"area": Input("wiring.supply_lead.area")},
    "1 A",
    guess=True,
    new=True,
)


def wire_area(current: float) -> float:
    """Copper [m2] of one wire in free air that carries a current [A], to a thousandth.

    >>> round(wire_area(22.0) * 1e6, 2)
    1.31
    """
    low, high = 1e-9, 1e-3
    while high / low > 1.001:
        middle = (low * high) ** 0.5
        low, high = (low, middle) if wire_current(middle) >= current else (middle, high)
    return high


def area_for(i_lasting: float, i_source: float) -> float:
    """Copper for the music and for what the fuse lets through, at three quarters in free air."""
    return wire_area(max(i_source, i_lasting / OVERLOAD) / 0.75)


LEAD = (
    Follow(
        "wiring.supply_lead.area",
        area_for,
        {"i_lasting": Input("i_lasting_lead"), "i_source": Input("i_source_rms")},
        LEAD_SIZES,
        "up",
    ),
    RATING,
)

CHANGE = DesignChange(
    title="a thicker supply lead with its rating, and a fuse that breaks its short circuit",
    moves=("wiring.supply_lead.area",),
    kind="part",
    follows=(RATING, SHORT_CIRCUIT),
    sources=(COMMON_PRACTICE,),
)

"""A thicker supply lead, with its rating and the fuse for what it lets through.

More copper is what a hot lead needs, not a braver rating.  Until the lead is chosen its rating
is three quarters of what one wire stands in free air, for warm surroundings and neighbours.
A thicker lead lets more current into a short circuit: the fuse must break it.
"""

from ...linter.check import COMMON_PRACTICE, DesignChange, Follow, Input
from ..formulas.conductors import wire_current
from .cells_in_series import SHORT_CIRCUIT


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

CHANGE = DesignChange(
    title="a thicker supply lead with its rating, and a fuse that breaks its short circuit",
    moves=("wiring.supply_lead.area",),
    kind="part",
    follows=(RATING, SHORT_CIRCUIT),
    sources=(COMMON_PRACTICE,),
)

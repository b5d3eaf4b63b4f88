"""A fuse of another rating, with a lead that it protects.

A larger fuse that carries the music is no cure when the lead behind it then becomes the fuse.
The lead follows the current that the fuse lets through for long: after IEC 60127 that is up to
2.1 times its rating, after UL 248-14 1.35 times.
"""

from ...linter.check import DesignChange, Follow, Input, derivation
from ..formulas.conductors import LEAD_SIZES, wire_area
from .supply_lead import RATING

OVERLOAD = 1.45


def area_needed(i_lasting: float) -> float:
    """Copper that stands a lasting overload, at three quarters of its current in free air."""
    return wire_area(i_lasting / OVERLOAD / 0.75)


CHANGE = DesignChange(
    title="a fuse of another rating with the lead for it",
    moves=("protection.fuse.i_rated",),
    kind="part",
    follows=(
        Follow(
            "wiring.supply_lead.area",
            area_needed,
            {"i_lasting": Input("i_lasting_lead")},
            LEAD_SIZES,
            "up",
        ),
        RATING,
    ),
    sources=(derivation("the inverse of the wire table"),),
)

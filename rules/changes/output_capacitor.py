"""Another output capacitor, with its voltage and ripple rating.

One part has to pass the lowest note, stand half the rail and the music on top of it, and carry
the whole current of the loudspeaker.
"""

from ...linter.check import Input, derivation
from ...linter.design_change import DesignChange, Follow
from .cells_in_series import CAPACITORS, used_to_four_fifths


def sine_current(i_rated_peak: float) -> float:
    """Root-mean-square of the load current."""
    return i_rated_peak / 2**0.5


def whole_rail(v_rail: float) -> float:
    """The whole rail, to which the capacitor charges when the output stands high."""
    return used_to_four_fifths(v_rail)


CHANGE = DesignChange(
    title="another output capacitor with its ratings",
    moves=("filter.c_block.c",),
    kind="part",
    follows=(
        Follow(
            "filter.c_block.v_rated", whole_rail, {"v_rail": Input("v_rail_high")}, CAPACITORS, "up"
        ),
        Follow(
            "filter.c_block.i_rated",
            sine_current,
            {"i_rated_peak": Input("i_rated_peak")},
            "0.1 A",
            "up",
            guess=True,
        ),
    ),
    sources=(derivation("series connection: one current"),),
)

"""More strings of cells in parallel, with what a stiffer pack puts into a short circuit.

Each string takes its share of the music and of the charge current.  The resistance of the
pack falls, so the short-circuit current rises with the number of strings: the fuse and the
pack's own switches have to break it.  Strings are joined only when equally charged.
"""

from ...linter.check import Input, derivation
from ...linter.design_change import DesignChange, Follow
from .cells_in_series import BREAKING, SHORT_CIRCUIT, as_it_is

CHANGE = DesignChange(
    title="other number of strings in parallel, with the breaking capacity for them",
    moves=("battery.parallel",),
    follows=(
        SHORT_CIRCUIT,
        Follow("battery.protection.i_breaking", as_it_is, {"x": Input("i_short")}, BREAKING, "up"),
    ),
    sources=(derivation("resistances in parallel"),),
)

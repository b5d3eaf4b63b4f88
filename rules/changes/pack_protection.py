"""A protection circuit for a bare pack.

It trips below what the cells stand as a pulse, cuts off above the least voltage of a cell and
breaks the short circuit of the pack.  The values are a guess until a circuit is chosen, and
its data sheet has the last word.  A fuse beside it stays: electronics fail as well.
"""

from ...linter.check import COMMON_PRACTICE, Input, derivation
from ...linter.design_change import DesignChange, Follow
from .cells_in_series import BREAKING, as_it_is


def below_the_cells(i_pulse: float, strings: float) -> float:
    """Nine tenths of what all strings stand as a pulse."""
    return 0.9 * i_pulse * strings


def of_all(cells: float, v_cell_least: float) -> float:
    """The least voltage of all cells in series, with a twentieth to spare."""
    return 1.05 * cells * v_cell_least


CHANGE = DesignChange(
    title="a protection circuit in the pack",
    helps=("protection-present", "cell-discharge-end"),
    applies={"supply.source": "battery"},
    follows=(
        Follow(
            "battery.protection.i_trip",
            below_the_cells,
            {"i_pulse": Input("battery.cell.i_pulse"), "strings": Input("battery.parallel")},
            "0.5 A",
            "down",
            guess=True,
            new=True,
        ),
        Follow(
            "battery.protection.v_cutoff",
            of_all,
            {"cells": Input("battery.series"), "v_cell_least": Input("v_cell_least")},
            "0.1 V",
            "up",
            guess=True,
            new=True,
        ),
        Follow(
            "battery.protection.i_breaking",
            as_it_is,
            {"x": Input("i_short")},
            BREAKING,
            "up",
            guess=True,
            new=True,
        ),
    ),
    sources=(derivation("a guard acts before what it guards"), COMMON_PRACTICE),
)

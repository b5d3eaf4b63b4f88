"""A charger for the number and kind of the cells.

The charge of a pack ends at the voltage of one cell times the cells in series, held to half a
per cent: what chargers for lithium cells are made to.
"""

from ...linter.check import COMMON_PRACTICE, Input, derivation
from ...linter.design_change import DesignChange, Follow
from .cells_in_series import of_all_cells

CHANGE = DesignChange(
    title="a charger for these cells",
    kind="part",
    helps=("charge-voltage", "charger-fills-cells"),
    applies={"supply.source": "battery"},
    follows=(
        Follow(
            "battery.charger.v",
            of_all_cells,
            {"cells": Input("battery.series"), "one": Input("v_cell_charger")},
            spread="± 0.5 %",
        ),
    ),
    sources=(derivation("voltages in series add up"), COMMON_PRACTICE),
)

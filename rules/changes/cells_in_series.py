"""More cells in series, or fewer, with all that hangs on the voltage of the pack.

The charger has to end at the voltage of the new pack, cut-off and lockout move with the number
of cells, and whatever is rated for the rail has to stand the full pack: bulk and filter
capacitors, fuse, blocking transistor, output devices.  Forgetting the charger is the usual
mistake; on lithium cells it is a fire.
"""

from ...linter.check import COMMON_PRACTICE, Input, derivation
from ...linter.design_change import DesignChange, Follow
from .dc_detector import relay
from .device_class import DEAD_TIME, DEVICE, VOLTAGE

CAPACITORS = (
    *("10 V", "16 V", "25 V", "35 V", "50 V", "63 V", "80 V", "100 V", "160 V", "200 V", "250 V"),
)
FUSES = ("32 V", "58 V", "80 V", "125 V", "250 V", "500 V")
BREAKING = ("200 A", "500 A", "1000 A", "2000 A", "5000 A", "10000 A")
BLOCKING = ("30 V", "40 V", "60 V", "80 V", "100 V", "150 V", "200 V")


def of_all_cells(cells: float, one: float) -> float:
    """The voltage of cells in series."""
    return cells * one


def in_proportion(was: float, cells_was: float, cells: float) -> float:
    """A voltage of the pack, by the number of cells."""
    return was * cells / cells_was


def used_to_four_fifths(v: float) -> float:
    """Rating of a part that is used to four fifths."""
    return v / 0.8


def as_it_is(x: float) -> float:
    """The rating that just does."""
    return x


def by_cells(path: str) -> Follow:
    """A setting of the pack that moves with the number of cells."""
    return Follow(
        path,
        in_proportion,
        {
            "was": Input(f"before {path}"),
            "cells_was": Input("before battery.series"),
            "cells": Input("battery.series"),
        },
    )


def rated_for(path: str, quantity: str) -> Follow:
    """A rated voltage, used to four fifths at most."""
    return Follow(path, used_to_four_fifths, {"v": Input(quantity)}, CAPACITORS, "up")


FUSE_VOLTAGE = Follow("protection.fuse.v_dc", as_it_is, {"x": Input("v_across_fuse")}, FUSES, "up")
SHORT_CIRCUIT = Follow(
    "protection.fuse.i_breaking", as_it_is, {"x": Input("i_short")}, BREAKING, "up"
)
BOOTSTRAP = Follow(
    "gate_drive.bootstrap.c",
    in_proportion,
    {
        "was": Input("before gate_drive.bootstrap.c"),
        "cells_was": Input("before output_stage.device.q_g:nominal"),
        "cells": Input("output_stage.device.q_g:nominal"),
    },
    "E6",
    "up",
)
RAIL_RATINGS = (
    rated_for("supply.bulk.v_rated", "v_rail_peak"),
    VOLTAGE,
    *DEVICE,
    DEAD_TIME,
    BOOTSTRAP,
    rated_for("filter.c_across.v_rated", "v_ideal"),
    rated_for("filter.c_ground.v_rated", "v_swing"),
    rated_for("output_stage.v_c_local", "v_static_peak"),
    rated_for("output_stage.snubber.v_rated", "v_static_peak"),
    rated_for("filter.damper.v_rated", "v_swing"),
    rated_for("gate_drive.bootstrap.v_r", "v_static_peak"),
    *relay(chosen=True),
)
SOURCE_RATINGS = (
    FUSE_VOLTAGE,
    SHORT_CIRCUIT,
    Follow(
        "protection.reverse_polarity.v_block",
        used_to_four_fifths,
        {"v": Input("v_source_high")},
        BLOCKING,
        "up",
    ),
)
PACK = (
    Follow(
        "battery.charger.v",
        of_all_cells,
        {"cells": Input("battery.series"), "one": Input("v_cell_charger")},
    ),
    by_cells("battery.protection.v_cutoff"),
)
LOCKOUT = by_cells("protection.under_voltage.v_trip")

CHANGE = DesignChange(
    title="other number of cells in series, with charger, lockout and the ratings of the rail",
    moves=("battery.series",),
    follows=(*PACK, LOCKOUT, *RAIL_RATINGS, *SOURCE_RATINGS),
    sources=(derivation("voltages in series add up"), COMMON_PRACTICE),
)

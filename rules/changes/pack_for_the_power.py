"""A pack for the rated power: cells in series for its voltage, strings for its current.

The cells in series follow from the peak voltage of the rated power, with a tenth for sag and
resistances, at the lowest charge for which that power is promised; the strings from the
current at rated power and at the crest of the bass, each against what one cell stands.  The
charger, the lockout and all that is rated for the rail come along; so do the inductor, the
loudspeaker with its limiter, the supply lead and its fuse: what a weak pack spared until now.
A pack of more than twice the cells in series or three times the strings is another product: then
the promise has to come down (common practice, no source).
"""

from ...linter.check import COMMON_PRACTICE, Input, derivation
from ...linter.design_change import DesignChange, Follow
from .cells_in_parallel import CHANGE as PARALLEL
from .cells_in_series import PACK, RAIL_RATINGS, SOURCE_RATINGS
from .inductor import SATURATION
from .loudspeaker_for_the_power import CHANGE as LOUDSPEAKER
from .supply_lead import LEAD

SAG = 1.15


def cells_needed(
    cells: float,
    v_pack_low: float,
    v_rail_high: float,
    depth: tuple[float, ...],
    m_max: tuple[float, ...],
) -> float:
    """Cells at which a low pack gives the rated peak; depth is meant at the full rail."""
    v_needed = max(d * v_rail_high / m for d, m in zip(depth, m_max, strict=True)) * SAG
    return max(cells, cells * v_needed / v_pack_low)


def strings_needed(
    p_source_rated: float,
    p_source_crest: float,
    v_pack_low: float,
    cells: float,
    i_cont: float,
    i_pulse: float,
    r_cell: float,
) -> float:
    """Strings that carry rated power for good and the crest of the bass for a moment.

    The rms current of a sine on a bridge is 1.22 times its mean.  At the crest the pack keeps
    one over SAG of its voltage.
    """
    i_crest = p_source_crest * SAG / v_pack_low
    lasting = 1.5**0.5 * p_source_rated * SAG / v_pack_low / i_cont
    sagging = i_crest * cells * r_cell / (v_pack_low * (1 - 1 / SAG))
    return max(1.0, lasting, i_crest / i_pulse, sagging)


def below_the_crest(v_pack_low: float) -> float:
    """A lockout a tenth below a low pack at the crest of the bass."""
    return 0.9 * v_pack_low / SAG


CHANGE = DesignChange(
    title="a pack for the rated power, with its charger, lockout, loudspeaker and all ratings",
    helps=(
        *("pack-current", "pack-pulse-current", "pack-rate", "pack-collapse"),
        *("pack-voltage-under-load", "power-above-rail", "output-power", "rail-trough"),
        "minimum-pulse-vs-modulation",
    ),
    applies={"rail_feed": "pack"},
    follows=(
        Follow(
            "battery.series",
            cells_needed,
            {
                "cells": Input("before battery.series"),
                "v_pack_low": Input("before v_pack_low"),
                "v_rail_high": Input("before v_rail_high"),
                "depth": Input("before all depth_rated"),
                "m_max": Input("before all m_max"),
            },
            "1",
            "up",
            within=2,
        ),
        Follow(
            "battery.parallel",
            strings_needed,
            {
                "p_source_rated": Input("p_source_rated"),
                "p_source_crest": Input("p_source_crest"),
                "v_pack_low": Input("v_pack_low"),
                "cells": Input("battery.series"),
                "r_cell": Input("battery.cell.r_internal"),
                "i_cont": Input("battery.cell.i_cont"),
                "i_pulse": Input("battery.cell.i_pulse"),
            },
            "1",
            "up",
            new=True,
            within=3,
        ),
        *PACK,
        Follow(
            "protection.under_voltage.v_trip",
            below_the_crest,
            {"v_pack_low": Input("v_pack_low")},
        ),
        *RAIL_RATINGS,
        *SOURCE_RATINGS,
        *PARALLEL.follows[1:],
        SATURATION,
        *LOUDSPEAKER.follows,
        *LEAD,
    ),
    sources=(derivation("peak of a sine, sqrt(2 P R); currents of strings add"), COMMON_PRACTICE),
)

"""The rated power that the pack there is can carry, with a limiter for the loudspeakers.

The same three currents as for a pack of the rated power, the other way round: each is in
proportion to the power, so that one string carries the power over the strings that it would
take.  A pack that sags less lets the stage clip later and harder, so a limiter set to the
loudspeakers goes along, and no more is promised than it lets through.  A lockout above what a
low pack keeps in the bass comes down too.  It is a lowered promise, and called that.
"""

from ...linter.check import COMMON_PRACTICE, Input, derivation
from ...linter.design_change import DesignChange, Follow
from .limiter_for_loudspeaker import CHANGE as LIMITER
from .pack_for_the_power import CHANGE as PACK
from .pack_for_the_power import below_the_crest, strings_needed


def power_carried(
    rated_power: float,
    strings: float,
    p_source_rated: float,
    p_source_crest: float,
    v_pack_low: float,
    cells: float,
    i_cont: float,
    i_pulse: float,
    r_cell: float,
    v_rms: float,
    z_load: float,
) -> float:
    """Rated power of a channel that the strings stand and the limiter lets through."""
    needed = strings_needed(
        p_source_rated, p_source_crest, v_pack_low, cells, i_cont, i_pulse, r_cell
    )
    return min(rated_power * strings / max(needed, strings), v_rms**2 / z_load)


CHANGE = DesignChange(
    title="what pack and loudspeakers carry",
    kind="promise",
    helps=PACK.helps,
    applies={"rail_feed": "pack"},
    follows=(
        Follow(
            "rated_power",
            power_carried,
            {
                "rated_power": Input("before rated_power"),
                "strings": Input("battery.parallel"),
                "p_source_rated": Input("before p_source_rated"),
                "p_source_crest": Input("before p_source_crest"),
                "v_pack_low": Input("before v_pack_low"),
                "cells": Input("battery.series"),
                "r_cell": Input("battery.cell.r_internal"),
                "i_cont": Input("battery.cell.i_cont"),
                "i_pulse": Input("battery.cell.i_pulse"),
                "v_rms": Input("limiter.v_rms"),
                "z_load": Input("z_load"),
            },
            "1 W",
            "down",
        ),
        *LIMITER.follows,
        Follow(
            "protection.under_voltage.v_trip",
            below_the_crest,
            {"v_pack_low": Input("v_pack_low")},
            "0.5 V",
            "down",
        ),
    ),
    sources=(derivation("currents in proportion to the power"), COMMON_PRACTICE),
)

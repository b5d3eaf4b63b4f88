"""A step-up converter between the pack and the rail.

Where the cells are given, a converter makes the rail that the rated power needs.  The rail no
longer sinks with the pack, and the pack gives the same power at a higher current: its cells,
its lead and its fuse must be good for that.  The converter is a guess until one is chosen.
"""

from ...linter.check import COMMON_PRACTICE, Input, derivation
from ...linter.design_change import DesignChange, Follow
from .cells_in_series import RAIL_RATINGS
from .inductor import SATURATION
from .loudspeaker_for_the_power import CHANGE as LOUDSPEAKER

HEADROOM = 1.1
STOCK_POWER = ("15 W", "30 W", "60 W", "100 W", "150 W", "250 W", "400 W", "600 W", "1000 W")


def rail_needed(v_rail_high: float, depth: tuple[float, ...], m_max: tuple[float, ...]) -> float:
    """The rail at which the rated peak needs nine tenths of the depth."""
    return max(d * v_rail_high / m for d, m in zip(depth, m_max, strict=True)) * HEADROOM


def with_headroom(p: float) -> float:
    """A power with a fifth to spare."""
    return 1.2 * p


CHANGE = DesignChange(
    title="a step-up converter to the rail that the rated power needs",
    helps=("power-above-rail", "output-power", "rail-trough", "minimum-pulse-vs-modulation"),
    applies={"rail_feed": "pack"},
    follows=(
        Follow("supply.converter", word="step-up", new=True),
        Follow(
            "supply.v_rail",
            rail_needed,
            {
                "v_rail_high": Input("before v_rail_high"),
                "depth": Input("before all depth_rated"),
                "m_max": Input("before all m_max"),
            },
            "1 V",
            "up",
            spread="± 2 %",
            new=True,
        ),
        Follow(
            "supply.p_max",
            with_headroom,
            {"p": Input("p_in_rated")},
            STOCK_POWER,
            "up",
            guess=True,
            new=True,
        ),
        Follow(
            "supply.p_peak",
            with_headroom,
            {"p": Input("p_rail_crest")},
            STOCK_POWER,
            "up",
            guess=True,
            new=True,
        ),
        *RAIL_RATINGS,
        SATURATION,
        *LOUDSPEAKER.follows,
    ),
    sources=(derivation("peak of a sine, sqrt(2 P R)"), COMMON_PRACTICE),
)

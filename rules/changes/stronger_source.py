"""A stronger source, with all three of its limits together.

Sources are bought by power: continuous current, continuous power and peak power belong to one
module.  A fifth is kept in hand.
"""

from ...linter.check import COMMON_PRACTICE, Input
from ...linter.design_change import DesignChange, Follow
from .step_up_converter import STOCK_POWER, with_headroom


def per_rail(p: float, v: float, rails: float) -> float:
    """Current of one rail at that power."""
    return p / v / rails


def larger(one: float, other: float) -> float:
    """The larger of two needs, with a fifth in hand."""
    return with_headroom(max(one, other))


CHANGE = DesignChange(
    title="a stronger source",
    kind="part",
    helps=("source-capability", "source-below-rated-power", "source-crest", "clipping-power"),
    follows=(
        Follow(
            "supply.p_max",
            larger,
            {"one": Input("p_in_rated"), "other": Input("p_rated_sum")},
            STOCK_POWER,
            "up",
            guess=True,
        ),
        Follow(
            "supply.p_peak",
            larger,
            {"one": Input("p_rail_crest"), "other": Input("p_in_rated")},
            STOCK_POWER,
            "up",
            guess=True,
        ),
        Follow(
            "supply.i_max",
            per_rail,
            {
                "p": Input("supply.p_max"),
                "v": Input("v_rail_low"),
                "rails": Input("rail_count"),
            },
            "0.5 A",
            "up",
            guess=True,
        ),
    ),
    sources=(COMMON_PRACTICE,),
)

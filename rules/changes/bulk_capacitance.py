"""More bulk capacitance, with the ripple rating and the switch-on energy that follow.

Larger capacitors of one series carry more ripple current, about with the root of the
capacitance (their surface); the rating is written as what the rail asks for.  The energy that
the limiter of the charging current takes goes with the capacitance.
"""

from ...linter.check import COMMON_PRACTICE, Input, derivation
from ...linter.design_change import DesignChange, Follow


def as_it_is(x: float) -> float:
    """What the rail asks for."""
    return x


def energy(v_rail: float, c: float, rails: float) -> float:
    """Energy of all rails when charged, which the limiter takes once more."""
    return rails * c * v_rail**2 / 2


CHANGE = DesignChange(
    title="more bulk capacitance, with ripple rating and inrush limiter",
    moves=("supply.bulk.c",),
    kind="part",
    follows=(
        Follow(
            "supply.bulk.i_ripple",
            as_it_is,
            {"x": Input("i_bulk_rated")},
            "0.5 A",
            "up",
            guess=True,
        ),
        Follow(
            "protection.inrush.e_rated",
            energy,
            {
                "v_rail": Input("v_rail_high"),
                "c": Input("c_rail"),
                "rails": Input("rail_count"),
            },
            "1 J",
            "up",
            guess=True,
        ),
    ),
    sources=(derivation("energy C V^2 / 2"), COMMON_PRACTICE),
)

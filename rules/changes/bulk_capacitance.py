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


def with_the_capacitance(was: float, c_was: float, c_now: float) -> float:
    """Energy at the same voltage."""
    return was * c_now / c_was


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
            with_the_capacitance,
            {
                "was": Input("before protection.inrush.e_rated"),
                "c_was": Input("before supply.bulk.c:nominal"),
                "c_now": Input("supply.bulk.c:nominal"),
            },
            guess=True,
        ),
    ),
    sources=(derivation("energy C V^2 / 2"), COMMON_PRACTICE),
)

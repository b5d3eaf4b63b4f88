"""What can be measured on a board, as data: the figure, and on what it depends there."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass


def itself(x: float) -> float:
    """The figure is an amount as it stands."""
    return x


@dataclass(frozen=True, slots=True)
class Measurable:
    """A figure that can be measured, and the conditions under which it is the same figure.

    figure: a derived quantity, a field of the spec or a check, by its name.
    conditions: name of a condition as a measurement states it, with the fields or derived
        quantities that hold it in the model; the first one that the spec gives counts.
        Without conditions the figure is the same wherever it is measured.
    stands_in: what is measured may stand in where the spec is silent or estimates.
    high_is_enough: conditions of which the high end tells all: hotter air, hotter parts.
    doubted_below: share of the least that the model computes below which a reading is doubted:
        such a board would be better than its own parts allow.
    amount: what of the figure must not be so little.  rises_over: the condition over which
        it rises; then the rise counts.
    """

    figure: str
    conditions: Mapping[str, tuple[str, ...]]
    stands_in: bool = False
    high_is_enough: tuple[str, ...] = ()
    doubted_below: float = 0.0
    amount: Callable[[float], float] = itself
    rises_over: str = ""

"""Why a name has no value, and what could be stated to give it one."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import product
from math import prod

from ..finding import Missing

MOST_CHOICES = 6


@dataclass(frozen=True, slots=True)
class Gap:
    """Why a name has no value: leaves that are missing, or a part that is not fitted.

    absent: what is not in the design; none: the section stated ``none`` behind it.
    others: what else could be stated instead, where several ways lead to the value; None where
    there are too many.  assumed: only an assumed word speaks against it, and is missing.
    unclaimed: it is a claim that nobody makes.
    """

    missing: tuple[Missing, ...] = ()
    absent: str = ""
    none: str = ""
    others: tuple[tuple[Missing, ...], ...] | None = ()
    assumed: bool = False
    unclaimed: bool = False

    @property
    def choices(self) -> tuple[tuple[Missing, ...], ...] | None:
        """Each set of leaves that would fill the gap; None where there are too many."""
        return None if self.others is None else (self.missing, *self.others)


def united(gaps: Sequence[Gap]) -> Gap:
    """One gap for all that several arguments lack, in every combination of their choices."""
    known = [gap.choices for gap in gaps]
    sets = [choices for choices in known if choices is not None]
    if len(sets) < len(gaps) or prod(map(len, sets)) > MOST_CHOICES:
        whole = tuple(dict.fromkeys(item for gap in gaps for item in gap.missing))
        return Gap(whole, others=None)
    first, *others = (
        tuple(dict.fromkeys(item for choice in combined for item in choice))
        for combined in product(*sets)
    )
    return Gap(first, others=tuple(others))


def best(gaps: Sequence[Gap]) -> Gap:
    """The gap that tells most of several ways to one value, with what the others lack."""
    found = min(gaps, key=_weaker)
    if found.absent or found.assumed:
        return found
    rest = [gap for gap in gaps if gap is not found and _weaker(gap) == 0]
    known = [gap.choices for gap in rest]
    if found.others is None or None in known:
        return replace(found, others=None)
    others = (choice for choices in known if choices is not None for choice in choices)
    sets = tuple(dict.fromkeys((*found.others, *others)))
    return replace(found, others=sets if len(sets) < MOST_CHOICES else None)


def _weaker(gap: Gap) -> int:
    """What is missing tells most, then a word that is only assumed, then what is absent."""
    return 2 if gap.absent else 1 if gap.assumed else 0

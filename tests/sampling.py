"""A part of many cases for every run of the tests; ``SWEEP=1`` in the environment tries them all.

The part is another one with each case that is added, so that in time all have been tried.
"""

import os
import random
from collections.abc import Iterable, Sequence
from typing import TypeVar

T = TypeVar("T")
SWEEP = "SWEEP" in os.environ


def some(cases: Sequence[T], every: int, first: int = 0) -> list[T]:
    """One case of so many, from the first on."""
    return list(cases if SWEEP else cases[first % every :: every])


def few(cases: Iterable[T], count: int, seed: str) -> list[T]:
    """So many cases at most, thrown by the seed."""
    known = list(cases)
    if SWEEP or len(known) <= count:
        return known
    return random.Random(seed).sample(known, count)


def tries(count: int, swept: int) -> int:
    """How many examples to try: so many, or those of a sweep."""
    return swept if SWEEP else count

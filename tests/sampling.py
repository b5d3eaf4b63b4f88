"""A part of many cases for every run of the tests; ``SWEEP=1`` in the environment tries them all.

The part follows from the text of the program: the same for the same program, another one after
each change, so that in time all have been tried.
"""

import os
import random
from collections.abc import Iterable, Sequence
from typing import TypeVar

from ampreview.linter.reports.identity import rules_hash

T = TypeVar("T")
SWEEP = "SWEEP" in os.environ
TEXT = rules_hash("ampreview.rules") + rules_hash("ampreview.linter")
TURN = int(TEXT[:8], 16)


def some(cases: Sequence[T], every: int, first: int = 0) -> list[T]:
    """One case of so many; ``first`` tells draws of the same cases apart."""
    return list(cases if SWEEP else cases[(TURN + first) % every :: every])


def few(cases: Iterable[T], count: int, seed: str) -> list[T]:
    """So many cases at most, thrown by the seed and the text of the program."""
    known = list(cases)
    if SWEEP or len(known) <= count:
        return known
    return random.Random(f"{seed} {TEXT}").sample(known, count)


def tries(count: int, swept: int) -> int:
    """How many examples to try: so many, or those of a sweep."""
    return swept if SWEEP else count

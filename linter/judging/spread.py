"""How the figures of many builds spread: counts in equal steps, a check at a time."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from ..finding import Finding

STEPS = 40
ROUNDING = 1e-9
Array = Any


@dataclass(frozen=True, slots=True)
class Spread:
    """How many builds have a figure in each of some equal steps from low to high.

    What lies beyond the ends is counted in the first and the last step.
    """

    finding: Finding
    limit: float
    low: float
    high: float
    counts: tuple[int, ...]
    missing: int


class Spreads:
    """Counts the figures of the checks that are wanted, in that order."""

    def __init__(self, wanted: Sequence[tuple[str, str]]) -> None:
        self._counted: dict[tuple[str, str], Spread | None] = dict.fromkeys(wanted)

    def count(self, finding: Finding, limit: float, figures: Array, missing: int) -> None:
        """Count some more builds; the ends are those of the first ones."""
        key = (finding.check, finding.subject)
        if key not in self._counted:
            return
        old = self._counted[key]
        if old is None:
            ends = float(figures.min()), float(figures.max())
            old = Spread(finding, limit, *ends, (0,) * STEPS, 0)
        width = (old.high - old.low) / STEPS or 1.0
        places = ((figures - old.low) / width).clip(0, STEPS - 1).astype(int).tolist()
        new = Counter(places)
        counts = tuple(count + new[place] for place, count in enumerate(old.counts))
        self._counted[key] = replace(old, counts=counts, missing=old.missing + missing)

    @property
    def found(self) -> tuple[Spread, ...]:
        """What was counted; a figure that differs by no more than rounding has no spread."""
        return tuple(
            x
            for x in self._counted.values()
            if x is not None and x.high - x.low > ROUNDING * max(abs(x.low), abs(x.high))
        )

"""What several boards say together: their spread beside that of the model's tolerances."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import isfinite

from .measured import Compared
from .modelled import Figure

LEVELS = ("degC", "dB")


@dataclass(frozen=True, slots=True)
class Boards:
    """Several boards of which the same figure was measured under the same conditions.

    low, high: the lowest and the highest reading; allowed: the spread that the tolerances of
    the model give, as a share; spread: that of the boards.
    """

    figure: Figure
    count: int
    low: float
    high: float
    spread: float
    allowed: float | None

    @property
    def is_wider(self) -> bool:
        """Whether the boards differ by more than their tolerances explain."""
        return self.allowed is not None and self.spread > self.allowed * 1.001


def several(found: Iterable[Compared]) -> tuple[Boards, ...]:
    """The spread of each figure that was measured on several boards."""
    groups: dict[object, list[Compared]] = {}
    for item in found:
        if item.is_compared and item.figure:
            conditions = tuple(sorted((name, x.text) for name, x in item.of.conditions.items()))
            groups.setdefault((item.figure, conditions), []).append(item)
    named = (x for x in groups.values() if len({item.of.board for item in x} - {""}) > 1)
    return tuple(_spread(items) for items in named)


def _spread(items: Sequence[Compared]) -> Boards:
    first = items[0]
    assert first.figure is not None
    reads = [item.read.nominal for item in items if item.read]
    low, high = min(reads), max(reads)
    middle = abs(sum(reads) / len(reads))
    level = first.figure.unit in LEVELS
    allowed = None
    if first.band and first.nominal and all(map(isfinite, first.band)):
        width = first.band[1] - first.band[0]
        allowed = width if level else width / abs(first.nominal)
    spread = high - low if level or not middle else (high - low) / middle
    return Boards(first.figure, len(items), low, high, spread, allowed)

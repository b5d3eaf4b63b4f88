"""A sweep: its variants reviewed in their order, and what all of them come to."""

import hashlib
from collections import Counter
from collections.abc import Iterator, Sequence
from concurrent.futures import Executor
from dataclasses import dataclass, field

from ..batch.items import Text, Variant
from ..batch.many import review_many
from ..batch.result import Result, Word
from ..batch.work import Order
from .axis import Axis
from .grid import Combination, Draw, combinations, size_of

SHORT = 12


@dataclass(frozen=True, slots=True)
class Sweep:
    """What is swept: a base, its axes, what is asked for each variant.

    written: what else the answers rest on, as text: rules, house file, day.
    """

    base: Text
    axes: tuple[Axis, ...]
    draw: Draw | None
    order: Order
    written: tuple[str, ...]

    @property
    def size(self) -> int:
        """The number of variants."""
        return size_of(self.axes, self.draw)

    @property
    def mark(self) -> str:
        """A short hash of all that decides the rows, so that no two sweeps are mixed."""
        values = [(axis.path, axis.choices, axis.interval) for axis in self.axes]
        told = (self.base.text, values, self.draw, self.order.milestone, self.order.hold_at)
        text = repr((told, self.order.margins, self.written))
        return hashlib.sha256(text.encode("utf-8", "surrogateescape")).hexdigest()[:SHORT]

    def results(
        self, start: int, executor: Executor | None = None, together: int = 1
    ) -> Iterator[tuple[Combination, Result]]:
        """Each variant from a number on, with its result."""
        found = combinations(self.axes, self.draw, start)
        items = (Variant(self.base, x.changes) for x in combinations(self.axes, self.draw, start))
        given = review_many(items, executor, self.order, together=together)
        return zip(found, given, strict=True)


@dataclass(slots=True)
class Tally:
    """What has become of the variants so far.

    points: a coordinate of each variant for each axis; holders: the gravest check that holds.
    """

    axes: tuple[Axis, ...]
    verdicts: list[Word] = field(default_factory=list)
    points: list[tuple[float, ...]] = field(default_factory=list)
    holders: Counter[str] = field(default_factory=Counter)

    def add(self, combination: Combination, verdict: Word, holding: Sequence[str]) -> None:
        """Count a variant."""
        self.verdicts.append(verdict)
        self.points.append(tuple(map(_coordinate, self.axes, combination.choices)))
        self.holders.update(holding[:1])

    def number(self, verdict: Word) -> int:
        """How many have this verdict."""
        return self.verdicts.count(verdict)


def _coordinate(axis: Axis, choice: object) -> float:
    number: float | None = getattr(choice, "number", None)
    if number is not None:
        return number
    return float(next(n for n, item in enumerate(axis.choices) if item is choice))

"""What a change would do to the faults of a review: it is tried, and only they are judged.

A trial proves nothing of the rest of the design.  It tells what hangs on a value: which
faults are gone once it is another, and which shrink.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from ..declare import PRODUCT, subject_of
from ..evaluation.engine import Assessment
from ..finding import Finding, Status
from ..judging.consistency import BUILT_IN, built_in_findings
from ..judging.review import Review
from ..quantities.quantity import Value
from .faults import WEIGHTS, Fault
from .pairs import MOST_LEVERS
from .remedy import Advisor
from .rerun import CONTRADICTS

GONE = 1.0
MOSTLY = 0.5
Changes = Mapping[str, object]


@dataclass(frozen=True, slots=True)
class Outcome:
    """What a change does to faults.

    shares: which share of its miss each of them loses, below zero where it grows; ``GONE``
    where it is met, or where nothing is left that shows it.  contradicts: whether the
    change disagrees with what else is stated.
    """

    shares: Mapping[Fault, float]
    contradicts: bool = False


class Trials:
    """Changes tried on one review; nothing is computed before the first one."""

    def __init__(self, review: Review, run: Assessment | None = None) -> None:
        self.review = review
        self.run = run or Assessment(review.spec, review.catalogue, review.verdict.milestone)
        self.advisor = Advisor(review, self.run)
        self._doubted = {_doubt(item) for item in review.findings if item.check in BUILT_IN}

    def outcome(self, changes: Changes, faults: Iterable[Fault]) -> Outcome:
        """What a change does to faults."""
        wanted = [x for x in faults if self._may_reach(changes, x)]
        revised = self.run.revised(changes) if wanted else None
        if revised is None:
            return Outcome({})
        run, change = revised
        doubts = {_doubt(item) for item in built_in_findings(run.spec, run.graph)}
        found: dict[Fault, float] = {}
        for fault in wanted:
            item = fault.first
            entry = self.review.catalogue.entry(item.check)
            if entry is None:
                found[fault] = 0.0 if _doubt(item) in doubts else GONE
            elif change.alters(entry.name, item.evidence.leaves):
                found[fault] = share_lost(item, run.answer(entry, item.subject))
        return Outcome(
            {fault: share for fault, share in found.items() if share},
            any(name == CONTRADICTS for name, _ in doubts - self._doubted),
        )

    def harm(self, changes: Changes) -> float:
        """How much that is met now a change makes fail."""
        met = [
            item
            for item in self.review.of_status(Status.MEETS)
            if not item.evidence.leaves.isdisjoint(changes)
        ]
        revised = self.run.revised(changes) if met else None
        total = 0.0
        for item in met if revised else ():
            entry = self.review.catalogue.entry(item.check)
            if entry is not None and revised is not None:
                severity = revised[0].answer(entry, item.subject).severity
                total += WEIGHTS[severity] if severity else 0.0
        return total

    def everywhere(self, changes: Changes) -> dict[str, object]:
        """A change of one channel made in every channel that states the same there."""
        return {twin: value for path, value in changes.items() for twin in self.twins(path)}

    def twins(self, path: str) -> tuple[str, ...]:
        """The same leaf in all channels whose value is stated alike."""
        if subject_of(path) == PRODUCT:
            return (path,)
        values, local = self.review.spec.values, path.split(".", 2)[2]
        paths = (f"channels.{name}.{local}" for name in self.review.spec.channels)
        return tuple(x for x in paths if values.get(x) == values.get(path))

    def solutions(self, fault: Fault) -> list[tuple[str, object]]:
        """For each lever the nearest value on each side that would meet the limit."""
        entry = self.review.catalogue.entry(fault.first.check)
        found: dict[tuple[str, int], object] = {}
        levers = self.advisor.levers.of(entry, fault.first)[:MOST_LEVERS] if entry else []
        for lever, path in levers:
            for tried in (
                self.advisor.levers.solved(entry, fault.first, lever, path) if entry else ()
            ):
                found.setdefault((path, tried.direction), tried.text)
        return [(path, text) for (path, _), text in found.items()]

    def levers(self, fault: Fault) -> frozenset[str]:
        """The leaves, as a channel sees them, that its check names as what to change."""
        entry = self.review.catalogue.entry(fault.first.check)
        return frozenset(lever.path for lever in entry.check.levers) if entry else frozenset()

    def _may_reach(self, changes: Changes, fault: Fault) -> bool:
        """Whether a change can matter to a fault; a word or a new leaf may matter to any."""
        values = self.review.spec.values
        if fault.is_doubt or not all(isinstance(values.get(path), Value) for path in changes):
            return True
        return not fault.first.evidence.leaves.isdisjoint(changes)


def share_lost(old: Finding, new: Finding) -> float:
    """Which share of its miss a finding has lost; ``GONE`` where it is none any more."""
    if new.severity is None:
        return GONE
    was, now = old.evidence, new.evidence
    if was.figure is None or now.figure is None or not was.distance:
        return 0.0
    moved = now.figure - was.figure if was.at_least else was.figure - now.figure
    return min(moved / abs(was.distance), GONE)


def _doubt(item: Finding) -> tuple[str, str]:
    return item.check, item.place.path if item.place else ""

"""Failing answers that are one fault: the same one in several channels is told once."""

from collections.abc import Iterable
from dataclasses import dataclass

from ..declare import local_path
from ..finding import Finding, Severity
from ..judging.consistency import BUILT_IN

WEIGHTS = {Severity.CRITICAL: 4.0, Severity.MAJOR: 2.0, Severity.MINOR: 0.25}

Kind = tuple[str, int, str]


@dataclass(frozen=True, slots=True, eq=False)
class Fault:
    """What one check finds, in one channel or in several.

    number: its place in the order in which a reader should take them, from 0.
    """

    number: int
    findings: tuple[Finding, ...]

    @property
    def first(self) -> Finding:
        """The finding that stands for all."""
        return self.findings[0]

    @property
    def labels(self) -> frozenset[str]:
        """The findings as remedies name them."""
        return frozenset(f"{item.check} ({item.subject})" for item in self.findings)

    @property
    def weight(self) -> float:
        """How much it counts that a change ends this fault."""
        return WEIGHTS[self.first.severity or Severity.MINOR]

    @property
    def is_doubt(self) -> bool:
        """Whether it is about a stated value, not about what was computed from such."""
        return self.first.check in BUILT_IN

    @property
    def has_cure(self) -> bool:
        """Whether a change of its own is proven to end it, and brings up nothing else."""
        remedies = [x for item in self.findings for x in item.advice.remedies]
        return any(not x.appeared for x in remedies)


def faults_of(failing: Iterable[Finding]) -> tuple[Fault, ...]:
    """The faults behind failing answers, in the order of those."""
    found: dict[Kind, list[Finding]] = {}
    for item in failing:
        about = local_path(item.place.path) if item.check in BUILT_IN and item.place else ""
        found.setdefault((item.check, item.rank, about), []).append(item)
    return tuple(Fault(number, tuple(items)) for number, items in enumerate(found.values()))

"""What to write to a supplier: what to explain, what to correct, what to provide.

Promises that cannot be kept and statements that contradict each other come first, then what
is wrong in the design, then what is missing; in each the gravest first.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from ..finding import Cause, Finding, Status
from ..judging.promises import Promised
from ..judging.review import Review
from .questions import QuestionGroup, SupplierQuestion, groups_of
from .requirements import Requirement, requirements_of

DOUBTED = ("impossible", "unlikely")


@dataclass(frozen=True, slots=True)
class Wanted:
    """One value to provide.

    group: the part that it belongs to; bounds: what it must be, as far as that is known.
    """

    group: QuestionGroup
    question: SupplierQuestion
    bounds: tuple[Requirement, ...]

    @property
    def needed_for(self) -> str:
        """The check that bounds the value, else the first one that lacks it."""
        return self.bounds[0].title if self.bounds else self.question.needed_for[0]


@dataclass(frozen=True, slots=True)
class Letter:
    """The three lists of a letter, each in the order in which it matters.

    explain: promises that the design cannot keep, as far as it is told; correct: causes of
    what fails, without those that only say the same; provide: values that are missing.
    """

    explain: tuple[Promised, ...]
    correct: tuple[Cause, ...]
    provide: tuple[Wanted, ...]


def letter_of(review: Review, causes: Sequence[Cause]) -> Letter:
    """The letter about a review: its causes and promises, and what it leaves open."""
    doubted = tuple(item for item in review.promises if item.outlook in DOUBTED)
    told = {check for item in doubted for check in item.checks}
    holding = {id(item) for item in review.verdict.holding}
    correct = tuple(
        cause
        for cause in causes
        if any(id(x) in holding and x.check not in told for x in cause.findings)
    )
    return Letter(doubted, correct, tuple(_provide(review)))


def _provide(review: Review) -> Iterator[Wanted]:
    """What is missing, what holds the spec first."""
    bounds: dict[str, list[Requirement]] = {}
    for part in requirements_of(review):
        for item in part.bounds:
            for path in item.paths:
                bounds.setdefault(path, []).append(item)
    weights = _weights(review)
    wanted = [
        Wanted(group, question, tuple(bounds.get(question.paths[0], ())))
        for group in groups_of(review)
        for question in group.questions
    ]
    yield from sorted(wanted, key=lambda x: _weight(x.question, weights))


def _weights(review: Review) -> Mapping[str, tuple[bool, bool]]:
    """How much hangs on each missing value: it holds the spec, and may be a hazard."""
    holding = {id(item) for item in review.verdict.holding}
    found: dict[str, tuple[bool, bool]] = {}
    for item in review.of_status(Status.OPEN):
        for gap in item.advice.missing:
            weight = (id(item) not in holding, not _is_grave(item))
            found[gap.path] = min(weight, found.get(gap.path, weight))
    return found


def _is_grave(item: Finding) -> bool:
    return item.stake == "safety" and item.can_be_critical


def _weight(
    question: SupplierQuestion, weights: Mapping[str, tuple[bool, bool]]
) -> tuple[bool, bool, int, int]:
    gravest = min(weights.get(path, (True, True)) for path in question.paths)
    return *gravest, -question.unlocks, -question.alone

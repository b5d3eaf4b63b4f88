"""What to write to a supplier: what to explain, what to correct, what to provide.

Promises that cannot be kept and statements that contradict each other come first, then what
is wrong in the design, then what is missing; in each the gravest first.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from ..finding import CLEAR, Cause, Finding, Severity
from ..judging.promised import Promised
from ..judging.review import Review
from ..judging.unmeasured import to_measure
from .questions import QuestionGroup, SupplierQuestion, asks, groups_of
from .requirements import Requirement, requirements_of

DOUBTED = ("impossible", "unlikely")


@dataclass(frozen=True, slots=True)
class Wanted:
    """One value to provide.

    group: the part that it belongs to; bounds: what it must be, as far as that is known;
    needed_for: the check that bounds it, else the gravest that lacks it.
    """

    group: QuestionGroup
    question: SupplierQuestion
    bounds: tuple[Requirement, ...]
    needed_for: str


@dataclass(frozen=True, slots=True)
class Letter:
    """The lists of a letter, each in the order in which it matters.

    explain: promises that the design cannot keep, as far as it is told; correct: causes of
    what fails, without what is told among the promises; provide: values that are missing;
    measure: what to read off a board, in words.
    """

    explain: tuple[Promised, ...]
    correct: tuple[Cause, ...]
    provide: tuple[Wanted, ...]
    measure: str = ""


def letter_of(review: Review, causes: Sequence[Cause]) -> Letter:
    """The letter about a review: its causes and promises, and what it leaves open."""
    doubted = tuple(item for item in review.promises if item.outlook in DOUBTED)
    told = {x.told_by for x in doubted} | set(_of_the_figure(review, doubted))
    holding = {id(item) for item in review.verdict.holding}
    correct = tuple(
        left
        for cause in causes
        if (left := _untold(cause, told)) and any(id(x) in holding for x in left.findings)
    )
    readings = to_measure(x for x in review.findings if not x.permitted)
    return Letter(doubted, correct, tuple(_provide(review)), readings)


def _of_the_figure(review: Review, doubted: Iterable[Promised]) -> Iterator[str]:
    """The checks that give a number for what a doubted promise promises."""
    names = {item.name for item in doubted}
    for promise in review.catalogue.promises:
        if promise.name in names:
            yield from (x.check for x in promise.checks if x.allows or x.says)


def _untold(cause: Cause, told: Collection[str]) -> Cause | None:
    """A cause without the findings of checks that are told already; None where none is left.

    A value that looks like a slip is told whatever it spoils.
    """
    left = tuple(x for x in cause.findings if x.check not in told)
    if not left or cause.kind == "suspect" or cause.findings[0] is left[0]:
        return replace(cause, findings=left) if left else None
    return replace(cause, kind="part", findings=left)


def _provide(review: Review) -> Iterator[Wanted]:
    """What is missing: what can be critical first, then what can be major, safety ahead in each."""
    bounds: dict[str, list[Requirement]] = {}
    for part in requirements_of(review):
        for item in part.bounds:
            for path in item.paths:
                bounds.setdefault(path, []).append(item)
    weights = _weights(review)
    wanted = []
    for group in groups_of(review):
        for question in group.questions:
            known = tuple(bounds.get(question.paths[0], ()))
            weight = min(weights[path] for path in question.paths if path in weights)
            title = known[0].title if known else weight.title
            order = (*weight[:2], -question.alone, -question.unlocks)
            wanted.append((order, Wanted(group, question, known, title)))
    yield from (item for _, item in sorted(wanted, key=lambda pair: pair[0]))


class Weight(NamedTuple):
    """How much hangs on a value: the worst that a check of it can find, and safety."""

    worst: int
    is_mild: bool
    title: str


def _weights(review: Review) -> Mapping[str, Weight]:
    found: dict[str, Weight] = {}
    for item in (x for x in review.findings if asks(x)):
        for gap in item.advice.missing:
            weight = Weight(_worst(review, item), item.stake != "safety", item.title)
            found[gap.path] = min(weight, found.get(gap.path, weight), key=lambda x: x[:2])
    return found


def _worst(review: Review, item: Finding) -> int:
    """The rank of the gravest finding that can come of an open answer; ahead what always holds."""
    entry = review.catalogue.entry(item.check)
    if item.holds_always:
        return -1
    stated = [x.rank for x in Severity if entry and getattr(entry.check.limits, x.value)]
    return min(stated, default=CLEAR)

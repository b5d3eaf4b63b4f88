"""Many specs in one go, by whatever executor of ``concurrent.futures`` the caller has.

Only paths and terms go to a worker and only findings come back; the catalogue, which
holds functions, is put back on this side.  Outcomes come in the order of the paths, and
few are under way at a time, so memory stays flat.
"""

from collections import deque
from collections.abc import Iterable, Iterator
from concurrent.futures import Executor, Future
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal

from .changes.stages import with_remedies
from .check import Milestone
from .evaluation.catalogue import without_checks
from .finding import Severity
from .judging.criteria import USUAL, Terms, criteria_for
from .judging.review import Outcome, Review, review_file

UNDER_WAY = 64

Wanted = Literal["all", "holding", "none"]


@dataclass(frozen=True, slots=True)
class Order:
    """What is asked for each spec.

    remedies: findings that proven changes are wanted for; checks: only those of these checks.
    """

    milestone: Milestone | None = None
    hold_at: Severity | None = None
    terms: Terms = USUAL
    remedies: Wanted = "none"
    checks: tuple[str, ...] = ()


PLAIN = Order()


def review_many(
    paths: Iterable[Path], executor: Executor | None = None, order: Order = PLAIN
) -> Iterator[Outcome]:
    """Review each file: in this thread, or by an executor of threads or processes.

    Gives for each path in turn a review, or the refusals of a file that cannot be
    assessed.  Whatever a worker raises is raised here.
    """
    if executor is None:
        yield from (review_one(path, order) for path in paths)
        return
    waiting: deque[tuple[Path, Future[Outcome]]] = deque()
    for path in paths:
        waiting.append((path, executor.submit(_light, path, order)))
        if len(waiting) >= UNDER_WAY:
            yield _whole(*waiting.popleft(), order)
    while waiting:
        yield _whole(*waiting.popleft(), order)


def review_one(path: Path, order: Order) -> Outcome:
    """Review one file as ordered."""
    outcome = review_file(path, order.milestone, order.hold_at, order.terms)
    if isinstance(outcome, Review) and order.remedies != "none":
        only_holding = order.remedies == "holding" and not order.checks
        return with_remedies(outcome, only_holding, order.checks)
    return outcome


def _light(path: Path, order: Order) -> Outcome:
    """In the worker: the review without what the other side has anyway."""
    outcome = review_one(path, order)
    if not isinstance(outcome, Review):
        return outcome
    spec = replace(outcome.spec, defaults={})
    criteria = replace(outcome.criteria, house=None)
    return replace(outcome, spec=spec, catalogue=without_checks(spec.schema), criteria=criteria)


def _whole(path: Path, future: Future[Outcome], order: Order) -> Outcome:
    """The outcome of a worker, made whole again."""
    outcome = future.result()
    if not isinstance(outcome, Review):
        return outcome
    criteria = criteria_for(path, order.terms)
    if isinstance(criteria, tuple):
        return criteria
    whole = replace(criteria, day=outcome.criteria.day)
    spec = whole.applied(outcome.spec)
    return replace(outcome, spec=spec, catalogue=whole.catalogue, criteria=whole)

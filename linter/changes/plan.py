"""The whole plan: a short sequence of changes after which a held spec is released.

Step by step the gravest holding finding is cured by its best proven remedy, and the spec
is reviewed again.  What could not be cured is tried once more after the last step; what is
left then is an obstacle, told with what stands in the way.
The work is bounded by what is computed, not by a clock, so that the outcome depends on the
spec alone; what was left for want of time is told as well.
"""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from ..finding import Finding, Remedy, Status
from ..judging.review import Review
from .effect import Key
from .remedy import Advisor

MOST_STEPS = 40
MOST_COMPUTATIONS = 500_000
NOT_TRIED = (
    "not looked into, because the plan has reached its bound; make the changes above and ask again"
)


@dataclass(frozen=True, slots=True)
class Step:
    """One change of the plan and the finding that called for it."""

    finding: Finding
    remedy: Remedy


@dataclass(frozen=True, slots=True)
class Plan:
    """Steps in order, the review after them, and what still stands in the way."""

    steps: tuple[Step, ...]
    after: Review
    obstacles: tuple[str, ...]

    @property
    def changes(self) -> Mapping[str, str]:
        """All changes together; where a leaf is changed twice, the last value."""
        return {path: text for step in self.steps for path, text in step.remedy.changes}


def plan(start: Review, most_computations: int = MOST_COMPUTATIONS) -> Plan:
    """The changes after which a review would release the spec, as far as they exist.

    most_computations: how much may be computed before no further finding is taken up.
    """
    steps: list[Step] = []
    hopeless: set[Key] = set()
    advisor, tried_anew = Advisor(start), True
    while advisor.reruns.run.computations.number <= most_computations and len(steps) < MOST_STEPS:
        finding = _next(advisor.review, hopeless)
        if finding is None and tried_anew:
            break
        if finding is None:  # a step made since may have opened a way
            hopeless, tried_anew = set(), True
            continue
        remedy = advisor.best(finding)
        if remedy is None:
            hopeless.add((finding.check, finding.subject))
            continue
        steps.append(Step(finding, remedy))
        advisor, tried_anew = advisor.after(remedy), not hopeless
    return Plan(tuple(steps), advisor.review, tuple(_obstacles(advisor, hopeless)))


def _obstacles(advisor: Advisor, hopeless: Collection[Key]) -> Iterator[str]:
    """What still holds the spec, each with the reason."""
    holding = {(item.check, item.subject) for item in advisor.review.verdict.holding}
    for item in advisor.review.failing():
        key, name = (item.check, item.subject), f"{item.check} ({item.subject})"
        if key in holding:
            why = advisor.obstacle(item) if key in hopeless else NOT_TRIED
            yield f"{name}: {why}"
    for item in advisor.review.verdict.holding:
        if item.status is Status.OPEN:
            yield _question(item)


def _next(now: Review, hopeless: Collection[Key]) -> Finding | None:
    """The gravest holding finding that has not been tried in vain."""
    holding = {(item.check, item.subject) for item in now.verdict.holding}
    for item in now.failing():
        key = (item.check, item.subject)
        if key in holding and key not in hopeless:
            return item
    return None


def _question(item: Finding) -> str:
    asked = ", ".join(missing.path for missing in item.advice.missing[:4])
    return f"{item.check} ({item.subject}) is open: {asked or item.message}"

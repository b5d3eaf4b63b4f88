"""The whole plan: a short sequence of changes after which a held spec is released.

Step by step the gravest holding finding is cured by its best proven remedy, and the spec
is reviewed again.  What cannot be cured is an obstacle, told with what stands in the way.
The work is bounded by what is computed, not by a clock, so that the outcome depends on the
spec alone; what was left for want of effort is told as well.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from .finding import Finding, Remedy, Status
from .remedy import Advisor
from .review import Review

MOST_STEPS = 40
MOST_EFFORT = 210_000
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


def plan(start: Review, most_effort: int = MOST_EFFORT) -> Plan:
    """The changes after which a review would release the spec, as far as they exist.

    most_effort: how much may be computed before no further finding is taken up.
    """
    steps: list[Step] = []
    obstacles: dict[tuple[str, str], str] = {}
    advisor = Advisor(start)
    while (finding := _next(advisor.review, obstacles)) is not None:
        name = f"{finding.check} ({finding.subject})"
        spent = advisor.bench.run.effort.spent
        if spent > most_effort or len(steps) == MOST_STEPS:
            obstacles[finding.check, finding.subject] = f"{name}: {NOT_TRIED}"
            continue
        remedy = advisor.best(finding)
        if remedy is None:
            obstacles[finding.check, finding.subject] = f"{name}: {advisor.obstacle(finding)}"
            continue
        steps.append(Step(finding, remedy))
        advisor = advisor.after(remedy)
    now = advisor.review
    opened = [item for item in now.verdict.holding if item.status is Status.OPEN]
    for item in opened:
        obstacles[item.check, item.subject] = _question(item)
    held = {(item.check, item.subject) for item in now.verdict.holding}
    return Plan(tuple(steps), now, tuple(text for key, text in obstacles.items() if key in held))


def _next(now: Review, obstacles: Mapping[tuple[str, str], str]) -> Finding | None:
    """The gravest holding finding that is not yet known as an obstacle."""
    holding = {(item.check, item.subject) for item in now.verdict.holding}
    for item in now.failing():
        key = (item.check, item.subject)
        if key in holding and key not in obstacles:
            return item
    return None


def _question(item: Finding) -> str:
    asked = ", ".join(missing.path for missing in item.missing[:4])
    return f"{item.check} ({item.subject}) is open: {asked or item.message}"

"""The whole plan: a short sequence of changes after which a held spec is released.

Step by step the gravest holding finding is cured by its best proven remedy, and the spec
is reviewed again.  What could not be cured is tried once more after the last step; what is
left then is an obstacle, told with what stands in the way.
A promise is lowered when all else is done, and only for what failed before the first step:
no step pays with a promise for what another one has spoilt.  A promise that comes down in the end
is not paid for in parts as well: the plan is made again without the steps that tried to keep it,
and that one counts where it leaves no more and takes fewer values.
The work is bounded by what is computed, not by a clock, so that the outcome depends on the
spec alone; what was left for want of time is told as well.
"""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from ..check import Lever
from ..declare import local_path
from ..finding import Finding, Remedy, Status
from ..judging.review import Review
from ..judging.stated import UNUSUAL
from .effect import Key
from .faults import WEIGHTS
from .remedy import Advisor

MOST_STEPS = 40
MOST_OFFERS = 3
MOST_COMPUTATIONS = 500_000
PROMISED = "it takes a lowered promise, which is no way out of what a change above brings about"
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
    course = _made_of(start, most_computations, frozenset())
    in_vain = course.kept_in_vain()
    if in_vain:
        course = min(course, _made_of(start, most_computations, in_vain), key=_Course.cost)
    return Plan(tuple(course.steps), course.advisor.review, tuple(course.obstacles()))


def _made_of(start: Review, most_computations: int, given_up: frozenset[str]) -> "_Course":
    course = _Course(start, most_computations, given_up)
    course.go_on(lowering=False)
    course.go_on(lowering=True)
    return course


class _Course:
    """The steps so far, and what has been tried in vain since the last one.

    given_up: promises that come down in any case, so that nothing else is done for them.
    """

    def __init__(self, start: Review, most_computations: int, given_up: frozenset[str]) -> None:
        self._given_up = given_up
        self.advisor = Advisor(start)
        self.steps: list[Step] = []
        self._most = most_computations
        self._at_start = _holding(start).keys()
        self._hopeless: dict[Key, str] = {}

    def go_on(self, lowering: bool) -> None:
        """Make steps until none is left; with ``lowering`` promises may be lowered."""
        self._hopeless, tried_anew = {}, True
        while self._computed <= self._most and len(self.steps) < MOST_STEPS:
            finding = _next(self.advisor.review, self._hopeless)
            if finding is None and tried_anew:
                break
            if finding is None:  # a step made since may have opened a way
                self._hopeless, tried_anew = {}, True
                continue
            if self._made(finding, lowering):
                tried_anew = not self._hopeless

    @property
    def _computed(self) -> int:
        return self.advisor.reruns.run.nodes.computations.number

    def _made(self, finding: Finding, lowering: bool) -> bool:
        """Make the best proven change for a finding, where it may be made."""
        key, why = (finding.check, finding.subject), ""
        remedy = self._best(finding)
        if remedy is not None and remedy.kind == "promise" and key not in self._at_start:
            remedy, why = None, PROMISED
        if remedy is None or (remedy.kind == "promise" and not lowering):
            self._hopeless[key] = why
            return False
        after = self.advisor.after(remedy)
        heavier = _weight(after.review) >= _weight(self.advisor.review)
        if heavier and remedy.kind != "slip":
            self._hopeless[key] = _but(remedy, after.review)
            return False
        self.steps.append(Step(finding, remedy))
        self.advisor = after
        return True

    def _grown(self, finding: Finding, remedy: Remedy) -> bool:
        """Whether a step before has moved a value that may not move far."""
        bounded = {x.path for x in self._levers(finding) if x.within < float("inf")}
        made = {path for step in self.steps for path, _ in step.remedy.changes}
        moved = (path for path, _ in remedy.changes if local_path(path) in bounded)
        return any(path in made for path in moved)

    def _best(self, finding: Finding) -> Remedy | None:
        """The first remedy; else, and where a promise is given up, the first that lowers it."""
        first = self.advisor.best(finding)
        kept = not self._claims(finding) & self._given_up
        if first is None or (kept and not self._grown(finding, first)):
            return first
        found = self.advisor.first_hand(finding, MOST_OFFERS)
        return next((x for x in found if x.kind == "promise"), None)

    def _claims(self, finding: Finding) -> frozenset[str]:
        """The promises that would cure a finding if they came down."""
        nature_of = self.advisor.review.spec.schema.nature_of
        paths = (lever.path for lever in self._levers(finding))
        return frozenset(path for path in paths if nature_of(path) == "claim")

    def _levers(self, finding: Finding) -> tuple[Lever, ...]:
        """What the check of a finding says can be changed."""
        entry = self.advisor.review.catalogue.entry(finding.check)
        return entry.check.levers if entry else ()

    def cost(self) -> tuple[float, int]:
        """What still weighs in the end, then how many values it takes."""
        values = {path for step in self.steps for path, _ in step.remedy.changes}
        return _weight(self.advisor.review), len(values)

    def kept_in_vain(self) -> frozenset[str]:
        """Promises that came down although a step before was made to keep them."""
        lowered = (step.remedy for step in self.steps if step.remedy.kind == "promise")
        down = frozenset(local_path(path) for remedy in lowered for path, _ in remedy.changes)
        kept = (step for step in self.steps if step.remedy.kind != "promise")
        return down & frozenset[str]().union(*(self._claims(step.finding) for step in kept))

    def obstacles(self) -> Iterator[str]:
        """What still holds the spec, each with the reason."""
        review = self.advisor.review
        holding = _holding(review)
        for item in review.failing():
            key, name = (item.check, item.subject), f"{item.check} ({item.subject})"
            if key in holding:
                tried = key in self._hopeless
                why = self._hopeless.get(key) or self.advisor.obstacle(item)
                yield f"{name}: {why if tried else NOT_TRIED}"
        for item in review.verdict.holding:
            if item.status is Status.OPEN:
                yield _question(item)


def _holding(review: Review) -> dict[Key, Finding]:
    """The findings that hold a review, without what is merely open."""
    found = review.verdict.holding
    return {(x.check, x.subject): x for x in found if x.status is Status.FINDING}


def _weight(review: Review) -> float:
    """How much what holds a review weighs altogether, without what is merely open."""
    return sum(WEIGHTS[x.severity] for x in _holding(review).values() if x.severity)


def _but(remedy: Remedy, after: Review) -> str:
    """What a change would bring about, where that weighs as much as what it ends."""
    changes = " and ".join(f"{path} to {text}" for path, text in remedy.changes[:2])
    brought = [x for x in _holding(after) if f"{x[0]} ({x[1]})" in remedy.appeared]
    named = ", ".join(f"{check} ({subject})" for check, subject in brought)
    return f"{changes} fixes it, but introduces {named}"


def _next(now: Review, hopeless: Collection[Key]) -> Finding | None:
    """The first slip, then the gravest holding finding, that has not been tried in vain."""
    holding = {(item.check, item.subject) for item in now.verdict.holding}
    for item in sorted(now.failing(), key=lambda x: x.check != UNUSUAL):
        key = (item.check, item.subject)
        if key in holding and key not in hopeless:
            return item
    return None


def _question(item: Finding) -> str:
    asked = ", ".join(missing.path for missing in item.advice.missing[:4])
    return f"{item.check} ({item.subject}) is open: {asked or item.message}"

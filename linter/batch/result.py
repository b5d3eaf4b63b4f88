"""What is handed back of a review in a batch: small plain data, the whole only on request."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Literal

from ..finding import Finding
from ..judging.review import Outcome, Review

Word = Literal["released", "held", "not assessed"]


@dataclass(frozen=True, slots=True)
class Margin:
    """How far one answer is from its limit, in SI units.

    distance: from figure to limit, negative when missed; share: the same as a share of the
    limit, None where such a share means nothing.
    """

    check: str
    subject: str
    unit: str
    figure: float | None
    limit: float | None
    distance: float | None
    share: float | None


@dataclass(frozen=True, slots=True)
class Result:
    """What becomes of one item.

    number: its place among the items, from 0.  counts: answers of each severity and kind.
    holding: the checks that hold it, the gravest first, each once.  margins: those asked for.
    problems: why it was not assessed.  outcome: the whole review or the refusals, on request.
    """

    number: int
    name: str
    verdict: Word
    counts: Mapping[str, int] = field(default_factory=dict)
    holding: tuple[str, ...] = ()
    margins: tuple[Margin, ...] = ()
    problems: tuple[str, ...] = ()
    outcome: Outcome | None = None

    @property
    def released(self) -> bool:
        """Whether the design may go on; what was not assessed may not."""
        return self.verdict == "released"


def result_of(
    number: int, name: str, outcome: Outcome, margins: tuple[str, ...], whole: bool
) -> Result:
    """The result that tells of a review, or of refusals."""
    kept = outcome if whole else None
    if not isinstance(outcome, Review):
        problems = tuple(f"{x.problem}; expected {x.expected}" for x in outcome)
        return Result(number, name, "not assessed", problems=problems, outcome=kept)
    return Result(
        number,
        name,
        "released" if outcome.verdict.released else "held",
        outcome.counts(),
        tuple(dict.fromkeys(_holding(outcome))),
        tuple(_margin(x) for x in outcome.findings if x.check in margins),
        outcome=kept,
    )


def _holding(review: Review) -> Iterator[str]:
    """The checks that hold a review: findings first, then what is open."""
    held = {(item.check, item.subject, item.message) for item in review.verdict.holding}
    yield from (x.check for x in review.failing() if (x.check, x.subject, x.message) in held)
    yield from (x.check for x in review.verdict.holding if x.severity is None)


def _margin(item: Finding) -> Margin:
    found = item.evidence
    numbers = (found.figure, found.limit, found.distance, found.margin)
    return Margin(item.check, item.subject, found.unit, *numbers)

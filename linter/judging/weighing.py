"""Which of two reviews of a product stands better at the gate.

The gate decides first: released or held.  Then the critical findings, the major ones and the
open items that hold are counted, and then the margins of what fails are compared, the gravest
first.  A finding that fell silent, because the spec no longer says what it rested on, counts
as if it were still there.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from ..evaluation.threshold import further_off
from ..finding import CLEAR, Finding, Severity, Status
from .review import Review

Outcome = Literal["better", "worse", "neither"]
NOTICEABLE = 0.01
LOST = "released before, held now"
WON = "held before, released now"
ALIKE = "verdict, findings and margins of what fails are as before"


@dataclass(frozen=True, slots=True)
class Pair:
    """The answers of one check for one subject, before and now; None where not asked.

    silent: whether a finding fell silent.
    """

    old: Finding | None
    new: Finding | None
    silent: bool = False

    @property
    def weight(self) -> int:
        """The rank of the graver of both answers."""
        return min(_weight(self.old), _weight(self.new))

    @property
    def is_worse(self) -> bool:
        """Whether the newer answer is graver, noticeably further off, or missing."""
        before, now = _weight(self.old), _weight(self.new)
        off = before == now and further_off(self.old, self.new, NOTICEABLE)
        return self.silent or now < before or off

    @property
    def is_better(self) -> bool:
        """The same the other way round; silence is no improvement."""
        return not self.silent and Pair(self.new, self.old).is_worse


def weighed(old: Review, new: Review, pairs: Sequence[Pair]) -> tuple[Outcome, str]:
    """Whether the newer review is better or worse, and what decides it."""
    silent = [pair.old for pair in pairs if pair.silent and pair.old]
    if new.verdict.released and any(item in old.verdict.holding for item in silent):
        return "worse", "held before, and released now only for want of an answer"
    if old.verdict.released != new.verdict.released:
        return ("worse", LOST) if old.verdict.released else ("better", WON)
    for name, before, now in _counted(old, new, silent):
        if before != now:
            return ("better" if now < before else "worse"), f"{name}: {before} before, {now} now"
    for severity in Severity:
        moved = [pair for pair in pairs if pair.weight == severity.rank]
        worse = [pair for pair in moved if pair.is_worse]
        better = [pair for pair in moved if pair.is_better]
        if worse or better:
            outcome: Outcome = "worse" if worse else "better"
            return outcome, f"{severity}: {_names(worse or better)} {outcome} than before"
    return "neither", ALIKE


def _counted(old: Review, new: Review, silent: Sequence[Finding]) -> Iterator[tuple[str, int, int]]:
    """What is counted, in the order in which it decides; less is better."""
    for severity in (Severity.CRITICAL, Severity.MAJOR):
        more = sum(1 for item in silent if _weight(item) == severity.rank)
        yield f"{severity} findings", _found(old, severity), _found(new, severity) + more
    yield "open items that hold", _open(old), _open(new)


def _found(review: Review, severity: Severity) -> int:
    return sum(1 for item in review.findings if _weight(item) == severity.rank)


def _open(review: Review) -> int:
    return sum(1 for item in review.verdict.holding if item.status is Status.OPEN)


def _weight(item: Finding | None) -> int:
    """The rank of an answer; what is permitted does not count."""
    return CLEAR if item is None or item.permitted else item.rank


def _names(pairs: Sequence[Pair]) -> str:
    names = [f"{x.check} ({x.subject})" for pair in pairs if (x := pair.new or pair.old)]
    return ", ".join(names[:2]) + (f" and {len(names) - 2} more" if len(names) > 2 else "")

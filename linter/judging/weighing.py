"""Which of two reviews of a product stands better at the gate.

Both are judged at one milestone, the stricter one.  The gate decides first: released or held.
Then the critical findings, the major ones and the open items that hold are counted, and then the
margins of what fails are compared, the gravest first; where all that is alike, a guard that is
gone with answers that met, and answers that met and are open now, are a loss.  Fewer majors do
not outweigh a critical finding that lies further off than before.  A finding that fell silent,
because the spec no longer says what it rested on, or that an estimate made milder, counts as if it
were still there, and so does an open item whose figure met its limit, as far as known, and misses
it now.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from ..evaluation.threshold import further_off
from ..finding import CLEAR, Finding, Severity, Status
from .review import Review

Direction = Literal["better", "worse", "neither"]
NOTICEABLE = 0.01
LOST = "released before, held now"
NOT_THERE = Status.NOT_APPLICABLE
WON = "held before, released now"
ALIKE = "no change in verdict, findings or margins of what fails"


def rank(answer: Finding | None) -> int:
    """The rank of an answer; ``CLEAR`` too where there is none."""
    return CLEAR if answer is None else answer.rank


@dataclass(frozen=True, slots=True)
class Pair:
    """The answers of one check for one subject, before and now; None where not asked.

    silent: whether a finding fell silent.  unguarded: whether one of the answers rests on a
    guard that the other spec does not have.
    """

    old: Finding | None
    new: Finding | None
    silent: bool = False
    unguarded: bool = False

    @property
    def is_lost(self) -> bool:
        """Whether an answer that met is open now, or gone with its guard."""
        if self.old is None or self.old.status is not Status.MEETS:
            return False
        opened = self.new is not None and self.new.status is Status.OPEN
        return opened or (self.unguarded and (self.new is None or self.new.status is NOT_THERE))

    @property
    def is_broken(self) -> bool:
        """Whether an open item whose figure was better is a finding now."""
        was_open = self.old is not None and self.old.status is Status.OPEN
        return was_open and further_off(self.old, self.new, NOTICEABLE)

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


def weighed(old: Review, new: Review, pairs: Sequence[Pair]) -> tuple[Direction, str]:
    """Whether the newer review is better or worse, and what decides it."""
    return next(_decided(old, new, pairs), ("neither", ALIKE))


def _decided(old: Review, new: Review, pairs: Sequence[Pair]) -> Iterator[tuple[Direction, str]]:
    """What speaks for one of the two, in the order in which it decides."""
    silent = [pair.old for pair in pairs if pair.silent and pair.old]
    if new.verdict.released and any(item in old.verdict.holding for item in silent):
        yield "worse", "held before, released now only because an answer is missing"
    if old.verdict.released != new.verdict.released:
        yield ("worse", LOST) if old.verdict.released else ("better", WON)
    yield from _by_count("critical findings", *_found(old, new, silent, Severity.CRITICAL))
    yield from _by_margin(pairs, Severity.CRITICAL, "worse")
    yield from _by_count("major findings", *_found(old, new, silent, Severity.MAJOR))
    yield from _by_count("open items that hold", *_open_in(old, new, pairs))
    for severity in Severity:
        yield from _by_margin(pairs, severity, "worse")
        yield from _by_margin(pairs, severity, "better")
    yield from _by_answers(pairs)


def _by_answers(pairs: Sequence[Pair]) -> Iterator[tuple[Direction, str]]:
    """What met and is open or gone now, where nothing met in its place."""
    lost = [pair for pair in pairs if pair.is_lost]
    answered = [x for x in pairs if Pair(x.new, x.old, unguarded=x.unguarded).is_lost]
    if lost and not answered:
        yield "worse", f"met before and not any more: {_names(lost)}"
    if answered and not lost:
        yield "better", f"open before, met now: {_names(answered)}"


def _by_count(name: str, before: int, now: int, silent: int = 0) -> Iterator[tuple[Direction, str]]:
    """What became fewer or more; what is not proven gone counts as if it were still there."""
    if before != now + silent:
        more = f" and {silent} not proven gone" if silent else ""
        outcome: Direction = "better" if now + silent < before else "worse"
        yield outcome, f"{name}: {before} before, {now} now{more}"


def _by_margin(
    pairs: Sequence[Pair], severity: Severity, outcome: Direction
) -> Iterator[tuple[Direction, str]]:
    moved = [pair for pair in pairs if pair.weight == severity.rank]
    found = [pair for pair in moved if (pair.is_worse if outcome == "worse" else pair.is_better)]
    if found:
        yield outcome, f"{severity}: {_names(found)} {outcome} than before"


def _found(
    old: Review, new: Review, silent: Sequence[Finding], severity: Severity
) -> tuple[int, int, int]:
    """Findings of a severity before and now, and those that fell silent."""
    before, now, still = (
        sum(1 for item in items if _weight(item) == severity.rank)
        for items in (old.findings, new.findings, silent)
    )
    return before, now, still


def _open_in(old: Review, new: Review, pairs: Sequence[Pair]) -> tuple[int, int]:
    """Open items that hold, before and now; one that turned into a finding is still there."""
    broken = sum(1 for pair in pairs if pair.old in old.verdict.holding and pair.is_broken)
    cured = [pair for pair in pairs if pair.new in new.verdict.holding]
    return (
        _open(old) + sum(1 for pair in cured if Pair(pair.new, pair.old).is_broken),
        _open(new) + broken,
    )


def _open(review: Review) -> int:
    return sum(1 for item in review.verdict.holding if item.status is Status.OPEN)


def _weight(item: Finding | None) -> int:
    """The rank of an answer; what is permitted does not count."""
    return CLEAR if item is None or item.permitted else item.rank


def _names(pairs: Sequence[Pair]) -> str:
    names = [f"{x.check} ({x.subject})" for pair in pairs if (x := pair.new or pair.old)]
    return ", ".join(names[:2]) + (f" and {len(names) - 2} more" if len(names) > 2 else "")

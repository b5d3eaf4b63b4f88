"""What a change did to one answer, in words."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from ..check import Check
from ..evaluation.threshold import further_off, missed, moved_off
from ..finding import CLEAR, Finding, Remedy, Severity, Status
from ..judging.review import STAKES
from ..judging.weighing import rank

KINDS = ("cured", "eased", "worsened", "appeared", "opened")

Key = tuple[str, str]
Gravity = tuple[int, int]
NO_LIMIT: Gravity = (-1, 0)
TOLD = 0.02
"""Share of a miss by which it may grow unsaid: less is no news."""
NOTICEABLE = 0.05
"""Share of a miss by which it may grow: less is lost in the estimates of a loss budget."""


def answers_of(findings: Iterable[Finding]) -> dict[Key, Finding]:
    """Answers by check and subject; of several built-in findings the gravest counts."""
    found: dict[Key, Finding] = {}
    for item in findings:
        key = (item.check, item.subject)
        if key not in found or rank(item) < rank(found[key]):
            found[key] = item
    return found


def in_text(value: object) -> str:
    """A new value as a reader would write it; a data-sheet line in flow style.

    >>> in_text({"min": "8 ns", "typ": "12 ns"})
    '{min: 8 ns, typ: 12 ns}'
    """
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{key}: {text}" for key, text in value.items()) + "}"
    return str(value)


def gravity(answer: Finding) -> Gravity:
    """How much an answer weighs: its severity, then what is at stake; the least is the gravest."""
    return answer.rank, STAKES.index(answer.stake)


def grave(answer: Finding) -> bool:
    """Whether an answer is a critical or a major finding."""
    return answer.rank <= Severity.MAJOR.rank


def spoils(old: Finding | None, new: Finding, limit: Gravity) -> bool:
    """Whether an answer is a new finding or a worse one that weighs too much to be taken.

    That is as much as what is to be cured; and a new major one is too much wherever safety
    or a rating is at stake.  A finding that moves by less than can be noticed is no worse.
    """
    effect = effect_of(old, new)
    if limit == NO_LIMIT or effect not in ("appeared", "worsened"):
        return False
    if rank(old) == rank(new):
        return gravity(new) <= limit and further_off(old, new, NOTICEABLE)
    return weighs(gravity(new), limit)


def may_spoil(old: Finding | None, check: Check, figure: float, limit: Gravity) -> bool:
    """Whether an answer with that figure may be spoilt, whatever the figure leans on.

    What an answer leans on can make it milder than its figure is, never graver.
    """
    severity = missed(check, figure)
    if severity is None or severity.rank > rank(old):
        return False
    if severity.rank == rank(old) and not (old and moved_off(old, figure, NOTICEABLE)):
        return False
    return weighs((severity.rank, STAKES.index(check.stake)), limit)


def weighs(weight: Gravity, limit: Gravity) -> bool:
    """Whether a finding is as grave as a limit, or grave where more than performance is lost."""
    of_performance = STAKES[weight[1]] == "performance"
    return weight <= limit or (weight[0] <= Severity.MAJOR.rank and not of_performance)


def settled(answer: Finding | None) -> bool:
    """Whether an answer is no finding any more, though it may still be open."""
    return answer is None or answer.status is not Status.FINDING


def is_open(answer: Finding | None) -> bool:
    """Whether nothing was known, or the check did not concern the design."""
    return answer is not None and answer.status in (Status.OPEN, Status.NOT_APPLICABLE)


def eased(old: Finding, new: Finding | None) -> bool:
    """Whether a finding is gone, or at least milder than it was."""
    return settled(new) or rank(new) > rank(old)


def effect_of(old: Finding | None, new: Finding | None) -> str:
    """What a change did to an answer: one of ``KINDS``, or nothing to be told.

    A finding that is open now is eased: what could be seen to fail is gone, the rest is asked.
    """
    before, after = rank(old), rank(new)
    opened = new is not None and new.status is Status.OPEN
    if opened and old is not None and old.status is Status.MEETS:
        return "opened"
    if opened and old is not None and old.status is Status.FINDING:
        return "eased"
    if before == after:
        return "worsened" if further_off(old, new, TOLD) else ""
    if before == CLEAR:
        return "appeared"
    if after == CLEAR:
        return "cured"
    return "eased" if after > before else "worsened"


def with_lists(remedy: Remedy, lists: Mapping[str, Iterable[str]]) -> Remedy:
    """A remedy with the labels of what it does to other answers, by ``KINDS``."""
    cured, eased, worsened, appeared, opened = (tuple(lists[kind]) for kind in KINDS)
    return replace(
        remedy,
        cured=cured,
        eased=eased,
        worsened=worsened,
        appeared=appeared,
        opened=opened,
    )


def label_of(key: Key) -> str:
    """An answer as reports name it."""
    return f"{key[0]} ({key[1]})"


def doubt(item: Finding) -> tuple[str, str]:
    """What tells one finding on a stated value from another of the same kind."""
    return item.check, item.place.path if item.place else ""

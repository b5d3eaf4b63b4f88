"""A word on which it hangs whether many checks concern the design is asked for once.

Where the spec is silent about such a word, every one of these checks would be open for the same
answer.  One of them asks, in a way that nobody can accept away; the others say on what they
hang, and which check asks for it.  So do those whose value hangs on the word: they are open
without it, and one of its words would answer them.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from functools import cached_property

from ..check import Check
from ..finding import Evidence, Finding, Status
from .answers import SILENT
from .catalogue import Entry
from .gap import Gap

MANY = 3
MOST_NAMES = 4
Question = tuple[Entry, str]
Fits = Callable[[Check, str], bool | Gap]
Answered = Callable[[Finding, str], bool]


class AskedOnce:
    """Which check asks for each silent word, over one run.

    questions: every check with every subject; fits: whether a check concerns the design; judge:
    the answer of a check before others are heard; answered: whether one of its words at a path
    would answer an open finding.
    """

    def __init__(
        self,
        questions: Iterable[Question],
        fits: Fits,
        judge: Callable[[Entry, str], Finding],
        answered: Answered,
    ) -> None:
        self._questions = questions
        self._fits = fits
        self._judge = judge
        self._answered = answered
        self._asking: dict[str, Finding | None] = {}

    @cached_property
    def _hanging(self) -> dict[str, list[Question]]:
        """What hangs on each silent word."""
        found: dict[str, list[Question]] = {}
        for entry, subject in self._questions:
            word = self.word(entry.check, subject)
            if word:
                found.setdefault(word, []).append((entry, subject))
        return found

    def word(self, check: Check, subject: str) -> str:
        """The one silent word on which it hangs whether a check concerns the design, if any."""
        found = self._fits(check, subject) if check.applies else True
        if not isinstance(found, Gap) or found.absent or found.assumed or found.others:
            return ""
        return found.missing[0].path if len(found.missing) == 1 else ""

    def heard(self, found: Finding, check: Check) -> Finding:
        """An open answer as it is told beside the others that hang on the same word."""
        word = self.word(check, found.subject) or self._answering(found)
        asking = self._asker(word) if word else None
        if asking is None:
            return found
        if asking.check != found.check:
            return _deferred(found, word, asking)
        found = replace(found, permissible=False)
        names = dict.fromkeys(entry.name for entry, _ in self._hanging[word])
        others = [name for name in names if name != found.check]
        if not others:  # the same check of other channels
            return found
        more = len(others) - MOST_NAMES
        listed = ", ".join(others[:MOST_NAMES]) + (f" and {more} more" if more > 0 else "")
        return replace(found, message=f"{found.message}; also depending on it: {listed}")

    def _answering(self, found: Finding) -> str:
        """The silent word, asked for by another check, that would answer an open finding."""
        words = (word for word in self._hanging if self._asker(word))
        return next((word for word in words if self._answered(found, word)), "")

    def _asker(self, word: str) -> Finding | None:
        """The first open answer that asks for a word on which many checks hang, safety first."""
        if word not in self._asking:
            hanging = self._hanging.get(word, [])
            grave = [x for x in hanging if x[0].check.limits.critical is not None]
            grave.sort(key=lambda x: x[0].check.stake != "safety")
            asking = (item for item in self._judged(grave) if _asks(item, word))
            self._asking[word] = next(asking, None) if len(hanging) >= MANY else None
        return self._asking[word]

    def _judged(self, questions: Iterable[Question]) -> Iterator[Finding]:
        return (self._judge(entry, subject) for entry, subject in questions)


def _asks(item: Finding, word: str) -> bool:
    """Whether an open answer asks for a word; one that waits for a look-up alone does not."""
    return item.status is Status.OPEN and any(gap.path == word for gap in item.advice.missing)


def _deferred(found: Finding, word: str, asking: Finding) -> Finding:
    """An open answer that waits for a word for which another check asks."""
    was = found.evidence
    return replace(
        found,
        status=Status.NOT_APPLICABLE,
        message=f"{SILENT}: it depends on {word}, which {asking.check} asks for",
        evidence=Evidence(was.unit, was.at_least, was.limits, was.sources),
        advice=replace(found.advice, missing=asking.advice.missing),
    )

"""A word on which it hangs whether many checks concern the design is asked for once.

Where the spec is silent about such a word, every one of these checks would be open for the same
answer.  One of them asks, of safety and open, so that nobody can accept the question away; the
others say on what they hang, and which check asks for it.
"""

from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import cached_property

from ..check import Check
from ..finding import Finding, Status
from .answers import SILENT
from .catalogue import Entry
from .gap import Gap

MANY = 3
MOST_NAMES = 4
Question = tuple[Entry, str]
Fits = Callable[[Check, str], bool | Gap]


class AskedOnce:
    """Which check asks for each silent word, over one run.

    questions: every check with every subject; fits: whether a check concerns the design; judge:
    the answer of a check before others are heard.
    """

    def __init__(
        self,
        questions: Iterable[Question],
        fits: Fits,
        judge: Callable[[Entry, str], Finding],
    ) -> None:
        self._questions = questions
        self._fits = fits
        self._judge = judge
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
        word = self.word(check, found.subject)
        asking = self._asker(word) if word else None
        if asking is None:
            return found
        if asking.check != found.check:
            text = f"{SILENT}: it depends on {word}, which {asking.check} asks for"
            return replace(found, status=Status.NOT_APPLICABLE, message=text)
        names = dict.fromkeys(entry.name for entry, _ in self._hanging[word])
        others = [name for name in names if name != found.check]
        if not others:  # the same check of other channels
            return found
        more = len(others) - MOST_NAMES
        listed = ", ".join(others[:MOST_NAMES]) + (f" and {more} more" if more > 0 else "")
        return replace(found, message=f"{found.message}; also depending on it: {listed}")

    def _asker(self, word: str) -> Finding | None:
        """The first open answer of safety that asks for a word on which many checks hang."""
        if word not in self._asking:
            hanging = self._hanging.get(word, [])
            answers = (
                self._judge(entry, subject)
                for entry, subject in hanging
                if entry.check.stake == "safety" and entry.check.limits.critical is not None
            )
            asking = (item for item in answers if item.status is Status.OPEN)
            self._asking[word] = next(asking, None) if len(hanging) >= MANY else None
        return self._asking[word]

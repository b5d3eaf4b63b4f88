"""Causes in words, the same in every report: headline, severity, changes, caution.

Equal causes of several channels are told as one.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from ..changes.numbering import headline_without_channel, numbered
from ..check import Caution
from ..declare import without_channel
from ..finding import Cause, Finding, Severity
from ..judging.review import Review
from .cautions import SIGNALS
from .change_words import SHORTER, WHOLE, change_in_words, together_in_words
from .groups import together


@dataclass(frozen=True, slots=True)
class CauseWords:
    """A cause as the reports print it.

    number: its place in the one order, from 1.  findings: of all channels that it is told of.
    together: all that is to be changed at once, in ever shorter forms; changes: one by one in
    full, each behind ``change``, ``and`` or ``or``; shorter: the same in ever shorter forms;
    note: why there is nothing, or what was tried.  is_of_part: whether nothing but a part holds
    the findings together.  is_numbered: whether changes were looked for.
    """

    number: int
    severity: Severity
    headline: str
    holds: bool
    findings: tuple[Finding, ...]
    together: tuple[str, ...]
    changes: tuple[tuple[str, str], ...]
    shorter: tuple[tuple[str, tuple[str, ...]], ...]
    note: str
    caution: Caution | None
    is_of_part: bool = False
    is_numbered: bool = True

    @property
    def mark(self) -> str:
        """The number to be read; without changes causes are grouped otherwise and have none."""
        return str(self.number) if self.is_numbered else ""

    @property
    def is_plain(self) -> bool:
        """Whether it is but one check, which says it all itself."""
        first = self.findings[0]
        return len({x.check for x in self.findings}) == 1 and self.headline.startswith(
            without_channel(first.message, first.subject)
        )


def cause_words(review: Review, causes: Sequence[Cause]) -> list[CauseWords]:
    """All causes in the order in which one would act, those of equal channels as one."""
    holding = {(x.check, x.subject, x.message) for x in review.verdict.holding}
    told = []
    for number, alike in enumerate(numbered(causes), start=1):
        first = alike[0]
        findings = tuple(finding for cause in alike for finding in cause.findings)
        changes = _changes(review, first, findings)
        told.append(
            CauseWords(
                number,
                first.severity,
                headline_without_channel(first) + _channels(review, alike),
                any((x.check, x.subject, x.message) in holding for x in findings),
                findings,
                _together(review, first, findings),
                tuple((label, forms[0]) for label, forms in changes),
                changes,
                first.note,
                _caution(first),
                first.kind == "part",
                review.advised,
            )
        )
    return told


def in_order(review: Review, causes: Sequence[CauseWords]) -> list[tuple[Finding, int | None]]:
    """Every answer in the one order of all reports, what fails with the number of its cause."""
    told = {id(item): cause.number for cause in causes for item in cause.findings}
    first = [(item, cause.number) for cause in causes for item in cause.findings]
    failing = [(item, None) for item in review.failing() if id(item) not in told]
    rest = [(item, None) for item in review.findings if item.severity is None]
    return [*first, *failing, *rest]


def _channels(review: Review, alike: Sequence[Cause]) -> str:
    """The channels that a cause of a single check is about, where there are several."""
    subjects = tuple(dict.fromkeys(x.subject for cause in alike for x in cause.findings))
    several = len(review.spec.channels) > 1 and set(subjects) <= set(review.spec.channels)
    return f" ({together(subjects)})" if several else ""


def _caution(cause: Cause) -> Caution | None:
    """The gravest caution among the findings."""
    cautions = [caution for finding in cause.findings for caution in finding.advice.cautions]
    return min(cautions, key=lambda x: list(SIGNALS).index(x.signal), default=None)


def _together(review: Review, cause: Cause, findings: Sequence[Finding]) -> tuple[str, ...]:
    """All that is to be changed at once, in ever shorter forms; nothing where there is nothing."""
    if not cause.remedies:
        return ()
    return tuple(together_in_words(review, findings, cause.remedies, x) for x in SHORTER)


def _changes(
    review: Review, cause: Cause, findings: Sequence[Finding]
) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """What to do together, then what may be done instead, each in ever shorter forms."""
    words = ["change", *["and"] * len(cause.remedies)][: len(cause.remedies)]
    words += ["or"] * len(cause.alternatives)
    remedies = (*cause.remedies, *cause.alternatives)
    forms = [
        tuple(change_in_words(review, findings, remedy, x) for x in (WHOLE, *SHORTER))
        for remedy in remedies
    ]
    return tuple(dict.fromkeys(zip(words, forms, strict=True)))

"""Causes in words, the same in every report: headline, severity, changes, caution.

Equal causes of several channels are told as one.
"""

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain

from ..check import Caution
from ..declare import local_path, without_channel
from ..finding import Cause, Finding, Remedy, Severity
from ..judging.review import Review
from .cautions import SIGNALS
from .groups import together
from .phrases import moves

MOST_NAMED = 2
MOST_VALUES = 3
EFFECTS = (("worsens", "worsened"), ("introduces", "appeared"), ("leaves open", "opened"))
PROVENANCE, VALUE = re.compile(r"\{value: (.+), from: \w+\}"), r"\1"


@dataclass(frozen=True, slots=True)
class CauseWords:
    """A cause as the reports print it.

    number: its place in the one order, from 1.  findings: of all channels that it is told of.
    together: all that is to be changed, in short; changes: one by one, each behind ``change``,
    ``and`` or ``or``; note: why there is nothing, or what was tried.  is_of_part: whether
    nothing but a part holds the findings together.
    """

    number: int
    severity: Severity
    headline: str
    holds: bool
    findings: tuple[Finding, ...]
    together: str
    changes: tuple[tuple[str, str], ...]
    note: str
    caution: Caution | None
    is_of_part: bool = False

    @property
    def is_plain(self) -> bool:
        """Whether it is but one check, which says it all itself."""
        first = self.findings[0]
        return len({x.check for x in self.findings}) == 1 and self.headline.startswith(
            without_channel(first.message, first.subject)
        )


def cause_words(review: Review, causes: Sequence[Cause]) -> list[CauseWords]:
    """All causes in the order in which one would act, those of equal channels as one."""
    found: dict[tuple[str, str], list[Cause]] = {}
    for cause in causes:
        found.setdefault((cause.kind, _headline(cause)), []).append(cause)
    holding = {(x.check, x.subject, x.message) for x in review.verdict.holding}
    told = []
    for number, (_, alike) in enumerate(found.items(), start=1):
        first = alike[0]
        findings = tuple(finding for cause in alike for finding in cause.findings)
        told.append(
            CauseWords(
                number,
                first.severity,
                _headline(first) + _channels(review, alike),
                any((x.check, x.subject, x.message) in holding for x in findings),
                findings,
                _together(review, findings, first.remedies),
                _changes(review, first, findings),
                first.note,
                _caution(first),
                first.kind == "part",
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


def _headline(cause: Cause) -> str:
    """The headline without the name of the channel, which the findings give."""
    names = dict.fromkeys(x.subject for x in cause.findings)
    text = cause.headline
    for name in names:
        text = without_channel(text, name)
    return text


def _channels(review: Review, alike: Sequence[Cause]) -> str:
    """The channels that a cause of a single check is about, where there are several."""
    subjects = tuple(dict.fromkeys(x.subject for cause in alike for x in cause.findings))
    several = len(review.spec.channels) > 1 and set(subjects) <= set(review.spec.channels)
    return f" ({together(subjects)})" if several else ""


def _caution(cause: Cause) -> Caution | None:
    """The gravest caution among the findings."""
    cautions = [caution for finding in cause.findings for caution in finding.advice.cautions]
    return min(cautions, key=lambda x: list(SIGNALS).index(x.signal), default=None)


def _changes(
    review: Review, cause: Cause, findings: Sequence[Finding]
) -> tuple[tuple[str, str], ...]:
    """What to do together, then what may be done instead."""
    words = ["change", *["and"] * len(cause.remedies)][: len(cause.remedies)]
    words += ["or"] * len(cause.alternatives)
    remedies = (*cause.remedies, *cause.alternatives)
    texts = [change_in_words(review, findings, remedy) for remedy in remedies]
    return tuple(dict.fromkeys(zip(words, texts, strict=True)))


def change_in_words(review: Review, about: Sequence[Finding], remedy: Remedy) -> str:
    """What to change, from, to, and what that does to the findings told of and to others."""
    old = {local_path(path): was for (path, _), was in zip(remedy.changes, remedy.was, strict=True)}
    parts = [
        f"{path} to {value}" + (f" (now {old[path]})" if old[path] else "")
        for path, value in moves(remedy.changes)
    ]
    title = f"{remedy.title}: " if remedy.kind == "design" and remedy.title else ""
    fixed, *effects = _effects(review, about, (remedy,))
    told = _lowered(review, (remedy,)) + title + " and ".join(parts)
    return "; ".join([told, *fixed, *chain(*effects)])


def _together(review: Review, about: Sequence[Finding], remedies: Sequence[Remedy]) -> str:
    """All changes at once in short: what they fix, what to change, what else they do."""
    if not remedies:
        return ""
    parts = dict.fromkeys(part for remedy in remedies for part in _in_short(remedy))
    fixed, *effects = _effects(review, about, remedies)
    head = f"{', '.join(fixed)}: " if fixed else ""
    return "; ".join([head + _lowered(review, remedies) + ", ".join(parts), *chain(*effects)])


def _in_short(remedy: Remedy) -> list[str]:
    """What to change, value by value; of a change of the design its name and the first values."""
    parts = [f"{path} to {PROVENANCE.sub(VALUE, value)}" for path, value in moves(remedy.changes)]
    if remedy.kind != "design" or not remedy.title or len(parts) == 1:
        return parts
    more = len(parts) - MOST_VALUES
    shown = ", ".join(parts[:MOST_VALUES]) + (f" and {more} more values" if more > 0 else "")
    return [f"{remedy.title} ({shown})"]


def _lowered(review: Review, remedies: Sequence[Remedy]) -> str:
    fields = [review.spec.schema.field_of(path) for x in remedies for path, _ in x.changes]
    return "lower the promise: " if any(field.promise for field in fields) else ""


def _effects(
    review: Review, about: Sequence[Finding], remedies: Sequence[Remedy]
) -> Iterator[list[str]]:
    """What remedies fix, what they worsen, introduce and leave open; empty where nothing."""
    own = {_label(x): x for x in about}
    gone = {label for remedy in remedies for label in remedy.cured}
    gone |= {label for label, x in own.items() if any(r in x.advice.remedies for r in remedies)}
    fixed, others = len(gone & own.keys()), len(gone - own.keys())
    told = [f"fixes {fixed} of {len(own)}"] if fixed < len(own) else []
    yield [*told, f"fixes {others} other finding{'' if others == 1 else 's'}"] if others else told
    titles = {_label(x): x.title for x in review.findings}
    for word, kind in EFFECTS:
        labels = [x for remedy in remedies for x in getattr(remedy, kind) if x not in gone]
        yield [f"{word} {titled(labels, titles)}"] if labels else []


def _label(item: Finding) -> str:
    return f"{item.check} ({item.subject})"


def titled(labels: Collection[str], titles: Mapping[str, str]) -> str:
    """Answers by their titles, the first ones."""
    names = list(dict.fromkeys(titles.get(x, x.partition(" (")[0]) for x in labels))
    more = len(names) - MOST_NAMED
    text = ", ".join(names[:MOST_NAMED])
    return f"{text} and {more} more" if more > 0 else text

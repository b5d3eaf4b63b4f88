"""Answers that rest on what nobody has seen in the source: from memory, or as others quote it."""

import re
from collections.abc import Iterator

from ..evaluation.recalled import Recalled, in_doubt, recalled
from ..finding import Finding, Status
from ..judging.review import Review

STANDARD = re.compile(r"[A-Z]{2,}[ -][\w-]*\d[\w-]*")
TITLE = re.compile(r"[^,:;]+")


def mark(review: Review, item: Finding) -> str:
    """How the limits or constants behind an answer are known, where nobody has seen them."""
    kinds = {x.source.kind for x in _behind(review, item)}
    if not kinds:
        return ""
    return "limit from memory" if "from memory" in kinds else "limit as quoted"


def marked(review: Review) -> list[Finding]:
    """The passes and findings that rest on such a limit."""
    return [item for item in review.findings if mark(review, item)]


def in_short(review: Review) -> str:
    """How many answers rest on such limits, in one line; empty where none does."""
    items = marked(review)
    if not items:
        return ""
    texts = {text_of(x) for item in items for x in _behind(review, item)}
    count = f"{_number(len(items), 'answer')}, {_number(len(texts), 'text')}"
    return f"limits from memory or as quoted: {count}; marked in --full"


def to_look_up(review: Review) -> dict[str, dict[str, tuple[Recalled, ...]]]:
    """What has to be looked up before production: by text, then by check."""
    found: dict[str, dict[str, tuple[Recalled, ...]]] = {}
    for finding in (x for x in review.findings if _concerns(x)):
        for item in _in_doubt(review, finding):
            checks = found.setdefault(text_of(item), {})
            checks[finding.check] = tuple(dict.fromkeys((*checks.get(finding.check, ()), item)))
    return dict(sorted(found.items()))


def looked_up_in_short(review: Review) -> str:
    """How much there is to look up: limits, texts."""
    texts = to_look_up(review)
    limits = sum(len(items) for checks in texts.values() for items in checks.values())
    told = f"{_number(limits, 'limit')} not seen in the source, {_number(len(texts), 'text')}"
    return f"{told}: ampreview questions --limits FILE" if limits else ""


def waits_for_a_text(review: Review, item: Finding) -> bool:
    """Whether an answer is open for nothing but a limit that nobody has looked up."""
    bare = item.status is Status.OPEN and not item.advice.missing
    return bare and item.evidence.figure is not None and bool(_in_doubt(review, item))


def text_of(item: Recalled) -> str:
    """The standard, or the kind of text, that a number would be found in.

    >>> from ampreview.linter.check import from_memory
    >>> text_of(Recalled("major", "60 V", from_memory("IEC 60000-1, table 4"), True))
    'IEC 60000-1'
    """
    title = item.source.title
    found = STANDARD.match(title) or TITLE.match(title)
    return found[0] if found else title


def _in_doubt(review: Review, item: Finding) -> tuple[Recalled, ...]:
    entry = review.catalogue.entry(item.check)
    return in_doubt(entry.check, item.evidence.figure) if entry else ()


def _concerns(item: Finding) -> bool:
    return item.status is not Status.NOT_APPLICABLE


def _behind(review: Review, item: Finding) -> Iterator[Recalled]:
    """What nobody has seen of the numbers that an answer hangs on."""
    entry = review.catalogue.entry(item.check)
    if entry is None or item.evidence.figure is None:
        return
    for number in recalled(entry.check):
        is_limit = getattr(entry.check.limits, number.name, None) is not None
        if not is_limit or item.severity is None or number.name == item.severity:
            yield number


def _number(count: int, noun: str) -> str:
    return f"{count} {noun}{'' if count == 1 else 's'}"

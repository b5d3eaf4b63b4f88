"""Changes in words: what to change, from, to, and what else that does; at length and in short.

A change of many values is told by the first of them and by the number of the others, and so
are its effects; no text is broken off.
"""

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain

from ..declare import local_path
from ..finding import Finding, Remedy
from ..judging.review import Review
from .phrases import moves

EFFECTS = (
    ("worsens", "worsened", "finding"),
    ("introduces", "appeared", "finding"),
    ("leaves open", "opened", "answer"),
)
GIVEN = re.compile(r"\{(value|typ|min|max): ([^,]+), from: \w+\}")
SAID = {"min": "at least ", "max": "at most "}
GUESS = "from: estimate"
ALL = 1000


@dataclass(frozen=True, slots=True)
class Brevity:
    """How much is told: values of one change, names of one effect, and changes at once.

    was: whether what stood there is told.
    """

    values: int
    names: int
    changes: int = ALL
    was: bool = False


WHOLE = Brevity(ALL, 2, was=True)
SHORTER = (
    Brevity(ALL, 2),
    Brevity(3, 2),
    Brevity(2, 1),
    Brevity(1, 1),
    Brevity(1, 0),
    Brevity(1, 0, changes=2),
    Brevity(1, 0, changes=1),
)
"""From the longest form to the shortest."""


def change_in_words(
    review: Review, about: Sequence[Finding], remedy: Remedy, brevity: Brevity = WHOLE
) -> str:
    """What to change, from, to, and what that does to the findings told of and to others."""
    fixed, *effects = _effects(review, about, (remedy,), brevity)
    told = _lowered((remedy,)) + _values(review, about, remedy, brevity)
    return "; ".join([told, *fixed, *chain(*effects)])


def together_in_words(
    review: Review, about: Sequence[Finding], remedies: Sequence[Remedy], brevity: Brevity
) -> str:
    """All changes at once: what they fix, what to change, what else they do."""
    parts = list(dict.fromkeys(_values(review, about, remedy, brevity) for remedy in remedies))
    more = len(parts) - brevity.changes
    shown = ", ".join(parts[: brevity.changes])
    if more > 0:
        shown += f" and {more} more change{'' if more == 1 else 's'}"
    fixed, *effects = _effects(review, about, remedies, brevity)
    head = f"{', '.join(fixed)}: " if fixed else ""
    return "; ".join([head + _lowered(remedies) + shown, *chain(*effects)])


def _values(review: Review, about: Sequence[Finding], remedy: Remedy, brevity: Brevity) -> str:
    """The new values, those that the findings themselves ask for first, guesses and words last."""
    old = {local_path(path): was for (path, _), was in zip(remedy.changes, remedy.was, strict=True)}
    entries = [review.catalogue.entry(item.check) for item in about]
    levers = {lever.path for entry in entries if entry for lever in entry.check.levers}
    found = sorted(moves(remedy.changes), key=lambda x: (x[0] not in levers, *_last(x[1])))
    was = {path: f" (now {old[path]})" for path, _ in found if brevity.was and old[path]}
    shown = [
        f"{path} to {value if brevity.was else GIVEN.sub(_said, value)}{was.get(path, '')}"
        for path, value in found[: brevity.values]
    ]
    more = len(found) - len(shown)
    text = (" and " if brevity.was else ", ").join(shown)
    text += f" and {more} more value{'' if more == 1 else 's'}" if more else ""
    if remedy.kind != "design" or not remedy.title or len(found) == 1:
        return text
    title = remedy.title if brevity.names else remedy.title.partition(",")[0]
    return f"{title}: {text}" if brevity.was else f"{title} ({text})"


def _last(value: str) -> tuple[bool, bool]:
    """What is told last: words, and before them what is only guessed."""
    return value[:1].isalpha(), GUESS in value


def _said(given: re.Match[str]) -> str:
    """A value in short, without where it comes from."""
    return SAID.get(given[1], "") + given[2]


def _lowered(remedies: Sequence[Remedy]) -> str:
    """What is said first of changes that take from a promise."""
    names = dict.fromkeys(name for x in remedies if x.kind == "promise" for name in x.lowers)
    return f"lower the promised {' and '.join(names)}: " if names else ""


def _effects(
    review: Review, about: Sequence[Finding], remedies: Sequence[Remedy], brevity: Brevity
) -> Iterator[list[str]]:
    """What remedies fix, what they worsen, introduce and leave open; empty where nothing.

    A slipped value put right makes nothing worse: what it hid was as bad before.
    """
    own = {_label(x): x for x in about}
    gone = {label for remedy in remedies for label in remedy.cured}
    milder: dict[str, str] = {}
    for remedy in remedies:
        of = {label for label, x in own.items() if remedy in x.advice.remedies}
        if remedy.left is None:
            gone |= of
        else:
            milder |= dict.fromkeys(of | own.keys() & {*remedy.eased}, str(remedy.left))
    milder = {label: severity for label, severity in milder.items() if label not in gone}
    fixed, others = len(gone & own.keys()), len(gone - own.keys())
    told = [f"fixes {fixed} of {len(own)}"] if 0 < fixed < len(own) else []
    told += [_milder(milder, len(own))] if milder else []
    yield [*told, f"fixes {others} other finding{'' if others == 1 else 's'}"] if others else told
    titles = {_label(x): x.title for x in review.findings}
    for word, kind, noun in EFFECTS:
        told_of = [x for x in remedies if kind != "worsened" or x.kind != "slip" or x.title]
        labels = [x for remedy in told_of for x in getattr(remedy, kind) if x not in gone]
        yield [f"{word} {_titled(labels, titles, brevity.names, noun)}"] if labels else []


def _milder(left: Mapping[str, str], count: int) -> str:
    """What is still found after a change, though milder."""
    severities = " or ".join(dict.fromkeys(left.values()))
    return f"leaves {'it' if len(left) == count else len(left)} {severities}"


def _label(item: Finding) -> str:
    return f"{item.check} ({item.subject})"


def _titled(labels: Collection[str], titles: Mapping[str, str], most: int, noun: str) -> str:
    """Answers by their titles, the first ones; their number alone where none is named."""
    names = list(dict.fromkeys(titles.get(x, x.partition(" (")[0]) for x in labels))
    if not most:
        count = len(set(labels))
        return f"{count} {noun}{'' if count == 1 else 's'}"
    more = len(names) - most
    text = ", ".join(names[:most])
    return f"{text} and {more} more" if more > 0 else text

"""Silence neither convicts nor acquits: what becomes of the answers when a spec says less.

From the root of the project, ``python -m tests.verdict.silence`` lists every violation over
all specs, ``--milestone`` and words of spec names as wanted.
"""

import argparse
import re
from collections import Counter
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from ampreview.linter.check import MILESTONES
from ampreview.linter.declare import field_path
from ampreview.linter.evaluation.answers import SILENT
from ampreview.linter.evaluation.catalogue import Entry
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.reading.loading import Spec

from . import specs
from .accepted import reason_for
from .changes import Change, silences, widenings
from .reruns import Judged, Key, Rejudged

GRAVE = (Severity.CRITICAL, Severity.MAJOR)
_NAME = re.compile(r"^channels\.[^.]+\.")
PART_OUT = ("section left out", "none", "none added")


class Violation(NamedTuple):
    """A change that makes a verdict milder.

    what: ``released``; ``critical lost``: with nothing in its place; ``acquitted``: a
    critical or major finding that now is met; ``gone``: a major that is said not to concern
    the design because one field of a section that still is stated is silent; ``eased``:
    milder because something is wider.
    """

    spec: str
    milestone: str
    change: str
    path: str
    what: str
    check: str
    subject: str
    was: str
    now: str
    cause: str

    @property
    def line(self) -> str:
        """All of it in one line, as a table has it."""
        return "\t".join(self)


def violations(name: str, before: Judged, changes: Iterable[Change]) -> Iterator[Violation]:
    """What some changes of one spec must not do, and do; the short table left out."""
    for change in changes:
        if not before.concerned(change.values):
            continue
        loaded = before.spec.with_values(change.values)
        if loaded.spec is not None:
            yield from _of_change(name, before, change, Rejudged(before, loaded.spec))


def _of_change(name: str, before: Judged, change: Change, after: Rejudged) -> Iterator[Violation]:
    for what, key in (*_lost(before, change, after), *_released(before, change, after)):
        was, now = before.answers[key], after.answer(key)
        if not reason_for(key[0], change, told(now)):
            yield Violation(name, before.milestone, change.kind, change.path, what, *key,
                            told(was), told(now), cause(was, now))  # fmt: skip


def _released(before: Judged, change: Change, after: Rejudged) -> list[tuple[str, Key]]:
    """All that held, where nothing holds any more and the table does not say why.

    What was silent may be answered by ``none``.
    """
    if change.kind == "none added":
        return []
    if not before.holding or not after.released:
        return []
    held = sorted(before.holding)
    if all(reason_for(key[0], change, told(after.answer(key))) for key in held):
        return []
    return [("released", key) for key in held]


def _lost(before: Judged, change: Change, after: Rejudged) -> Iterator[tuple[str, Key]]:
    for key, item in before.answers.items():
        if item.severity not in GRAVE or not after.reached(key) or key in before.standing:
            continue
        what = _what(before, change, after, key)
        part_out = change.kind in PART_OUT or section_gone(before, change, after)
        if what and not (part_out and replaced(before, change, after)):
            yield what, key


def _what(before: Judged, change: Change, after: Rejudged, key: Key) -> str:
    """What became of a grave finding that must not become of it, else nothing."""
    was, now = before.answers[key], after.answer(key)
    if change.kind == "wider":
        return "eased" if _milder(was, now) else ""
    if asked_once(after, key) or by_sister(before, after, key):
        return ""
    if was.severity is Severity.CRITICAL and not stands(after, key):
        return "critical lost"
    if change.kind != "field left out" or now is None:
        return ""
    if now.status is Status.MEETS:
        return "acquitted"
    if now.status is not Status.NOT_APPLICABLE or section_gone(before, change, after):
        return ""
    return "gone"


def section_gone(before: Judged, change: Change, after: Judged) -> bool:
    """Whether the section went with the only field that was stated in it."""
    above = {_above(path) for path in change.values}
    return not above.isdisjoint(before.spec.sections - after.spec.sections)


def _milder(was: Finding, now: Finding | None) -> bool:
    """A critical that is none any more, or a rating or a question of safety that eases."""
    if now is None or now.severity is None:
        return True
    if was.severity is Severity.CRITICAL:
        return now.severity is not Severity.CRITICAL
    return was.stake != "performance" and now.severity not in GRAVE


def stands(judged: Judged, key: Key) -> bool:
    """Whether an answer is an item that a reader cannot miss; from prototype on it holds."""
    item = judged.answer(key)
    if item is None:
        return False
    return judged.holds(key)


def asked_once(judged: Judged, key: Key) -> bool:
    """Whether an answer hangs on a word, and one that nobody can miss asks for that word."""
    item = judged.answer(key)
    if item is None or not item.message.startswith(f"{SILENT}: it depends on "):
        return False
    words = {gap.path for gap in item.advice.missing}
    return any(
        stands(judged, other) and words & {gap.path for gap in answer.advice.missing}
        for other, answer in judged.answers.items()
    )


def by_sister(before: Judged, after: Rejudged, key: Key) -> bool:
    """Whether a sister check now finds what the other found, and no more mildly."""
    was, catalogue = before.answers[key].severity, after.house.catalogue
    one = catalogue.entry(key[0])
    found = (after.answer((x.name, key[1])) for x in catalogue.entries if sisters(one, x))
    severities = (item.severity for item in found if item is not None)
    return was is not None and any(x is not None and x.rank <= was.rank for x in severities)


def sisters(one: Entry | None, other: Entry) -> bool:
    """Two checks of one figure for two kinds of design, of which one is named after the other."""
    if one is None or one.name == other.name:
        return False
    short, long = sorted((one, other), key=lambda entry: len(entry.name))
    a, b = short.check, long.check
    return (
        long.name.startswith(f"{short.name}-")
        and (a.topic, a.unit, a.each) == (b.topic, b.unit, b.each)
        and (a.inputs.keys() <= b.inputs.keys() or b.inputs.keys() <= a.inputs.keys())
    )


def replaced(before: Judged, change: Change, after: Rejudged) -> bool:
    """Whether something new stands in the place of what went with a section.

    For ``none`` a finding or an open item about it; for silence one that asks for it.
    """
    silence = change.kind in ("section left out", "field left out")
    section = _above(change.path) if change.kind == "field left out" else change.path
    for key in after.answers:
        if not after.reached(key) or not stands(after, key):
            continue
        if silence:
            if asked_of(after, key, section) - asked_of(before, key, section):
                return True
        elif not stands(before, key) and after.house.looks_at(key[0], after.touched):
            return True
    return False


def asked_of(judged: Judged, key: Key, section: str) -> set[str]:
    """What an answer that nobody can miss asks for in a section."""
    item = judged.answer(key)
    if item is None or not stands(judged, key):
        return set()
    return {gap.path for gap in item.advice.missing if _within(gap.path, section)}


def _above(path: str) -> str:
    return path.rpartition(".")[0]


def _within(path: str, section: str) -> bool:
    return f"{field_path(path)}.".startswith(f"{section}.")


def told(item: Finding | None) -> str:
    """An answer in one or two words."""
    if item is None:
        return "no subject"
    if item.severity is not None:
        return str(item.severity)
    if item.message.startswith(SILENT):
        return "silent"
    if item.status is Status.MEETS and "; met for any usual value of " in item.message:
        return "met whatever it is"
    if item.status is Status.OPEN and not specs.house().can_be_critical(item.check):
        return "listed"
    return str(item.status)


def cause(was: Finding, now: Finding | None) -> str:
    """What in the program made an answer milder, as far as it shows."""
    if now is None:
        return "nothing left to ask it of"
    if now.status is Status.OPEN:
        grade = "can" if specs.house().can_be_critical(now.check) else "cannot"
        return f"open, {now.stake}, {grade} be critical: does not hold"
    if now.status is Status.NOT_APPLICABLE:
        return _NAME.sub("", now.message)
    known = {item.path for item in was.evidence.assumed}
    new = {f"{x.leaning} {field_path(x.path)}" for x in now.evidence.assumed if x.path not in known}
    return "assumed: " + ("; ".join(sorted(new)) or "nothing, it takes another way")


def everything() -> Iterator[tuple[str, Spec]]:
    """Every spec on which silence is tried, by name."""
    for folder in ("sample_specs", "tests/published/designs", "tests/published/failures"):
        for name in specs.files(folder):
            yield name, specs.spec_of_file(name)
    for check in specs.fragments():
        yield f"fails: {check}", specs.fragment(check)
    for seed in range(30):
        yield f"generated: {seed}", specs.generated(seed)


def main() -> None:
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n")[0])
    parser.add_argument("words", nargs="*", help="words of the names of the specs wanted")
    parser.add_argument("--milestone", choices=MILESTONES, default="prototype")
    parser.add_argument("--wider", action="store_true", help="widen instead of leaving out")
    asked = parser.parse_args()
    kinds: Counter[tuple[str, str]] = Counter()
    for name, spec in everything():
        if asked.words and not any(word in name for word in asked.words):
            continue
        judged = Judged(spec, specs.house(), asked.milestone)
        for item in violations(name, judged, (widenings if asked.wider else silences)(spec)):
            print(item.line, flush=True)
            kinds[item.what, item.cause] += 1
    for (what, why), count in kinds.most_common():
        print(f"{count:6} {what}: {why}")


if __name__ == "__main__":
    main()

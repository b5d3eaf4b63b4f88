"""Variants of a base at the cost of what differs: what other numbers cannot alter is taken over.

A base is reviewed once for each kind of change: words, and numbers of one form (plain, with a
tolerance, a data-sheet line).  From there only numbers move, and a check is judged again where
one of them reaches it; where it depends on some of them only, once for each of their values.
"""

import threading
from collections.abc import Hashable, Mapping
from dataclasses import replace
from datetime import date
from typing import TypeVar

from ..check import Milestone
from ..declare import field_path
from ..evaluation.affected import Affected
from ..evaluation.engine import Assessment
from ..finding import Finding, Severity, Status
from ..judging.consistency import asked_of
from ..judging.criteria import Criteria, Terms
from ..judging.review import Outcome, concluded, decided
from ..quantities.quantity import Value
from ..reading.loading import Spec
from ..reading.refusal import Refusal
from .items import Text, criteria_of, loaded

MOST_POINTS = 8
MOST_KEPT = 10_000

Changes = Mapping[str, object]
Start = tuple[Spec, Criteria]
V = TypeVar("V")


class _Met(threading.local):
    """What a worker has met: bases as they are read, and points reviewed, the last few of each."""

    def __init__(self) -> None:
        self.starts: dict[Hashable, Start] = {}
        self.points: dict[Hashable, Point] = {}


_met = _Met()


def varied(
    base: Text,
    changes: Changes,
    milestone: Milestone | None,
    hold_at: Severity | None,
    terms: Terms,
    whole: bool,
) -> Outcome:
    """The review of a base with other values; unless it is wanted whole, without promises."""
    terms = replace(terms, day=terms.day or date.today())
    origin = (base, terms, _written(terms))
    start = _met.starts.get(origin) or _started(base, terms)
    if not isinstance(start[0], Spec):
        return start
    spec, criteria = start
    _keep(_met.starts, origin, start)
    found = spec.with_values(changes)
    if found.spec is None:
        return found.refusals
    kinds = frozenset((path, _kind(found.spec, path)) for path in changes)
    key = (origin, milestone, hold_at, kinds)
    point = _met.points.get(key) or Point(found.spec, criteria, milestone, hold_at)
    _keep(_met.points, key, point)
    return point.outcome(changes, whole)


class Point:
    """A spec reviewed once, from which numbers are changed that are written in the same form."""

    def __init__(
        self,
        spec: Spec,
        criteria: Criteria,
        milestone: Milestone | None,
        hold_at: Severity | None,
    ) -> None:
        self.criteria = criteria
        self.hold_at = hold_at
        self.run = Assessment(spec, criteria.catalogue, milestone or spec.milestone)
        self.questions = tuple(self.run.questions())
        self.answers = tuple(self.run.judge(*question) for question in self.questions)
        self._asked = tuple(asked_of(spec, self.run.graph.derived))
        self._found_on_values = [x.answer(spec, self.run.graph) for x in self._asked]
        self._about: dict[str, list[int]] = {}
        self._reach: dict[str, tuple[frozenset[int], bool]] = {}
        self._kept: dict[Hashable, Finding] = {}

    def outcome(self, changes: Changes, whole: bool) -> Outcome:
        """The review with other numbers."""
        changes = {path: value for path, value in changes.items() if self._differs(path, value)}
        revised = self.run.revised(changes, apart=True)
        if revised is None:
            return self.run.spec.with_values(changes).refusals
        run, _ = revised
        answers = list(self.answers)
        for number, paths in self._altered(run, changes).items():
            answers[number] = self._answer(run, number, paths, changes)
        if whole:
            return concluded(run, answers, self.hold_at, self.criteria)
        return decided(run, answers, self._on_values(run, changes), self.hold_at, self.criteria)

    def _differs(self, path: str, value: object) -> bool:
        stated = self.run.spec.values.get(path)
        return not isinstance(stated, Value) or stated.text != value

    def _altered(self, run: Assessment, changes: Changes) -> dict[int, list[str]]:
        """The questions that come out otherwise, each with the changed numbers that reach it."""
        altered: dict[int, list[str]] = {}
        asks = False
        for path in changes:
            reached, asking = self._reached(path, run.spec)
            asks = asks or asking
            for number in reached:
                altered.setdefault(number, []).append(path)
        if asks and run.parts_asked_for != self.run.parts_asked_for:
            for number, (entry, subject) in enumerate(self.questions):
                where = (entry.check, subject)
                if run.asked_elsewhere(*where) != self.run.asked_elsewhere(*where):
                    altered[number] = list(changes)
        return altered

    def _on_values(self, run: Assessment, changes: Changes) -> list[Finding]:
        """The findings on stated values; only what the changes reach is asked again."""
        asked = list(self._found_on_values)
        for number in {x for path in changes for x in self._values_reached(path)}:
            asked[number] = self._asked[number].answer(run.spec, run.graph)
        return [item for item in asked if item is not None]

    def _values_reached(self, path: str) -> list[int]:
        """The questions about stated values on which a changed number can bear."""
        if path not in self._about:
            led = self.run.dependences.led_by(frozenset({field_path(path)}))
            about = [n for n, asked in enumerate(self._asked) if not led.isdisjoint(asked.reads)]
            self._about[path] = about
        return self._about[path]

    def _reached(self, path: str, after: Spec) -> tuple[frozenset[int], bool]:
        """What another number of the same form can alter, and whether other parts are asked for.

        What crashed can always come out otherwise.
        """
        if path not in self._reach:
            change = Affected(self.run.dependences, self.run.spec, after, frozenset({path}))
            reached = {
                number
                for number, ((entry, _), before) in enumerate(
                    zip(self.questions, self.answers, strict=True)
                )
                if _crashed(before) or change.alters(entry.name, before.evidence.leaves)
            }
            asks = any(
                entry.check.limits.critical is not None and change.alters(entry.name)
                for entry, _ in self.questions
            )
            self._reach[path] = frozenset(reached), asks
        return self._reach[path]

    def _answer(self, run: Assessment, number: int, paths: list[str], changes: Changes) -> Finding:
        """An answer, judged once for the same values of all that it depends on."""
        if len(paths) == len(changes):
            return run.judge(*self.questions[number])
        key = (number, *((path, str(changes[path])) for path in paths))
        if key not in self._kept:
            found = run.judge(*self.questions[number])
            if not found.evidence.leaves.isdisjoint(changes.keys() - set(paths)):
                return found
            _keep(self._kept, key, found, MOST_KEPT)
        return self._kept[key]


def _started(base: Text, terms: Terms) -> Start | tuple[Refusal, ...]:
    found = loaded(base, terms)
    if found.spec is None:
        return found.refusals
    criteria = criteria_of(base, terms)
    return criteria if isinstance(criteria, tuple) else (criteria.applied(found.spec), criteria)


def _written(terms: Terms) -> tuple[tuple[int, int], ...]:
    """When the files that the terms name were written, and how long they are."""
    named = (terms.house, terms.deviations, terms.parts, terms.measured)
    found = [path.stat() for path in named if path and path.exists()]
    return tuple((x.st_mtime_ns, x.st_size) for x in found)


def _kind(spec: Spec, path: str) -> Hashable:
    """What numbers must have in common so that the same checks are asked in the same way."""
    value = spec.values.get(path)
    if isinstance(value, Value):
        return value.form, value.sides, value.provenance
    return value or path in spec.none


def _keep(kept: dict[Hashable, V], key: Hashable, value: V, most: int = MOST_POINTS) -> None:
    """Keep a value, and forget the one met first where there are too many."""
    kept[key] = value
    if len(kept) > most:
        del kept[next(iter(kept))]


def _crashed(finding: Finding) -> bool:
    return finding.status is Status.FINDING and finding.evidence.figure is None

"""A spec judged, and judged again after a change, at the cost of what the change can reach.

An answer that the change cannot reach is taken over.  What is asked for is judged when it
is asked for: a spec that is still held by one untouched finding costs nothing more.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache, cached_property

from ampreview.linter.check import Milestone
from ampreview.linter.declare import field_path, load_schema
from ampreview.linter.evaluation.catalogue import Catalogue
from ampreview.linter.evaluation.dependence import Dependences
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.evaluation.graph import Graph
from ampreview.linter.finding import Finding, Severity
from ampreview.linter.judging.consistency import built_in_findings
from ampreview.linter.judging.milestone import verdict
from ampreview.linter.quantities.quantity import Value
from ampreview.linter.reading.loading import Spec

Key = tuple[str, str]
FIELDS = load_schema().fields


@dataclass(frozen=True)
class House:
    """What all runs share: the catalogue, and what each of its names can depend on."""

    catalogue: Catalogue
    dependences: Dependences

    def can_be_critical(self, check: str) -> bool:
        entry = self.catalogue.entry(check)
        return entry is not None and entry.check.limits.critical is not None

    def looks_at(self, check: str, fields: frozenset[str]) -> bool:
        """Whether a check can look at one of these fields."""
        if self.catalogue.entry(check) is None:
            return True
        return not self.dependences[check].fields.isdisjoint(fields)


class Judged:
    """The answers to a spec by check and subject; standing findings by check and path."""

    def __init__(self, spec: Spec, house: House, milestone: Milestone) -> None:
        self.spec = spec
        self.house = house
        self.milestone = milestone
        self.run = Assessment(spec, house.catalogue, milestone)
        self.run.dependences = house.dependences

    @cached_property
    def standing(self) -> dict[Key, Finding]:
        found = built_in_findings(self.spec, self.run.graph)
        return {(item.check, ",".join(sorted(item.evidence.leaves))): item for item in found}

    @cached_property
    def answers(self) -> dict[Key, Finding]:
        """Every answer there is."""
        asked = ((entry.name, subject) for entry, subject in self.run.questions())
        return {**self.standing, **{key: self.answer(key) for key in asked}}

    @cached_property
    def at_stake(self) -> frozenset[str]:
        """The checks whose answers say that the design is not sound, or may not be."""
        grave = (Severity.CRITICAL, Severity.MAJOR)
        found = {key[0] for key, item in self.answers.items() if item.severity in grave}
        return frozenset(found.union(check for check, _ in self.holding))

    @cached_property
    def holding(self) -> frozenset[Key]:
        return frozenset(key for key in self.answers if self.holds(key))

    def concerned(self, paths: Iterable[str]) -> bool:
        """Whether something at stake can look at these paths, what is in them or above them."""
        fields = {field_path(path) for path in paths}
        if not fields <= FIELDS.keys() - {"channels"}:  # a channel as a whole
            return True
        near = frozenset(name for field in fields for name in _family(field))
        return any(self.house.looks_at(check, near) for check in self.at_stake)

    def answer(self, key: Key) -> Finding | None:
        """The answer to one check for one subject; None where there is no such subject."""
        entry = self.house.catalogue.entry(key[0])
        if entry is None:
            return self.standing.get(key)
        if key[1] not in self.run.subjects(entry.check):
            return None
        return self.run.judge(entry, key[1])

    def holds(self, key: Key) -> bool:
        """Whether the answer keeps the spec from being released."""
        item = self.answer(key)
        return item is not None and not verdict((item,), self.milestone).released


class Rejudged(Judged):
    """The answers to a changed spec."""

    def __init__(self, before: Judged, spec: Spec) -> None:
        super().__init__(spec, before.house, before.milestone)
        self.before = before
        self.touched = touched(before.spec, spec)
        self._same_channels = spec.channels == before.spec.channels
        self._led = self.house.dependences.led_by(self.touched)
        self._ways = self.house.dependences.led_by(self.touched, deciding=True)
        self._numbers = _numbers_less(before.spec, spec)
        self._judged: dict[Key, Finding | None] = {}
        if self._same_channels:
            self.run.graph = self._taken_over(before.run.graph)
            self.run.sure_graph = self._taken_over(before.run.sure_graph)

    def _taken_over(self, graph: Graph) -> Graph:
        known = graph.known.where(lambda key, _: key[0] not in self._led)
        return Graph(self.spec, graph.derived, graph.leaves.sure, known=known)

    def reached(self, key: Key) -> bool:
        """Whether the change can alter an answer.

        A number that is gone alters the figures that used it, and what it may lead another way.
        """
        if not self._same_channels or key in self.before.standing:
            return True
        old = self.before.answers.get(key)
        if self._numbers and old is not None and old.evidence.figure is not None:
            return key[0] in self._ways or not old.evidence.leaves.isdisjoint(self._numbers)
        return key[0] in self._led

    def answer(self, key: Key) -> Finding | None:
        if not self.reached(key):
            return self.before.answers[key]
        if key not in self._judged:
            self._judged[key] = super().answer(key)
        return self._judged[key]

    @cached_property
    def released(self) -> bool:
        """Whether nothing holds any more; what held before is asked first."""
        first = sorted(self.before.holding, key=self.reached)
        if any(self.holds(key) for key in first):
            return False
        return not any(self.holds(key) for key in self._reached_keys())

    def new_holding(self) -> Iterator[tuple[Key, Finding]]:
        """What holds now and did not hold before, of the answers that the change dependences."""
        for key in self._reached_keys():
            item = self.answer(key)
            if item is not None and key not in self.before.holding and self.holds(key):
                yield key, item

    def _reached_keys(self) -> Iterator[Key]:
        asked = ((entry.name, subject) for entry, subject in self.run.questions())
        return (key for key in (*self.standing, *asked) if self.reached(key))


def _numbers_less(before: Spec, after: Spec) -> frozenset[str]:
    """The numbers that a spec has lost, if it has lost nothing else."""
    gone = before.values.keys() - after.values.keys()
    kept = all(before.values.get(path) == value for path, value in after.values.items())
    same = (before.sections, before.none, before.lists) == (after.sections, after.none, after.lists)
    numbers = all(isinstance(before.values[path], Value) for path in gone)
    return frozenset(gone) if kept and same and numbers else frozenset()


def touched(before: Spec, after: Spec) -> frozenset[str]:
    """Fields and sections of which two specs do not say the same, as ``FIELDS`` names them.

    A section that is ``none`` in one of them says something of all that is in it.
    """
    values = before.values.keys() | after.values.keys()
    found = {path for path in values if before.values.get(path) != after.values.get(path)}
    found |= before.sections ^ after.sections
    lists = before.lists.keys() | after.lists.keys()
    found |= {path for path in lists if before.lists.get(path) != after.lists.get(path)}
    fields = {field_path(path) for path in found}
    for section in {field_path(path) for path in before.none ^ after.none}:
        fields.add(section)
        fields |= {name for name in FIELDS if name.startswith((f"{section}.", f"{section}["))}
    return frozenset(fields | {name.removesuffix("[]") for name in fields})


@cache
def _family(field: str) -> frozenset[str]:
    """A field with the sections above it and all that is in it."""
    inner = (f"{field}.", f"{field}[")
    above = {field[:place] for place, sign in enumerate(field) if sign in ".["}
    return frozenset({field, *above, *(name for name in FIELDS if name.startswith(inner))})

"""Remedies that are proven: solved, rounded to stock, and confirmed by a re-run.

A change is offered only when the catalogue, run again with it, no longer finds what it
should cure and finds nothing new of the same or a graver severity.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import islice, permutations

from .catalogue import Entry
from .check import Lever
from .consistency import STANDING, standing_findings
from .engine import Assessment
from .finding import Finding, Remedy, Status
from .graph import Graph
from .loading import Spec
from .milestone import RANK
from .quantity import Value
from .review import Review
from .solve import Candidate, candidates, part_way, subject_channel
from .spec import is_channel_path

MOST_REMEDIES = 3
MOST_LEVERS = 3
NO_LEVER = "no single value cures this: it takes another part or another design"
CLEAR = 9
FURTHER = 0.01

Answers = Mapping[tuple[str, str], Finding]


@dataclass(frozen=True, slots=True)
class Trial:
    """A spec with changes, and its answers in full."""

    changes: tuple[tuple[str, object], ...]
    spec: Spec
    answers: Answers


def with_remedies(review: Review) -> Review:
    """The review with proven remedies in each finding."""
    advisor = Advisor(review)
    findings = tuple(
        advisor.advised(item) if item.severity is not None else item for item in review.findings
    )
    held = {(item.check, item.subject): item for item in findings}
    holding = tuple(held[item.check, item.subject] for item in review.verdict.holding)
    return replace(review, findings=findings, verdict=replace(review.verdict, holding=holding))


def answers_of(findings: Iterable[Finding]) -> dict[tuple[str, str], Finding]:
    """Answers by check and subject; of several standing findings the gravest counts."""
    found: dict[tuple[str, str], Finding] = {}
    for item in findings:
        key = (item.check, item.subject)
        if key not in found or rank(item) < rank(found[key]):
            found[key] = item
    return found


def rank(finding: Finding | None) -> int:
    """0 for critical, 1 major, 2 minor; a large number when nothing is found."""
    if finding is None or finding.severity is None:
        return CLEAR
    return RANK[finding.severity]


class Advisor:
    """Finds changes for the findings of one review."""

    def __init__(self, review: Review) -> None:
        self.review = review
        self.run = Assessment(review.spec, review.catalogue, review.verdict.milestone)
        self.answers = answers_of(review.findings)

    def advised(self, finding: Finding) -> Finding:
        """The finding with up to three remedies, or with a note why there is none."""
        entry = self.review.catalogue.entry(finding.check)
        if entry is None:
            return finding
        remedies = tuple(islice(self.ranked(entry, finding), MOST_REMEDIES))
        if remedies:
            return replace(finding, remedies=remedies)
        pair = self.pair(entry, finding)
        if pair is not None:
            note = "no single change meets it; these two together do"
            return replace(finding, remedies=(pair,), remedy_note=note)
        return replace(finding, remedy_note=self.obstacle(finding))

    def best(self, finding: Finding) -> Remedy | None:
        """The first of the proven remedies, or the pair where no single change works."""
        entry = self.review.catalogue.entry(finding.check)
        if entry is None:
            return None
        return next(iter(self.ranked(entry, finding)), None) or self.pair(entry, finding)

    def obstacle(self, finding: Finding) -> str:
        """Why no change of the levers is offered: out of reach, or what it would break."""
        entry = self.review.catalogue.entry(finding.check)
        if entry is None or not entry.check.levers:
            return NO_LEVER
        reasons = [
            self._reason(entry, finding, lever, path)
            for lever in entry.check.levers
            for path in self.paths(lever.path, finding)
        ]
        return f"{finding.check} ({finding.subject}): " + "; ".join(reasons)

    def _reason(self, entry: Entry, finding: Finding, lever: Lever, path: str) -> str:
        found = candidates(self.run, entry, finding, lever, path)
        if not found:
            return f"no usual value of {path} meets it"
        trial = self.trial({path: found[0].text})
        if trial is None:
            return f"{path} cannot be {in_text(found[0].text)}"
        remedy = self.effects(trial, (finding.check, finding.subject))
        spoiled = ", ".join((*remedy.appeared, *remedy.worsened)) or "it is found all the same"
        return f"{path} {in_text(found[0].text)} would meet it, but then: {spoiled}"

    def pair(self, entry: Entry, finding: Finding) -> Remedy | None:
        """Two levers moved together: one part of the way, the other solved for the rest."""
        paths = [
            (lever, path)
            for lever in entry.check.levers
            for path in self.paths(lever.path, finding)
        ][:MOST_LEVERS]
        for (first, path), (second, other) in permutations(paths, 2):
            for text in part_way(self.run, first, path):
                remedy = self._second(entry, finding, {path: text}, second, other)
                if remedy is not None:
                    return remedy
        return None

    def _second(
        self, entry: Entry, finding: Finding, first: dict[str, object], lever: Lever, path: str
    ) -> Remedy | None:
        loaded = self.review.spec.with_values(first)
        if loaded.spec is None:
            return None
        run = Assessment(loaded.spec, self.review.catalogue, self.review.verdict.milestone)
        for tried in candidates(run, entry, finding, lever, path)[:1]:
            remedy = self.prove(finding, {**first, path: tried.text})
            if remedy is not None:
                return remedy
        return None

    def ranked(self, entry: Entry, finding: Finding) -> list[Remedy]:
        """Proven remedies: fewest new concerns first, then the smallest change."""
        proven: list[tuple[tuple[int, int, float], Remedy]] = []
        for group in self.singles(entry, finding):
            for tried in group:
                remedy = self.prove(finding, {tried.path: tried.text})
                if remedy is not None:
                    key = (len(remedy.appeared), len(remedy.worsened), tried.change)
                    proven.append((key, remedy))
                    break
        proven.sort(key=lambda item: item[0])
        return [remedy for _, remedy in proven]

    def singles(self, entry: Entry, finding: Finding) -> Iterator[list[Candidate]]:
        """For each lever and direction the stock values that should cure the finding."""
        for lever in entry.check.levers:
            for path in self.paths(lever.path, finding):
                found = candidates(self.run, entry, finding, lever, path)
                for direction in (1, -1):
                    yield [item for item in found if item.direction == direction]
                yield from ([item] for item in found if item.direction == 0)

    def paths(self, path: str, finding: Finding) -> tuple[str, ...]:
        """The full paths of a lever: of the finding's channel, or of every channel."""
        if not is_channel_path(path):
            return (path,)
        channel = subject_channel(finding)
        names = (channel,) if channel else self.review.spec.channels
        return tuple(f"channels.{name}.{path}" for name in names)

    def prove(self, finding: Finding, changes: Mapping[str, object]) -> Remedy | None:
        """The remedy with its effects, or None when the re-run does not confirm it."""
        trial = self.trial(changes)
        if trial is None:
            return None
        key = (finding.check, finding.subject)
        if trial.answers[key].status is not Status.MEETS:
            return None
        remedy = self.effects(trial, key)
        grave = [name for name in (*remedy.appeared, *remedy.worsened) if name]
        limit = rank(finding)
        if any(rank(trial.answers[_key(name)]) <= limit for name in grave):
            return None
        return remedy

    def trial(self, changes: Mapping[str, object]) -> Trial | None:
        """The answers after some changes; stated values that follow are changed along."""
        trial = self._rerun(changes)
        if trial is None:
            return None
        follow = self._followers(trial)
        return self._rerun({**changes, **follow}) if follow else trial

    def _rerun(self, changes: Mapping[str, object]) -> Trial | None:
        loaded = self.review.spec.with_values(changes)
        if loaded.spec is None:
            return None
        touched = frozenset(changes)
        catalogue = self.review.catalogue
        graph = Graph(loaded.spec, catalogue.derived, base=self.run.graph, changed=touched)
        run = Assessment(loaded.spec, catalogue, self.review.verdict.milestone, graph)
        answers = {k: v for k, v in self.answers.items() if k[0] not in STANDING}
        for entry in self.review.catalogue.entries:
            for subject in run.subjects(entry.check):
                before = self.answers[entry.name, subject]
                if self._may_change(before, touched):
                    answers[entry.name, subject] = run.judge(entry, subject)
        answers |= answers_of(standing_findings(loaded.spec, run.graph))
        return Trial(tuple(changes.items()), loaded.spec, answers)

    def _may_change(self, before: Finding, touched: frozenset[str]) -> bool:
        """Whether an answer can differ once these leaves have other values."""
        if any(path not in self.review.spec.values for path in touched):
            return True
        words = (not isinstance(self.review.spec.values[path], Value) for path in touched)
        return bool(before.leaves & touched) or before.status is Status.OPEN or any(words)

    def _followers(self, trial: Trial) -> dict[str, object]:
        """Values stated beside what they follow from, which the change has made untrue."""
        follow: dict[str, object] = {}
        for (check, _), item in trial.answers.items():
            if check == "stated-value-contradicts" and (check, item.subject) not in self.answers:
                for path in item.leaves:
                    follow[path] = item.message.partition(", but ")[2].partition(" follows")[0]
        return follow

    def effects(self, trial: Trial, key: tuple[str, str]) -> Remedy:
        """What the re-run shows, beside the cure itself."""
        cured: list[str] = []
        eased: list[str] = []
        worsened: list[str] = []
        appeared: list[str] = []
        for other in sorted(trial.answers.keys() | self.answers.keys()):
            old, new = self.answers.get(other), trial.answers.get(other)
            before, after = rank(old), rank(new)
            if other == key or (before == after and not _goes_further(old, new)):
                continue
            name = f"{other[0]} ({other[1]})"
            if before == CLEAR:
                appeared.append(name)
            elif after == CLEAR:
                cured.append(name)
            else:
                (eased if after > before else worsened).append(name)
        changes = tuple((path, in_text(value)) for path, value in trial.changes)
        was = tuple(self._was(path) for path, _ in changes)
        lists = map(tuple, (cured, eased, worsened, appeared))
        return Remedy(changes, trial.changes, was, *lists)

    def _was(self, path: str) -> str:
        stated = self.review.spec.values.get(path)
        if isinstance(stated, Value):
            return stated.text
        return str(stated) if stated is not None else ""


def _goes_further(old: Finding | None, new: Finding | None) -> bool:
    """Whether a finding of the same severity misses its limit by more than before."""
    if old is None or new is None or old.margin is None or new.margin is None:
        return False
    return new.severity is not None and new.margin < old.margin - FURTHER


def in_text(value: object) -> str:
    """A new value as a reader would write it; a data-sheet line in flow style."""
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{key}: {text}" for key, text in value.items()) + "}"
    return str(value)


def _key(name: str) -> tuple[str, str]:
    check, _, subject = name.partition(" (")
    return check, subject.removesuffix(")")

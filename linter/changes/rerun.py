"""What a change of the spec does to the answers of a review, found by running it again.

Only answers that can differ are judged anew; everything that does not depend on the
changed leaves is taken over, and each set of changes is run once.
"""

from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, replace

from ..design_change import DesignChange
from ..evaluation.affected import Affected
from ..evaluation.catalogue import Entry
from ..evaluation.engine import Assessment
from ..evaluation.node import FigureError
from ..evaluation.threshold import missed
from ..finding import Finding, Remedy, Status
from ..judging.consistency import BUILT_IN, built_in_findings
from ..judging.review import Review, concluded
from ..judging.weighing import rank
from ..quantities.quantity import Value
from .alike import Alike
from .beside import overruled
from .changed_answers import ChangedAnswers
from .effect import (
    KINDS,
    NO_LIMIT,
    Gravity,
    Key,
    answers_of,
    doubt,
    eased,
    effect_of,
    in_text,
    is_open,
    label_of,
    may_spoil,
    settled,
    spoils,
    with_lists,
)
from .kinds import promises_in
from .likely import Likely

NO_KEY = ("", "")
CONTRADICTS = "stated-value-contradicts"

Changes = tuple[tuple[str, object], ...]
Changed = tuple[tuple[str, str], ...]
Name = tuple[object, ...]


@dataclass(frozen=True, slots=True)
class Rerun:
    """A spec with changes, and its answers in full.

    run: what gave the answers that differ.  doubts: findings on stated values that the
    changes bring about.
    """

    changes: Changes
    run: Assessment
    answers: ChangedAnswers
    doubts: tuple[Finding, ...] = ()


class Reruns:
    """Runs the catalogue again with changes of the spec of one review.

    run: the run that the review was made from, where it is still at hand.  completed: changes
    worked out with all that follows from them, by what they start from.
    """

    def __init__(self, review: Review, run: Assessment | None = None) -> None:
        self.review = review
        self.run = run or _resolved(review)
        self.alike = Alike(review.spec, self.run.twins)
        self.answers = answers_of(review.findings)
        self._doubted = {doubt(item) for item in review.findings if item.check in BUILT_IN}
        self._reruns: dict[tuple[Key, Name], Rerun | None] = {}
        self._proven: dict[Name, Rerun] = {}
        self._behind: dict[Changed, Rerun] = {}
        self._variants: dict[tuple[str, str], Assessment | None] = {}
        self._questions = tuple(self.run.questions())
        self.promises = promises_in(review.catalogue)
        self._spoilers: dict[tuple[Key, Name], Key | None] = {}
        self._spoiler: Key | None = None
        self.completed: dict[str, tuple[dict[str, object], list[DesignChange]]] = {}
        self._likely = Likely(self.answers)

    def run_with(
        self, changes: Mapping[str, object], key: Key, limit: Gravity = NO_LIMIT
    ) -> Rerun | None:
        """The answers after some changes.

        None where the changes cannot be or leave ``key`` a finding; with a ``limit`` also where
        they bring about a finding of that rank or a grave one, make one worse that is as grave,
        or where what they state contradicts or overrules what is stated beside it.  Channels
        that state the same change together, and so do stated values that follow from a changed
        one.
        """
        whole = self.alike.everywhere(changes)
        name = _name(whole, limit)
        proven = self._proven.get(name)
        if proven is not None and key[0] not in BUILT_IN:
            return proven if settled(proven.answers.get(key)) else None
        if (key, name) not in self._reruns:
            self._spoiler = None
            rerun = self._with_followers(whole, key, limit)
            self._reruns[key, name] = rerun
            self._spoilers[key, name] = self._spoiler
            if rerun is not None:
                self._proven[name] = rerun
        return self._reruns[key, name]

    def spoiler(self, changes: Mapping[str, object], key: Key, limit: Gravity) -> Key | None:
        """What a change that was tried would spoil, if that is why it was refused."""
        return self._spoilers.get((key, _name(self.alike.everywhere(changes), limit)))

    def whole(self, changes: Mapping[str, object]) -> Rerun | None:
        """The answers after some changes, whatever they do; None where they cannot be."""
        return self.run_with(changes, NO_KEY)

    def allows(self, rerun: Rerun, key: Key, limit: Gravity) -> bool:
        """Whether a rerun settles ``key`` and spoils nothing as grave or grave by itself."""
        old, answers = self.answers.get(key), rerun.answers
        if old is not None and not eased(old, answers.get(key)):
            return False
        changed = (other for other in answers.changed if other != key)
        others = self._likely.first(changed, (path for path, _ in rerun.changes))
        if any(
            self._is_spoilt(rerun.run, answers.fresh[other], other, limit)
            if other in answers.fresh
            else self._spoilt(other, answers[other], limit)
            for other in others
        ):
            return False
        if any(item.check == CONTRADICTS or rank(item) <= limit[0] for item in rerun.doubts):
            return False
        added = [path for path, _ in rerun.changes if path not in self.review.spec.values]
        return not any(overruled(self.run.graph, rerun.run.graph, path) for path in added)

    def variant(self, path: str, value: object) -> Assessment | None:
        """A run with one other value, for a change that needs a second one."""
        name = (path, in_text(value))
        if name not in self._variants:
            revised = self.run.revised({path: value})
            self._variants[name] = revised[0] if revised else None
        return self._variants[name]

    def behind(self, remedy: Remedy) -> Rerun:
        """The rerun that has proven a remedy."""
        return self._behind[remedy.changes]

    def after(self, remedy: Remedy) -> tuple[Review, Assessment]:
        """The whole review of the spec with a remedy that a rerun has proven, and its run."""
        rerun = self.behind(remedy)
        answers = (rerun.answers.told((entry.name, subject)) for entry, subject in self._questions)
        fresh = (replace(item, permitted="") for item in answers)
        before = self.review
        return concluded(rerun.run, fresh, before.verdict.hold_at, before.criteria), rerun.run

    def effects(self, rerun: Rerun, key: Key) -> Remedy:
        """What the re-run shows, beside the answer to ``key`` itself."""
        lists: dict[str, list[str]] = {kind: [] for kind in KINDS}
        gone = self.answers.keys() - rerun.answers.keys()
        for other in sorted({*rerun.answers.changed, *gone} - {key}):
            if kind := self._effect(rerun, other):
                lists[kind].append(label_of(other))
        more = {label_of((item.check, item.subject)): None for item in rerun.doubts}
        told = lists["appeared"] + lists["worsened"]
        lists["appeared"] += [label for label in more if label not in told]
        changes = tuple((path, in_text(value)) for path, value in rerun.changes)
        was = tuple(self._was(path) for path, _ in changes)
        self._behind[changes] = rerun
        answer = self._told(rerun, key)
        lacks = answer.advice.missing if answer and answer.status is Status.OPEN else ()
        return with_lists(Remedy(changes, rerun.changes, was, lacks=lacks), lists)

    def _effect(self, rerun: Rerun, key: Key) -> str:
        """What a change did to an answer; an open one is judged only where it may fail now."""
        old, entry = self.answers.get(key), rerun.answers.fresh.get(key)
        if entry is not None and is_open(old):
            figure = rerun.run.at_worst(entry, key[1])
            if figure is not None and missed(entry.check, figure) is None:
                return ""
        return effect_of(old, self._told(rerun, key))

    def _told(self, rerun: Rerun, key: Key) -> Finding | None:
        """An answer after a change; where it was open before, that it still is says enough."""
        new = rerun.answers.get(key)
        return new if new is None or is_open(self.answers.get(key)) else rerun.answers.told(key)

    def spoilt_by(self, rerun: Rerun, key: Key, limit: Gravity) -> list[Key]:
        """What a rerun brings about or makes worse as gravely as that, the gravest first."""
        found = [
            other
            for other, new in rerun.answers.items()
            if other != key and self._spoilt(other, new, limit)
        ]
        return sorted(found, key=lambda other: (rank(rerun.answers[other]), other))

    def _with_followers(
        self, changes: Mapping[str, object], key: Key, limit: Gravity
    ) -> Rerun | None:
        rerun = self._rerun(changes, key, limit)
        if rerun is None:
            return None
        follow = self._followers(rerun)
        if follow:
            rerun = self._rerun({**changes, **follow}, key, limit)
        if rerun is None or limit == NO_LIMIT:
            return rerun
        return rerun if self.allows(rerun, key, limit) else None

    def _rerun(self, changes: Mapping[str, object], key: Key, limit: Gravity) -> Rerun | None:
        revised = self.run.revised(changes)
        if revised is None:
            return None
        run, change = revised
        asked = self.review.catalogue.entry(key[0])
        if asked is not None and not settled(run.answer(asked, key[1])):
            return None
        fresh = {
            (entry.name, subject): entry
            for entry, subject in self._questions
            if self._altered(entry, subject, change, run)
        }
        others = [other for other in fresh if other != key] if limit != NO_LIMIT else []
        for other in self._likely.first(others, changes):
            if self._is_spoilt(run, fresh[other], other, limit):
                self._likely.spoilt(other, changes)
                self._spoiler = other
                return None
        built_in = built_in_findings(run.spec, run.graph)
        if any(item.check == key[0] and item.evidence.leaves & change.touched for item in built_in):
            return None
        kept = {k: v for k, v in self.answers.items() if k[0] not in BUILT_IN}
        answers = ChangedAnswers(kept | answers_of(built_in), run, fresh)
        doubts = tuple(item for item in built_in if doubt(item) not in self._doubted)
        return Rerun(tuple(sorted(changes.items())), run, answers, doubts)

    def _is_spoilt(self, run: Assessment, entry: Entry, other: Key, limit: Gravity) -> bool:
        """Whether another answer of a changed spec is spoilt; judged only where it may be."""
        old, figure = self.answers.get(other), run.at_worst(entry, other[1])
        if figure is not None and not may_spoil(old, entry.check, figure, limit):
            return False
        return self._spoilt(other, run.answer(entry, other[1]), limit)

    def _spoilt(self, other: Key, new: Finding, limit: Gravity) -> bool:
        """Whether another answer is spoilt.

        A promise that is broken already, or of which nothing was known, is not.
        """
        old = self.answers.get(other)
        unknown = old is not None and old.status is Status.OPEN
        if other[0] in self.promises and (unknown or rank(old) == rank(new)):
            return False
        return spoils(old, new, limit)

    def _altered(self, entry: Entry, subject: str, change: Affected, run: Assessment) -> bool:
        """Whether an answer can differ after a change; one that crashed always can.

        Where another check asked for a part, a change that settles that makes this one ask.
        """
        before = self.answers[entry.name, subject]
        crashed = before.status is Status.FINDING and before.evidence.figure is None
        if crashed or change.alters(entry.name, before.evidence.leaves):
            return True
        if self.run.parts_asked_for == run.parts_asked_for:
            return False
        places = (entry.check, subject)
        return self.run.asked_elsewhere(*places) != run.asked_elsewhere(*places)

    def _followers(self, rerun: Rerun) -> dict[str, object]:
        """Values stated beside what they follow from, which the change has made untrue."""
        follow: dict[str, object] = {}
        for item in rerun.doubts:
            if item.check == CONTRADICTS:
                follow |= dict.fromkeys(item.evidence.leaves, item.advice.follows)
        return follow

    def _was(self, path: str) -> str:
        stated = self.review.spec.values.get(path)
        if isinstance(stated, Value):
            return stated.text
        return str(stated) if stated is not None else ""


def _resolved(review: Review) -> Assessment:
    """A run with every name resolved, so that a rerun resolves only what its changes alter."""
    run = Assessment(review.spec, review.catalogue, review.verdict.milestone)
    for entry, subject in run.questions():
        with suppress(FigureError):
            run.prepare(entry, subject, run.graph)
    return run


def _name(changes: Mapping[str, object], limit: Gravity) -> Name:
    return (limit, *(f"{path}={in_text(value)}" for path, value in changes.items()))

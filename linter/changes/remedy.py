"""Remedies that are proven: solved, rounded to stock, and confirmed by a re-run.

A change is offered only when the catalogue, run again with it, no longer finds what it
should cure, finds nothing new that is grave, and makes nothing worse that is as grave.
Slips are put right first; what else is proposed is worked out for the spec without them.
Then the kinds of change follow each other as an engineer would take them: a stock value or
a setting, another part, another design, and last a promise lowered.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cached_property

from ..declare import PRODUCT, local_path
from ..design_change import DesignChange
from ..evaluation.catalogue import Entry
from ..evaluation.engine import Assessment
from ..finding import Finding, Remedy, RemedyKind, Status
from ..judging.review import Review
from .effect import Key, eased, grave, gravity, label_of, settled
from .following import completed, offered, spoiler
from .kinds import CHEAP, ORDER, Preference, graver, preference, promised, takes_from
from .levers import Levers
from .obstacle import Obstacles
from .pairs import Pairs
from .rerun import CONTRADICTS, Rerun, Reruns
from .slips import Slips
from .solve import Candidate

FOLLOWED = ("outcome", "setting")


class Advisor:
    """Finds changes for the findings of one review."""

    def __init__(self, review: Review, run: Assessment | None = None) -> None:
        self.review = review
        self.reruns = Reruns(review, run)
        self.levers = Levers(self.reruns)
        self.pairs = Pairs(self.levers, self.prove)
        self.obstacles = Obstacles(self.levers)
        self.holding = {(item.check, item.subject) for item in review.verdict.holding}
        self._offers: dict[tuple[str, str], Rerun | None] = {}
        self._accepted: set[tuple[str, str]] = set()

    @cached_property
    def slips(self) -> Slips:
        """The slips of the spec."""
        return Slips(self.reruns)

    @cached_property
    def beyond(self) -> "Advisor | None":
        """An advisor on the spec with its slips put right, where there are any."""
        right = self.slips.all_right
        return self.after(self.reruns.effects(right, ("", ""))) if right else None

    def after(self, remedy: Remedy) -> "Advisor":
        """An advisor on the review of the spec with a proven remedy."""
        return Advisor(*self.reruns.after(remedy))

    def best(self, finding: Finding) -> Remedy | None:
        """The first of the proven remedies, with the slips that have to be put right first."""
        remedies = self.first_hand(finding, 1)
        right = self.slips.all_right
        if not remedies and right is None:
            pair = self.second_hand(finding)
            remedies = [pair] if pair else []
        if not remedies or remedies[0].kind == "slip" or right is None:
            return remedies[0] if remedies else None
        together = dict(right.changes) | dict(remedies[0].values)
        rerun = self.reruns.whole(together)
        if rerun is None:
            return None
        told = self.reruns.effects(rerun, (finding.check, finding.subject))
        return replace(told, kind=remedies[0].kind, title=remedies[0].title)

    def first_hand(self, finding: Finding, most: int, lowering: bool = True) -> list[Remedy]:
        """What settles a finding with no other change made: slips, then what is proven."""
        slips = self.slips.settling(finding)
        if slips:
            return list(slips)
        entry = self.review.catalogue.entry(finding.check)
        if entry is None:
            return self._put_right(finding)
        now = self.beyond or self
        later = now.reruns.answers[finding.check, finding.subject]
        return now.ranked(entry, later, most, lowering)

    def second_hand(self, finding: Finding) -> Remedy | None:
        """Two changes together, tried for what holds and has no single cure."""
        entry = self.review.catalogue.entry(finding.check)
        holds = (finding.check, finding.subject) in self.holding
        return self.pairs.first(entry, finding) if entry and holds else None

    def _put_right(self, finding: Finding) -> list[Remedy]:
        """A stated value that follows from others, and does not agree with them.

        It follows them only where it is no claim, and where this makes nothing worse: else
        one of the others may be the wrong one.
        """
        if finding.advice.follows is None or finding.check != CONTRADICTS:
            return []
        key = (finding.check, finding.subject)
        right = dict.fromkeys(finding.evidence.leaves, finding.advice.follows)
        natures = {self.review.spec.schema.nature_of(path) for path in right}
        rerun = self.reruns.run_with(right, key, gravity(finding))
        if rerun is None or not natures <= set(FOLLOWED):
            return []
        return [replace(self.reruns.effects(rerun, key), kind="slip")]

    def ranked(
        self, entry: Entry, finding: Finding, most: int, lowering: bool = True
    ) -> list[Remedy]:
        """The best proven remedies; a kind is tried when the milder ones hold no cure.

        A promise lowered is offered beside another part or design, never beside a mere value;
        without ``lowering`` only where there is one of those.
        """
        proven: list[tuple[Preference, Remedy]] = []
        for kind in ORDER:
            full = [x for _, x in proven if not x.lacks and x.left is None]
            promises = self.reruns.promises
            cured = [x for x in full if x.kind != "promise" and not takes_from(x, promises)]
            if len(cured) >= most or any(x.kind in CHEAP for x in cured):
                break
            if (kind == "design" and cured) or (kind == "promise" and not (proven or lowering)):
                continue
            for change, remedy in self._of_kind(entry, finding, kind):
                proven.append((preference(remedy, change, promises), remedy))
        proven.sort(key=lambda item: item[0])
        return [remedy for _, remedy in proven[:most]]

    def _of_kind(
        self, entry: Entry, finding: Finding, kind: RemedyKind
    ) -> Iterator[tuple[float, Remedy]]:
        for change in self.review.catalogue.changes:
            if change.kind == kind and finding.check in change.helps:
                known = any(title == change.title for title, _ in self._accepted)
                remedy = self._offer(change, finding)
                if remedy is not None:
                    yield 0.0, remedy
                    if known:
                        return
        for group in self.levers.groups(entry, finding, kind):
            for tried, remedy in self._proven(finding, group):
                yield 1.0 + tried.change, self._named(remedy, kind, tried.path)

    def _proven(
        self, finding: Finding, group: list[Candidate]
    ) -> Iterator[tuple[Candidate, Remedy]]:
        """The first value of a group that is proven, if any.

        Of values beyond the same border the nearest that does it in the worst case counts:
        what that one spoils, a further one spoils more.
        """
        too_far: set[float] = set()
        for tried in group:
            if tried.border in too_far:
                continue
            changes = {tried.path: tried.text}
            remedy = self.prove(finding, changes)
            if remedy is not None:
                yield tried, remedy
                return
            if tried.border is not None and spoiler(self.reruns, finding, changes):
                too_far.add(tried.border)

    def _named(self, remedy: Remedy, kind: RemedyKind, path: str) -> Remedy:
        """A remedy with its kind; a promise that it lowers is said first."""
        if kind != "promise":
            return self._honest(replace(remedy, kind=graver(kind, remedy.kind)))
        claim = promised(path)
        return replace(remedy, kind=kind, title=f"lowers the promised {claim}", lowers=(claim,))

    def _honest(self, remedy: Remedy) -> Remedy:
        """A remedy that breaks a promise which was kept before is one that lowers it."""
        schema, broken = self.review.spec.schema, dict[str, None]()
        answers = self.reruns.behind(remedy).answers
        new = [key for key, x in answers.items() if label_of(key) in remedy.appeared and grave(x)]
        for check, _ in (key for key in new if not self._was_open(key)):
            entry = self.review.catalogue.entry(check)
            for lever in entry.check.levers if entry else ():
                if schema.nature_of(lever.path) == "claim":
                    broken[promised(lever.path)] = None
        if not broken:
            return remedy
        told = " and ".join(broken)
        title = f"does not keep the promised {told}"
        return replace(remedy, kind="promise", title=title, lowers=tuple(broken))

    def _was_open(self, key: Key) -> bool:
        old = self.reruns.answers.get(key)
        return old is not None and old.status is Status.OPEN

    def _offer(self, change: DesignChange, finding: Finding) -> Remedy | None:
        """A design change that is offered by itself, run once for all findings.

        What is accepted for the gravest of them is the answer to all that it settles.
        """
        schema = self.review.spec.schema
        per_channel = any(schema.is_channel_path(item.path) for item in change.follows)
        subject = finding.subject if per_channel else PRODUCT
        if (change.title, subject) not in self._offers:
            values = offered(self.reruns, change, subject)
            rerun = self.reruns.whole(values) if values else None
            self._offers[change.title, subject] = rerun
        rerun, key = self._offers[change.title, subject], (finding.check, finding.subject)
        if rerun is None or not eased(finding, rerun.answers.get(key)):
            return None
        if (change.title, subject) not in self._accepted:
            if not self.reruns.allows(rerun, key, gravity(finding)):
                return None
            self._accepted.add((change.title, subject))
        answer = rerun.answers.get(key)
        told = replace(self.reruns.effects(rerun, key), kind=change.kind, title=change.title)
        labels = (*told.cured, *told.eased)
        aside = tuple(x for x in labels if x.partition(" ")[0] not in change.helps)
        told = replace(told, left=answer.severity if answer else None, aside=aside)
        return self._honest(told) if change.kind != "promise" else self._less(told)

    def _less(self, remedy: Remedy) -> Remedy:
        """A change of the design that lowers promises, with their names said first."""
        nature = self.review.spec.schema.nature_of
        names = dict.fromkeys(promised(x) for x, _ in remedy.changes if nature(x) == "claim")
        title = f"lowers the promised {' and '.join(names)} to {remedy.title}"
        return replace(remedy, title=title, lowers=tuple(names))

    def prove(self, finding: Finding, changes: Mapping[str, object]) -> Remedy | None:
        """The remedy with all that follows and its effects; None where the re-run denies it."""
        key = (finding.check, finding.subject)
        whole, brought = completed(self.reruns, changes)
        rerun = self.reruns.run_with(whole, key, gravity(finding)) if whole else None
        if rerun is None:
            return None
        title = ", ".join(change.title for change in brought if len(whole) > len(changes))
        told = self.reruns.effects(rerun, key)
        moved = {local_path(path) for path in changes}
        along = {local_path(path) for path, _ in told.changes} - moved
        aside = [x for x in (*told.cured, *told.eased) if self._by_others(x, moved, along)]
        return replace(told, title=title, aside=tuple(aside))

    def _by_others(self, label: str, moved: set[str], along: set[str]) -> bool:
        """Whether an answer is turned by what goes along, and not by what was moved."""
        entry = self.review.catalogue.entry(label.partition(" ")[0])
        paths = {lever.path for lever in entry.check.levers} if entry else set()
        return bool(paths & along) and not paths & moved

    def told_of(self, remedy: Remedy, key: Key) -> Remedy | None:
        """A proven remedy of another finding with its effects beside this one, if it settles it."""
        rerun = self.reruns.behind(remedy)
        if not settled(rerun.answers.get(key)):
            return None
        told = self.reruns.effects(rerun, key)
        aside = tuple(x for x in (*told.cured, *told.eased) if x in remedy.aside)
        return replace(
            told, kind=remedy.kind, title=remedy.title, lowers=remedy.lowers, aside=aside
        )

    def obstacle(self, finding: Finding) -> str:
        """Why no change is offered."""
        return self.obstacles.obstacle(finding)

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

from ..check import DesignChange
from ..declare import PRODUCT, local_path
from ..evaluation.catalogue import Entry
from ..evaluation.engine import Assessment
from ..finding import Finding, Remedy, RemedyKind
from ..judging.consistency import BUILT_IN
from ..judging.review import Review
from ..judging.weighing import rank
from .effect import KINDS, with_lists
from .following import completed, offered
from .kinds import ORDER, graver, preference, promised
from .levers import Levers
from .obstacle import EITHER, Obstacles
from .pairs import Pairs
from .rerun import CONTRADICTS, Rerun, Reruns
from .slips import Slips

MOST_REMEDIES = 3
TOGETHER = "no single change fixes this; these together do"
AFTER = "worked out with these put right first: "
FOLLOWED = ("outcome", "setting")


def with_remedies(review: Review, only_holding: bool = False) -> Review:
    """The review with proven remedies in each finding, or in those that hold."""
    advisor = Advisor(review)
    holding = {id(item) for item in review.verdict.holding}
    findings = tuple(
        advisor.advised(item)
        if item.severity is not None and (id(item) in holding or not only_holding)
        else item
        for item in review.findings
    )
    advised = {id(old): new for old, new in zip(review.findings, findings, strict=True)}
    held = tuple(advised.get(id(item), item) for item in review.verdict.holding)
    return replace(review, findings=findings, verdict=replace(review.verdict, holding=held))


class Advisor:
    """Finds changes for the findings of one review."""

    def __init__(self, review: Review, run: Assessment | None = None) -> None:
        self.review = review
        self.reruns = Reruns(review, run)
        self.levers = Levers(self.reruns)
        self.pairs = Pairs(self.levers, self.prove)
        self.obstacles = Obstacles(self.levers)
        self.holding = {(item.check, item.subject) for item in review.verdict.holding}
        self._advised: dict[tuple[str, object, str], Finding] = {}
        self._offers: dict[tuple[str, str], Rerun | None] = {}

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

    def advised(self, finding: Finding) -> Finding:
        """The finding with up to three remedies, or with a note why there is none.

        Channels that are written once fail alike, and are cured alike.
        """
        written = self.reruns.spot_of(finding.subject)
        key = (finding.check, written, finding.message)
        if written is None or finding.check in BUILT_IN:
            return self._advised_alone(finding)
        if key not in self._advised:
            self._advised[key] = self._advised_alone(finding)
        twin = self._advised[key]
        remedies = tuple(_seen_from(x, twin, finding) for x in twin.advice.remedies)
        return replace(finding, advice=replace(twin.advice, remedies=remedies))

    def _advised_alone(self, finding: Finding) -> Finding:
        remedies, note = self.advice(finding, MOST_REMEDIES)
        advice = replace(finding.advice, remedies=tuple(remedies), remedy_note=note)
        return replace(finding, advice=advice)

    def best(self, finding: Finding) -> Remedy | None:
        """The first of the proven remedies, with the slips that have to be put right first."""
        remedies, _ = self.advice(finding, 1, explain=False)
        right = self.slips.all_right
        if not remedies or remedies[0].kind == "slip" or right is None:
            return remedies[0] if remedies else None
        together = dict(right.changes) | dict(remedies[0].values)
        rerun = self.reruns.whole(together)
        if rerun is None:
            return None
        told = self.reruns.effects(rerun, (finding.check, finding.subject))
        return replace(told, kind=remedies[0].kind, title=remedies[0].title)

    def advice(self, finding: Finding, most: int, explain: bool = True) -> tuple[list[Remedy], str]:
        """The best proven remedies, and what is to be said of them or of their absence."""
        slips = self.slips.settling(finding)
        if slips:
            return list(slips), ""
        if finding.check in BUILT_IN:
            return self._put_right(finding)
        if self.beyond is not None:
            later = self.beyond.reruns.answers[finding.check, finding.subject]
            remedies, note = self.beyond.advice(later, most, explain)
            after = AFTER + ", ".join(dict.fromkeys(local_path(x) for x in self.slips.paths))
            return remedies, "; ".join(x for x in (note, after if remedies else "") if x)
        entry = self.review.catalogue.entry(finding.check)
        assert entry is not None
        return self._of_check(entry, finding, most, explain)

    def _of_check(
        self, entry: Entry, finding: Finding, most: int, explain: bool
    ) -> tuple[list[Remedy], str]:
        remedies = self.ranked(entry, finding, most)
        key = (finding.check, finding.subject)
        weak = not remedies or remedies[0].kind == "promise" or remedies[0].lacks
        pair = self.pairs.first(entry, finding) if weak and key in self.holding else None
        if pair is not None and not (remedies and pair.lacks):
            return [pair, *remedies][:most], TOGETHER
        if remedies:
            note = entry.check.otherwise if remedies[0].kind == "promise" else ""
            return remedies, f"kept as promised it needs {note}" if note else ""
        return [], self.obstacle(finding) if explain else ""

    def _put_right(self, finding: Finding) -> tuple[list[Remedy], str]:
        """A stated value that follows from others, and does not agree with them.

        It follows them only where it is no claim, and where this makes nothing worse: else
        one of the others may be the wrong one.
        """
        if finding.advice.follows is None or finding.check != CONTRADICTS:
            return [], ""
        key = (finding.check, finding.subject)
        right = dict.fromkeys(finding.evidence.leaves, finding.advice.follows)
        natures = {self.review.spec.schema.nature_of(path) for path in right}
        rerun = self.reruns.run_with(right, key, rank(finding))
        if rerun is None or not natures <= set(FOLLOWED):
            return [], EITHER
        return [replace(self.reruns.effects(rerun, key), kind="slip")], ""

    def ranked(self, entry: Entry, finding: Finding, most: int) -> list[Remedy]:
        """The best proven remedies; a kind is tried when the milder ones hold no cure.

        A promise lowered is offered beside another design, never beside a mere part.
        """
        proven: list[tuple[tuple[bool, bool, int, int, int, float], Remedy]] = []
        for kind in ORDER:
            cured = [x for _, x in proven if not x.lacks]
            if len(cured) >= most or any(x.kind != "design" for x in cured):
                break
            for change, remedy in self._of_kind(entry, finding, kind):
                proven.append((preference(remedy, change), remedy))
        proven.sort(key=lambda item: item[0])
        return [remedy for _, remedy in proven[:most]]

    def _of_kind(
        self, entry: Entry, finding: Finding, kind: RemedyKind
    ) -> Iterator[tuple[float, Remedy]]:
        for change in self.review.catalogue.changes:
            if change.kind == kind and finding.check in change.helps:
                remedy = self._offer(change, finding)
                if remedy is not None:
                    yield 0.0, remedy
        for group in self.levers.groups(entry, finding, kind):
            for tried in group:
                remedy = self.prove(finding, {tried.path: tried.text})
                if remedy is not None:
                    yield 1.0 + tried.change, self._named(remedy, kind, tried.path)
                    break

    def _named(self, remedy: Remedy, kind: RemedyKind, path: str) -> Remedy:
        """A remedy with its kind; a promise that it lowers is said first."""
        if kind != "promise":
            return replace(remedy, kind=graver(kind, remedy.kind))
        claim = promised(path)
        return replace(remedy, kind=kind, title=f"lowers the promised {claim}", lowers=(claim,))

    def _offer(self, change: DesignChange, finding: Finding) -> Remedy | None:
        """A design change that is offered by itself, run once for all findings."""
        schema = self.review.spec.schema
        per_channel = any(schema.is_channel_path(item.path) for item in change.follows)
        subject = finding.subject if per_channel else PRODUCT
        if (change.title, subject) not in self._offers:
            values = offered(self.reruns, change, subject)
            rerun = self.reruns.whole(values) if values else None
            self._offers[change.title, subject] = rerun
        rerun, key = self._offers[change.title, subject], (finding.check, finding.subject)
        if rerun is None or not self.reruns.allows(rerun, key, rank(finding)):
            return None
        return replace(self.reruns.effects(rerun, key), kind=change.kind, title=change.title)

    def prove(self, finding: Finding, changes: Mapping[str, object]) -> Remedy | None:
        """The remedy with all that follows and its effects; None where the re-run denies it."""
        key = (finding.check, finding.subject)
        whole, brought = completed(self.reruns, changes)
        rerun = self.reruns.run_with(whole, key, rank(finding)) if whole else None
        if rerun is None:
            return None
        title = ", ".join(change.title for change in brought if len(whole) > len(changes))
        return replace(self.reruns.effects(rerun, key), title=title)

    def obstacle(self, finding: Finding) -> str:
        """Why no change is offered."""
        return self.obstacles.obstacle(finding)


def _seen_from(remedy: Remedy, twin: Finding, finding: Finding) -> Remedy:
    """A remedy of the same finding in another channel, told from this one."""
    one, other = (f"{finding.check} ({x.subject})" for x in (finding, twin))
    lists = {
        kind: [other if label == one else label for label in getattr(remedy, kind)]
        for kind in KINDS
    }
    return with_lists(remedy, lists)

"""Remedies that are proven: solved, rounded to stock, and confirmed by a re-run.

A change is offered only when the catalogue, run again with it, no longer finds what it
should cure and finds nothing new of the same or a graver severity.
"""

from collections.abc import Collection, Iterator, Mapping
from contextlib import suppress
from dataclasses import replace
from itertools import islice, permutations
from operator import itemgetter

from ..check import Lever
from ..declare import PRODUCT, local_path, subject_of
from ..evaluation.catalogue import Entry
from ..evaluation.engine import Assessment
from ..evaluation.node import FigureError, Node
from ..finding import CLEAR, Finding, Remedy, Status
from ..judging.review import Review
from ..judging.weighing import rank
from .conflict import conflict
from .rerun import CONTRADICTS, Key, Rerun, Reruns, in_text
from .solve import Candidate, candidates, part_way

MOST_REMEDIES = 3
MOST_LEVERS = 3
MOST_PAIRS = 6
NO_LEVER = "no single change fixes this; it needs a different part or topology"
EITHER = "which of these values is wrong, only the drawing or the data sheet can tell"
TOGETHER = "no single change fixes this; these together do"


def with_remedies(
    review: Review, only_holding: bool = False, checks: Collection[str] = ()
) -> Review:
    """The review with proven remedies in each finding, or in those that hold or are named."""
    advisor = Advisor(review)
    holding = {id(item) for item in review.verdict.holding}
    findings = tuple(
        advisor.advised(item)
        if item.severity is not None
        and (id(item) in holding or not only_holding)
        and (item.check in checks or not checks)
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
        self.holding = {(item.check, item.subject) for item in review.verdict.holding}
        self._solved: dict[tuple[Key, str], list[Candidate]] = {}

    def after(self, remedy: Remedy) -> "Advisor":
        """An advisor on the review of the spec with a proven remedy."""
        return Advisor(*self.reruns.after(remedy))

    def advised(self, finding: Finding) -> Finding:
        """The finding with up to three remedies, or with a note why there is none."""
        entry = self.review.catalogue.entry(finding.check)
        if entry is None:
            return self._put_right(finding)
        remedies = tuple(self.ranked(entry, finding, MOST_REMEDIES))
        if remedies:
            return _with_advice(finding, remedies)
        holds = (finding.check, finding.subject) in self.holding
        pair = self.two(entry, finding) if holds else None
        if pair is not None:
            return _with_advice(finding, (pair,), TOGETHER)
        return _with_advice(finding, note=self.obstacle(finding))

    def _put_right(self, finding: Finding) -> Finding:
        """A doubtful value with what it should be, and what comes to light with that.

        Unlike a change of the design, the guess at a slip is offered whatever it brings up.
        A value that contradicts others follows them only where this makes nothing worse:
        else one of the others may be the wrong one.
        """
        if finding.advice.follows is None:
            return finding
        key = (finding.check, finding.subject)
        limit = rank(finding) if finding.check == CONTRADICTS else -1
        right = dict.fromkeys(finding.evidence.leaves, finding.advice.follows)
        rerun = self.reruns.run_with(right, key, limit)
        if rerun is None:
            return _with_advice(finding, note=EITHER)
        return _with_advice(finding, (self.reruns.effects(rerun, key),))

    def best(self, finding: Finding) -> Remedy | None:
        """The first of the proven remedies, or the pair where no single change works."""
        entry = self.review.catalogue.entry(finding.check)
        if entry is None:
            return next(iter(self._put_right(finding).advice.remedies), None)
        return next(iter(self.ranked(entry, finding, 1)), None) or self.two(entry, finding)

    def ranked(self, entry: Entry, finding: Finding, most: int) -> list[Remedy]:
        """The best proven remedies: fewest new concerns first, then the smallest change.

        The nearest changes are tried first, until what is left cannot be better.
        """
        proven: list[tuple[tuple[int, int, float], Remedy]] = []
        groups = sorted(self.singles(entry, finding), key=lambda group: group[0].change)
        for group in groups:
            if len(proven) >= most and proven[most - 1][0] <= (0, 0, group[0].change):
                break
            for tried in group:
                remedy = self.prove(finding, {tried.path: tried.text})
                if remedy is not None:
                    key = (_concerns(remedy), len(remedy.worsened), tried.change)
                    proven.append((key, remedy))
                    proven.sort(key=itemgetter(0))
                    break
        return [remedy for _, remedy in proven[:most]]

    def singles(self, entry: Entry, finding: Finding) -> Iterator[list[Candidate]]:
        """For each lever and direction the stock values that should cure the finding."""
        for lever, path in self.levers(entry, finding):
            found = self.solved(entry, finding, lever, path)
            for direction in (1, -1):
                group = [item for item in found if item.direction == direction]
                if group:
                    yield group
            yield from ([item] for item in found if item.direction == 0)

    def solved(self, entry: Entry, finding: Finding, lever: Lever, path: str) -> list[Candidate]:
        """The stock values of a lever that should cure the finding, solved once."""
        key = ((finding.check, finding.subject), path)
        if key not in self._solved:
            self._solved[key] = candidates(self.reruns.run, entry, finding, lever, path)
        return self._solved[key]

    def levers(self, entry: Entry, finding: Finding) -> list[tuple[Lever, str]]:
        """The levers with their full paths: of the finding's channel, or of every channel.

        What a silent leaf would be follows from others, is no lever: to state it is no change
        of the design.
        """
        found: list[tuple[Lever, str]] = []
        for lever in entry.check.levers:
            for path in self._paths(lever, finding):
                known = any(path in self.reruns.aliases(other) for _, other in found)
                if not known and not self._follows(path):
                    found.append((lever, path))
        return found

    def _paths(self, lever: Lever, finding: Finding) -> list[str]:
        """Where a lever can be moved: of the channel, or of every channel that allows it."""
        graph = self.reruns.run.graph
        if not self.review.spec.schema.is_channel_path(lever.path):
            return [] if graph.matches(lever.when, None) is False else [lever.path]
        names = self.review.spec.channels if finding.subject == PRODUCT else (finding.subject,)
        allowed = [name for name in names if graph.matches(lever.when, name) is not False]
        return [f"channels.{name}.{lever.path}" for name in allowed]

    def _follows(self, path: str) -> bool:
        """Whether the spec is silent about a leaf and says what it follows from."""
        graph = self.reruns.run.graph
        if path in self.review.spec.values:
            return False
        for quantity in graph.derived.values():
            if quantity.stated_at == local_path(path):
                channel = subject_of(path) if quantity.each == "channel" else None
                with suppress(FigureError):
                    node = graph.follows(quantity.name, channel)
                    if isinstance(node, Node) and node.used:
                        return True
        return False

    def prove(self, finding: Finding, changes: Mapping[str, object]) -> Remedy | None:
        """The remedy with its effects, or None when the re-run does not confirm it."""
        key = (finding.check, finding.subject)
        rerun = self.reruns.run_with(changes, key, rank(finding))
        return self.reruns.effects(rerun, key) if rerun is not None else None

    def two(self, entry: Entry, finding: Finding) -> Remedy | None:
        """Two changes together: both of the check's own levers, or one of a check it spoils."""
        return self.pair(entry, finding) or self.relieved(entry, finding)

    def pair(self, entry: Entry, finding: Finding) -> Remedy | None:
        """Two levers moved together: one part of the way, the other solved for the rest."""
        levers = self.levers(entry, finding)[:MOST_LEVERS]
        tries = (
            (path, text, second, other)
            for (first, path), (second, other) in permutations(levers, 2)
            for text in part_way(self.reruns.run, first, path)
        )
        for path, text, second, other in islice(tries, MOST_PAIRS):
            run = self.reruns.variant(path, text)
            found = candidates(run, entry, finding, second, other)[:1] if run else []
            for tried in found:
                remedy = self.prove(finding, {path: text, tried.path: tried.text})
                if remedy is not None:
                    return remedy
        return None

    def relieved(self, entry: Entry, finding: Finding) -> Remedy | None:
        """One lever, and one of the check that moving it spoils most."""
        key = (finding.check, finding.subject)
        for lever, path in self.levers(entry, finding)[:MOST_LEVERS]:
            for tried in self.solved(entry, finding, lever, path)[:1]:
                first: dict[str, object] = {path: tried.text}
                rerun = self.reruns.run_with(first, key)
                for second in self._relief(rerun, key, rank(finding)) if rerun else ():
                    remedy = (
                        None
                        if second.keys() & first.keys()
                        else self.prove(finding, first | second)
                    )
                    if remedy is not None:
                        return remedy
        return None

    def _relief(self, rerun: Rerun, key: Key, limit: int) -> Iterator[dict[str, object]]:
        """Changes that cure the gravest of what a rerun spoils; proof decides on the rest."""
        grave = [x for x in self.reruns.spoilt_by(rerun, key) if rank(rerun.answers[x]) <= limit]
        entry = self.review.catalogue.entry(grave[0][0]) if grave else None
        if entry is None:
            return
        found = rerun.answers[grave[0]]
        for lever, path in self.levers(entry, found)[:MOST_LEVERS]:
            for tried in candidates(rerun.run, entry, found, lever, path)[:1]:
                yield {tried.path: tried.text}

    def obstacle(self, finding: Finding) -> str:
        """Why no change of the levers is offered: out of reach, or what it would break."""
        entry = self.review.catalogue.entry(finding.check)
        levers = self.levers(entry, finding) if entry else []
        if entry is None or not levers:
            return NO_LEVER
        return "; ".join(self._reason(entry, finding, lever, path) for lever, path in levers)

    def _reason(self, entry: Entry, finding: Finding, lever: Lever, path: str) -> str:
        found = self.solved(entry, finding, lever, path)
        if not found:
            lacking = self._lacking(
                entry, finding, path, self.review.spec.schema.field_of(path).example
            )
            return lacking or f"no usual value of {path} works"
        key = (finding.check, finding.subject)
        text = in_text(found[0].text)
        rerun = self.reruns.run_with({path: found[0].text}, key)
        if rerun is None:
            lacking = self._lacking(entry, finding, path, found[0].text)
            return lacking or f"{path} at {text} still fails at the worst case"
        spoilt = self.reruns.spoilt_by(rerun, key)
        apart = conflict(self.reruns.run, lever, path, (entry, finding), self._entries(spoilt))
        return apart or f"{path} at {text} fixes it, but {self._news(spoilt)}"

    def _news(self, spoilt: list[Key]) -> str:
        """What a change brings about, then what it makes worse."""
        new = [x for x in spoilt if rank(self.reruns.answers.get(x)) == CLEAR]
        worse = [x for x in spoilt if x not in new]
        texts = [", ".join(f"{check} ({subject})" for check, subject in x) for x in (new, worse)]
        told = zip(("introduces ", "worsens "), texts, strict=True)
        return " and ".join(word + text for word, text in told if text)

    def _lacking(self, entry: Entry, finding: Finding, path: str, value: object) -> str:
        """What a change leaves open, where that is why it cannot be shown to be a cure."""
        run = self.reruns.variant(path, value)
        after = run.judge(entry, finding.subject) if run else None
        if after is None or after.status is not Status.OPEN:
            return ""
        names = ", ".join(dict.fromkeys(local_path(item.path) for item in after.advice.missing[:4]))
        lacks = f"{names} missing" if names else "not certain without more data"
        return f"{path} at {in_text(value)} leaves it open: {lacks}"

    def _entries(self, keys: list[Key]) -> list[tuple[Entry, Finding]]:
        found = []
        for check, subject in keys:
            entry = self.review.catalogue.entry(check)
            if entry is not None:
                found.append((entry, self.reruns.answers[check, subject]))
        return found


def _concerns(remedy: Remedy) -> int:
    """How many answers a change brings up as findings or leaves open."""
    return len(remedy.appeared) + len(remedy.opened)


def _with_advice(finding: Finding, remedies: tuple[Remedy, ...] = (), note: str = "") -> Finding:
    advice = replace(finding.advice, remedies=remedies, remedy_note=note)
    return replace(finding, advice=advice)

"""Two changes together: both of the check's own levers, or one of a check that it spoils."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from itertools import islice, permutations

from ..check import Lever
from ..declare import local_path
from ..evaluation.catalogue import Entry
from ..finding import Finding, Remedy
from .effect import Gravity, Key, gravity
from .kinds import ORDER, kind_of
from .levers import Levers
from .rerun import Rerun
from .solve import candidates, part_way

MOST_LEVERS = 3
MOST_PAIRS = 6

Prove = Callable[[Finding, Mapping[str, object]], Remedy | None]


class Pairs:
    """Changes of two levers, tried where no single one does."""

    def __init__(self, levers: Levers, prove: Prove) -> None:
        self.levers = levers
        self.reruns = levers.reruns
        self.review = levers.review
        self.prove = prove

    def first(self, entry: Entry, finding: Finding) -> Remedy | None:
        """The first pair that is proven, if any."""
        found = self.relieved(entry, finding) or self.pair(entry, finding)
        if found is None:
            return None
        kinds = [kind_of(self.review.spec.schema, Lever(x, ""), x) for x, _ in found.changes]
        return replace(found, kind=max(kinds, key=ORDER.index))

    def _levers(self, entry: Entry, finding: Finding) -> list[tuple[Lever, str]]:
        """The levers that may be moved together with another one: no promises."""
        found = self.levers.of(entry, finding)
        return [item for item in found if self.levers.kind(*item) != "promise"][:MOST_LEVERS]

    def pair(self, entry: Entry, finding: Finding) -> Remedy | None:
        """Two levers moved together: one part of the way, the other solved for the rest."""
        levers = self._levers(entry, finding)
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
        for lever, path in self._levers(entry, finding):
            for tried in self.levers.solved(entry, finding, lever, path)[:1]:
                first: dict[str, object] = {path: tried.text}
                rerun = self.reruns.run_with(first, key)
                for second in self._relief(rerun, key, gravity(finding)) if rerun else ():
                    one, other = ({local_path(x) for x in some} for some in (first, second))
                    remedy = None if one & other else self.prove(finding, first | second)
                    if remedy is not None:
                        return remedy
        return None

    def _relief(self, rerun: Rerun, key: Key, limit: Gravity) -> Iterator[dict[str, object]]:
        """Changes that cure the gravest of what a rerun spoils; proof decides on the rest."""
        grave = self.reruns.spoilt_by(rerun, key, limit)
        entry = self.review.catalogue.entry(grave[0][0]) if grave else None
        if entry is None:
            return
        found = rerun.answers[grave[0]]
        for lever, path in self._levers(entry, found):
            for tried in candidates(rerun.run, entry, found, lever, path)[:1]:
                yield {tried.path: tried.text}

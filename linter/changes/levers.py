"""The levers of a check as full paths of the spec at hand, and the values that should do."""

from contextlib import suppress

from ..check import Lever
from ..declare import PRODUCT, local_path, subject_of
from ..evaluation.catalogue import Entry
from ..evaluation.node import FigureError, Node
from ..finding import Finding, RemedyKind
from .effect import Key
from .kinds import ORDER, kind_of
from .rerun import Reruns
from .solve import Candidate, candidates


class Levers:
    """What a designer can turn in one spec, each solved once."""

    def __init__(self, reruns: Reruns) -> None:
        self.review = reruns.review
        self.reruns = reruns
        self._solved: dict[tuple[Key, str], list[Candidate]] = {}

    def of(self, entry: Entry, finding: Finding) -> list[tuple[Lever, str]]:
        """The levers with their full paths: of the finding's channel, or of every channel.

        What a silent leaf would be follows from others, is no lever: to state it is no change
        of the design.  What is promised comes last.
        """
        found: list[tuple[Lever, str]] = []
        for lever in entry.check.levers:
            for path in self._paths(lever, finding):
                known = any(path in self.reruns.alike.paths(other) for _, other in found)
                if not known and not self._follows(path):
                    found.append((lever, path))
        return sorted(found, key=lambda item: ORDER.index(self.kind(*item)))

    def kind(self, lever: Lever, path: str) -> RemedyKind:
        """The kind of a change of a lever; that of what it brings along, where it is graver."""
        known = kind_of(self.review.spec.schema, lever, path)
        brought = [x.kind for x in self.review.catalogue.changes if local_path(path) in x.moves]
        return max([known, *brought], key=ORDER.index)

    def solved(self, entry: Entry, finding: Finding, lever: Lever, path: str) -> list[Candidate]:
        """The stock values of a lever that should settle the finding, solved once."""
        key = ((finding.check, finding.subject), path)
        if key not in self._solved:
            self._solved[key] = candidates(self.reruns.run, entry, finding, lever, path)
        return self._solved[key]

    def groups(self, entry: Entry, finding: Finding, kind: RemedyKind) -> list[list[Candidate]]:
        """For each lever of a kind and each direction the values to try, the nearest first."""
        found: list[list[Candidate]] = []
        for lever, path in self.of(entry, finding):
            if self.kind(lever, path) == kind:
                tried = self.solved(entry, finding, lever, path)
                ways = [[x for x in tried if x.direction == way] for way in (1, -1)]
                found += [group for group in ways if group]
                words = [x for x in tried if x.direction == 0]
                if self.review.spec.schema.field_of(path).kind == "count":
                    found += [sorted(words, key=lambda x: x.change)] if words else []
                else:
                    found += [[x] for x in words]
        return sorted(found, key=lambda group: group[0].change)

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

"""Findings as the protocol has them: where, how grave, what, and the root cause beside it."""

from collections.abc import Iterator
from dataclasses import dataclass

from lsprotocol import types
from pygls.workspace import PositionCodec

from ..finding import Cause, Finding, Place, Severity, Status
from ..reading.refusal import Refusal
from ..reports.groups import groups, together
from ..reports.identity import PROGRAM
from ..reports.phrases import against, clean
from ..reports.verdict import lacking
from .address import address_of
from .desk import Seen
from .ranges import Ranges

GRAVITY = {
    Severity.CRITICAL: types.DiagnosticSeverity.Error,
    Severity.MAJOR: types.DiagnosticSeverity.Warning,
    Severity.MINOR: types.DiagnosticSeverity.Information,
}


@dataclass(frozen=True, slots=True)
class Marked:
    """A diagnostic, and the findings that it tells of, equal but for their channel."""

    diagnostic: types.Diagnostic
    finding: Finding | None = None
    subjects: tuple[str, ...] = ()


def marked(seen: Seen, uri: str, codec: PositionCodec) -> list[Marked]:
    """What there is to say of a version of a document."""
    page = _Page(seen, uri, codec)
    if seen.refusals:
        return [Marked(page.refused(item)) for item in seen.refusals]
    return list(page.findings())


class _Page:
    """One version of a document."""

    def __init__(self, seen: Seen, uri: str, codec: PositionCodec) -> None:
        self.seen, self.uri, self.codec = seen, uri, codec
        self.ranges = Ranges(seen.text, codec)
        self.file = seen.name
        self.cause_of = {id(x): cause for cause in seen.causes for x in cause.findings}

    def refused(self, item: Refusal) -> types.Diagnostic:
        """Why the document cannot be assessed; what stands in another file is told at the top."""
        example = f", for example {item.example}" if item.example else ""
        text = f"not assessed: {item.problem}; expected {item.expected}{example}"
        own = item.place.file == self.file
        return types.Diagnostic(
            range=self.ranges.of(item.place) if own else self.ranges.first(),
            severity=types.DiagnosticSeverity.Error,
            source=PROGRAM,
            message=clean(text),
            related_information=None if own else [self._elsewhere(item.place, item.problem)],
        )

    def findings(self) -> Iterator[Marked]:
        """What fails, the gravest first, then what is open and holds."""
        review, found, channels = self.seen.review, self.seen.findings, set[str]()
        if review is not None:
            opened = [x for x in review.verdict.holding if x.status is Status.OPEN]
            found, channels = (*review.failing(), *opened), set(review.spec.channels)
        for item, subjects in groups(found):
            of = f" ({together(subjects)})" if len(channels) > 1 and channels & {*subjects} else ""
            yield Marked(self._diagnostic(item, of), item, subjects)

    def _diagnostic(self, item: Finding, of: str) -> types.Diagnostic:
        text = (lacking(item) or item.message) if item.status is Status.OPEN else item.message
        text = (text or against(item.evidence)) + of
        word = item.severity or "open"
        permitted = f"; {item.permitted}" if item.permitted else ""
        gravity = GRAVITY[item.severity] if item.severity else types.DiagnosticSeverity.Information
        place = self._own_place(item)
        return types.Diagnostic(
            range=self.ranges.of(place) if place else self.ranges.first(),
            severity=types.DiagnosticSeverity.Hint if item.permitted else gravity,
            code=item.check,
            source=PROGRAM,
            message=clean(f"{word}: {text}{permitted}"),
            related_information=list(self._related(item)) or None,
        )

    def _own_place(self, item: Finding) -> Place | None:
        """Where a finding is in this document: that of a part, where the part is named."""
        spec, place = self.seen.spec, item.place
        if place is None or spec is None or place.file == self.file:
            return place
        path = place.path
        while path and path not in spec.places:
            path = path.rpartition(".")[0]
        return next((x for x in spec.places.get(path, ()) if x.file == self.file), None)

    def _related(self, item: Finding) -> Iterator[types.DiagnosticRelatedInformation]:
        cause = self.cause_of.get(id(item))
        if cause is not None and len({x.check for x in cause.findings}) > 1:
            yield self._cause(cause, item)
        if item.place is not None and item.place.file != self.file:
            yield self._elsewhere(item.place, f"{item.place.path} of the part")
        for place in item.related:
            yield self._elsewhere(place, place.path)

    def _cause(self, cause: Cause, item: Finding) -> types.DiagnosticRelatedInformation:
        """The root cause, where the first of its findings is."""
        place = cause.findings[0].place or item.place or Place(self.file, 1, 1)
        number = len({x.check for x in cause.findings})
        return self._elsewhere(place, f"root cause of {number} checks: {cause.headline}")

    def _elsewhere(self, place: Place, text: str) -> types.DiagnosticRelatedInformation:
        """A place of this or of another file; of that only the position is known."""
        if place.file == self.file:
            return types.DiagnosticRelatedInformation(
                types.Location(self.uri, self.ranges.of(place)), clean(text)
            )
        start = types.Position(place.line - 1, place.column - 1)
        location = types.Location(address_of(place.file), types.Range(start, start))
        return types.DiagnosticRelatedInformation(location, clean(text))

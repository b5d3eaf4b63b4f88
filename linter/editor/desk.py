"""What became of each open document: read, reviewed, explained, with changes where asked.

All of it runs in one thread, one job after the other; a job whose document has been changed
meanwhile is not begun, and a long one is given up.  Numbers that are changed in a spec that was
reviewed before alter few answers: only these are judged again.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path

from ..batch.variants import Point
from ..changes.causes import causes_of
from ..changes.stages import with_remedies
from ..evaluation.catalogue import load
from ..evaluation.computations import Computations
from ..evaluation.engine import Assessment
from ..evaluation.nodes import Nodes
from ..finding import Cause, Finding, Place
from ..judging.criteria import USUAL, Criteria, criteria_for
from ..judging.house import find_house
from ..judging.house_file import house_of
from ..judging.parts_review import reviewed
from ..judging.review import Review, concluded
from ..quantities.value import Value
from ..reading.by_path import steps_of
from ..reading.loading import Spec, load_text
from ..reading.parts_file import no_parts, parts_beside, parts_of
from ..reading.refusal import Refusal
from ..reading.validation import Leaf
from .address import kind_of, path_of

MOST_AT_ONCE = 4
"""So many other numbers are cheaper to follow than a review."""


class SupersededError(Exception):
    """What was asked has been overtaken by something newer."""


@dataclass(frozen=True, slots=True)
class Seen:
    """One version of a document: its spec, or why there is none, and its review.

    name: what places call the document.  review: where the findings are; their places are
    those of this text.  findings: of a parts file.  causes: once they have been worked out.
    """

    version: int
    text: str
    name: str
    spec: Spec | None = None
    refusals: tuple[Refusal, ...] = ()
    review: Review | None = None
    findings: tuple[Finding, ...] = ()
    causes: tuple[Cause, ...] = ()


class _Watched(Computations):
    """Work that is given up when nobody waits for it any more."""

    def __init__(self, wanted: Callable[[], bool]) -> None:
        super().__init__()
        self.wanted = wanted

    def revised(self) -> None:
        """A changed spec is about to be judged."""
        super().revised()
        if not self.wanted():
            raise SupersededError


@dataclass(slots=True)
class Desk:
    """The documents that are open.

    latest: their newest versions; points: the specs reviewed in whole, and what with.
    """

    latest: dict[str, int] = field(default_factory=dict)
    seen: dict[str, Seen] = field(default_factory=dict)
    _points: dict[str, tuple[Point, Criteria]] = field(default_factory=dict)
    _criteria: dict[str, tuple[object, Criteria | tuple[Refusal, ...]]] = field(
        default_factory=dict
    )

    def forget(self, uri: str) -> None:
        """A document has been closed."""
        for known in (self.latest, self.seen, self._points, self._criteria):
            known.pop(uri, None)

    def look(self, uri: str, version: int, text: str) -> Seen | None:
        """The review of a version; None where there is a newer one."""
        if self.latest.get(uri) != version:
            return None
        path = path_of(uri)
        name = str(path) if path else uri
        try:
            self.seen[uri] = self._looked(uri, Seen(version, text, name), path)
        except Exception as error:  # a fault must not leave the findings of another text
            problem = f"the program itself failed, nothing is judged: {type(error).__name__}"
            refusal = Refusal(Place(name, 1, 1), problem, "a review that comes to its end")
            self.seen[uri] = Seen(version, text, name, refusals=(refusal,))
        return self.seen[uri]

    def _looked(self, uri: str, seen: Seen, path: Path | None) -> Seen:
        kind = kind_of(uri)
        if kind in ("parts", "house"):
            return _beside(seen, kind)
        parts = parts_beside(path) if path else no_parts
        loaded = load_text(seen.text, seen.name, parts=parts)
        criteria = self._terms(uri, path)
        if loaded.spec is None:
            return replace(seen, refusals=loaded.refusals)
        if isinstance(criteria, tuple):
            return replace(seen, refusals=criteria)
        spec = criteria.applied(loaded.spec)
        return replace(seen, spec=spec, review=self._reviewed(uri, spec, criteria))

    def explained(self, uri: str, version: int) -> Seen | None:
        """The same with its causes; None where there is a newer version, or none is wanted."""
        seen = self.seen.get(uri)
        if seen is None or self.latest.get(uri) != version or seen.version != version:
            return None
        if seen.spec is None or seen.review is None:
            return None
        point, _ = self._points[uri]
        fresh = point.run.spec is seen.spec
        whole = seen.review if fresh else self._whole(uri, seen.spec, seen.review.criteria)
        try:
            causes = causes_of(whole, self._run(whole, lambda: self.latest.get(uri) == version))
        except SupersededError:
            return None
        self.seen[uri] = replace(seen, review=whole, causes=causes)
        return self.seen[uri]

    def proven(self, uri: str, check: str, wanted: Callable[[], bool]) -> tuple[Finding, ...]:
        """The findings of a check with their proven changes; none where nobody waits for them."""
        seen = self.seen.get(uri)
        if seen is None or seen.review is None or not wanted():
            return ()
        run = self._run(seen.review, wanted)
        try:
            found = with_remedies(seen.review, checks=(check,), run=run)
        except SupersededError:
            return ()
        return tuple(x for x in found.failing() if x.check == check)

    def _run(self, review: Review, wanted: Callable[[], bool]) -> Assessment:
        run = Assessment(review.spec, review.catalogue, review.verdict.milestone)
        run.nodes = Nodes(_Watched(wanted))
        return run

    def _terms(self, uri: str, path: Path | None) -> Criteria | tuple[Refusal, ...]:
        """What the document is held against; the house file is read again when it changes."""
        house = find_house(path) if path else None
        written = (house, house.stat().st_mtime_ns, house.stat().st_size) if house else None
        key = (written, date.today())
        if uri not in self._criteria or self._criteria[uri][0] != key:
            found = criteria_for(path, USUAL) if path else Criteria(date.today())
            self._criteria[uri] = (key, found)
        return self._criteria[uri][1]

    def _reviewed(self, uri: str, spec: Spec, criteria: Criteria) -> Review:
        """The review of a spec, by way of one reviewed before where few numbers differ."""
        point, known = self._points.get(uri, (None, None))
        changes = differing(point.run.spec, spec) if point and known is criteria else None
        if point is None or changes is None or len(changes) > MOST_AT_ONCE:
            return self._whole(uri, spec, criteria)
        found = point.outcome(changes, whole=False)
        if not isinstance(found, Review):
            return self._whole(uri, spec, criteria)
        return moved(found, spec)

    def _whole(self, uri: str, spec: Spec, criteria: Criteria) -> Review:
        point = Point(spec, criteria, None, None)
        self._points[uri] = (point, criteria)
        return concluded(point.run, point.answers, None, criteria)


def _beside(seen: Seen, kind: str) -> Seen:
    """A parts file or a house file, judged by itself."""
    content = seen.text.encode("utf-8", "surrogatepass")
    if kind == "house":
        house = house_of(seen.name, content, date.today())
        return replace(seen, refusals=house) if isinstance(house, tuple) else seen
    file = parts_of(content, seen.name, load().schema)
    found = file if isinstance(file, tuple) else reviewed(file, load())
    if isinstance(found, tuple):
        return replace(seen, refusals=found)
    return replace(seen, findings=tuple(x for part in found.parts for x in part.findings))


def differing(old: Spec, new: Spec) -> dict[str, object] | None:
    """The values that differ, by path, as plain data; None where a review must begin anew.

    It need not where numbers differ that are written in the same form, or the title.
    """
    alike = (old.values.keys(), old.none, old.sections, old.lists, old.channels, old.parts)
    if alike != (new.values.keys(), new.none, new.sections, new.lists, new.channels, new.parts):
        return None
    if old.stood_in or new.stood_in:
        return None
    changes: dict[str, object] = {}
    for path, value in new.values.items():
        before = old.values[path]
        if (value, getattr(value, "text", "")) == (before, getattr(before, "text", "")):
            continue
        if "[" in path or not _in_the_same_form(new, path, before, value):
            return None
        changes[path] = _data(new, path)
    return changes


def _in_the_same_form(spec: Spec, path: str, old: Leaf, new: Leaf) -> bool:
    if isinstance(old, Value) and isinstance(new, Value):
        written = (old.form, old.sides, old.provenance)
        return written == (new.form, new.sides, new.provenance)
    return "." not in path and spec.schema.field_of(path).kind == "text"


def moved(review: Review, spec: Spec) -> Review:
    """A review with its places as they are in another text of the same structure."""

    def place(old: Place | None) -> Place | None:
        return spec.place(old.path) if old and old.path and old.file == spec.file else old

    def there(item: Finding) -> Finding:
        related = tuple(x for old in item.related if (x := place(old)))
        return replace(item, place=place(item.place), related=related)

    known = {id(item): there(item) for item in (*review.findings, *review.verdict.holding)}
    findings = tuple(known[id(item)] for item in review.findings)
    holding = tuple(known[id(item)] for item in review.verdict.holding)
    verdict = replace(review.verdict, holding=holding)
    return replace(review, spec=spec, findings=findings, verdict=verdict)


def _data(spec: Spec, path: str) -> object:
    data: object = spec.data
    for step in steps_of(path):
        data = data[step] if isinstance(data, Mapping) else None
    return data

"""Explanations that are one for whoever acts: the same value, the same stress, the same part."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field

from ..declare import Schema, local_path
from ..finding import CauseKind, Severity
from ..judging.review import Review
from ..quantities.quantity import Value
from .cover import Way
from .faults import Fault
from .suspects import Suspect
from .tried import section_of

MANY = 12
OWN_STORY = 3
SHARES_OF_A_RATING = ("1", "%")


@dataclass(slots=True, eq=False)
class Story:
    """One explanation in the making: its faults, and the changes or the value behind them.

    about: the leaves that it is about, as a channel sees them.  same: what its parts have in
    common beyond the first one: ``stress``, ``part``, ``block`` or nothing.
    """

    kind: CauseKind
    faults: list[Fault]
    about: frozenset[str]
    ways: list[Way] = field(default_factory=list)
    suspect: Suspect | None = None
    same: str = ""

    @property
    def rank(self) -> int:
        """That of its gravest fault."""
        return min(x.first.rank for x in self.faults)

    @property
    def first(self) -> Fault:
        """Its gravest fault; the doubtful value where there is one."""
        if self.suspect is not None:
            return self.suspect.doubt
        return min(self.faults, key=lambda x: (x.first.rank, x.number))

    @property
    def grave(self) -> list[Fault]:
        """Its faults that are more than minor."""
        return [x for x in self.faults if x.first.severity is not Severity.MINOR]


def gathered(stories: Iterable[Story], review: Review) -> list[Story]:
    """Stories put together, as far as one person would tell them in one breath."""
    schema = review.spec.schema
    found = _joined(list(stories), lambda x: x.about or None, "")
    found = _joined(found, lambda x: _stress(x, review), "stress")
    found = _joined(found, lambda x: _part(x, schema), "part")
    if sum(1 for x in found if x.grave) > MANY:
        found = _joined(found, _block, "block")
    return found


def seat(fault: Fault, levers: frozenset[str], review: Review) -> str:
    """Where a fault without a change sits: at the first lever that is stated, or its place."""
    leaves = {local_path(path) for path in fault.first.evidence.leaves}
    stated = sorted(levers & leaves)
    if fault.first.place is not None and fault.first.place.path:
        place = local_path(fault.first.place.path)
        return place if place in stated or not stated else stated[0]
    return stated[0] if stated else min(leaves, default="")


def _joined(stories: list[Story], key: Callable[[Story], object | None], same: str) -> list[Story]:
    """Stories with equal keys as one, in the place of the first; None stays alone."""
    found: dict[object, Story] = {}
    for story in stories:
        name = key(story)
        other = found.get(name) if name is not None else None
        if other is None:
            found[id(story) if name is None else name] = story
            continue
        if other.suspect is None and story.suspect is not None:
            other.suspect, other.kind = story.suspect, story.kind
        elif other.suspect is None and same:
            other.kind = "part"
        other.faults += story.faults
        other.about |= story.about
        other.ways += story.ways
        other.same = other.same or same
    return list(found.values())


def _stress(story: Story, review: Review) -> object | None:
    """What loads parts that are rated too low for it: leaf's unit and stress, about equal.

    Only where the figure is the load as a share of the rating that is to be raised.
    """
    fault = story.first
    found = fault.first.evidence
    rated = [item for way in story.ways for item in way.turns.items()]
    if story.suspect or len(rated) != 1 or found.figure is None:
        return None
    path, direction = rated[0]
    if direction != 1 or found.at_least or found.unit not in SHARES_OF_A_RATING:
        return None
    full = next((x for x in sorted(found.leaves) if local_path(x) == path), "")
    rating = review.spec.values.get(full)
    if not isinstance(rating, Value):
        return None
    unit = review.spec.schema.field_of(full).unit
    return unit, float(f"{found.figure * rating.nominal:.2g}")


def _part(story: Story, schema: Schema) -> str | None:
    """The component that a story is about: one section that stands for a single part."""
    sections = {section_of(path) for path in story.about}
    if story.suspect or story.same or len(sections) != 1:
        return None
    section = sections.pop()
    declared = schema.fields.get(section)
    top = "." not in section and not schema.is_channel_path(section)
    if declared is None or declared.model is None or not declared.part or top:
        return None
    holds_parts = any(x.startswith(f"{section}.") and schema.fields[x].model for x in schema.fields)
    return None if holds_parts else section


def _block(story: Story) -> str | None:
    """The block of the design in which a small story plays; None where it is one of its own.

    A promise is of the paperwork and not of a block.
    """
    blocks = {path.split(".")[0] for path in story.about if "." in path}
    own = len(story.grave) >= OWN_STORY and story.same != "part"
    promised = bool(story.ways) and all(way.lowers for way in story.ways)
    alone = story.suspect or own or promised or story.same == "stress" or not story.grave
    return None if alone or len(blocks) != 1 else blocks.pop()

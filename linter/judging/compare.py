"""Two revisions of a spec side by side: what was changed, and what it did."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal, get_args

from ..check import MILESTONES, Milestone
from ..declare import Field, Schema, field_path
from ..evaluation.answers import SILENT
from ..evaluation.threshold import closeness, further_off, has_share
from ..finding import CLEAR, Finding, Status
from ..quantities.quantity import Value
from .milestone import GATES
from .promise import is_lowered
from .review import Review, review
from .weighing import Direction, Pair, rank, weighed

MOST_MARGINS = 10
SAME = 1e-9
AMPLE = 1.0
STATED = "stated"

Effect = Literal[
    "appeared",
    "graver",
    "no longer judged",
    "opened",
    "permission lost",
    "permitted",
    "eased",
    "cured",
    "answered",
]
SILENCED: Effect = "no longer judged"
Key = tuple[str, str, str]


@dataclass(frozen=True, slots=True)
class Edit:
    """A value of the spec that is not the same: texts as written, empty for silence.

    change: of the nominal value, as a share of the old one, where both are numbers of
    which a share means something.
    """

    path: str
    meaning: str
    old: str
    new: str
    change: float | None = None


@dataclass(frozen=True, slots=True)
class ChangedAnswer:
    """An answer of another kind or severity than before; None where there was none."""

    effect: Effect
    old: Finding | None
    new: Finding | None

    @property
    def subject(self) -> Finding:
        """The newer of the two answers."""
        found = self.new or self.old
        assert found is not None
        return found


@dataclass(frozen=True, slots=True)
class Comparison:
    """All differences between two reviews.

    edits: changed values other than promises that were lowered; those are ``lowered``.
    margins: pairs of answers whose margin moved, of the checks that moved most; what lies
    above 100 % counts as 100 %.  outcome: judged by the gate; why: what decides it.
    Where the milestones differ, the answers are those of both at the stricter one.
    """

    old: Review
    new: Review
    edits: tuple[Edit, ...]
    answers: tuple[ChangedAnswer, ...]
    margins: tuple[tuple[Finding, Finding], ...]
    lowered: tuple[Edit, ...]
    outcome: Direction
    why: str


def compare(old: Review, new: Review) -> Comparison:
    """Compare two reviews of what is meant to be the same product."""
    was, now = at_one_milestone(old, new)
    before, after = _answers(was), _answers(now)
    keys = list(dict.fromkeys((*after, *before)))
    changed = [item for key in keys if (item := _changed(before.get(key), after.get(key)))]
    changed.sort(key=lambda item: (_ORDER.index(item.effect), rank(item.new), rank(item.old)))
    silent = {id(x.old) for x in changed if x.effect == SILENCED or _is_guessed(x.old, x.new)}
    guards = _guards(old) ^ _guards(new)
    pairs = [_pair(before.get(key), after.get(key), silent, guards) for key in keys]
    outcome, why = weighed(was, now, pairs)
    if old.verdict.milestone != new.verdict.milestone:
        why += (
            f"; the milestone was {old.verdict.milestone} and is {new.verdict.milestone}, both"
            f" compared at {now.verdict.milestone}"
        )
    edits: list[Edit] = []
    lowered: list[Edit] = []
    for edit, is_less in _edits(old, new):
        (lowered if is_less else edits).append(edit)
    margins = _margins(before, after)
    return Comparison(old, new, tuple(edits), tuple(changed), margins, tuple(lowered), outcome, why)


_ORDER: tuple[Effect, ...] = get_args(Effect)


def at_one_milestone(old: Review, new: Review) -> tuple[Review, Review]:
    """Two reviews as they are at the stricter milestone of the two: a milestone is no design."""
    stricter = max(old.verdict.milestone, new.verdict.milestone, key=MILESTONES.index)
    return _at(old, stricter), _at(new, stricter)


def _at(found: Review, milestone: Milestone) -> Review:
    if found.verdict.milestone == milestone:
        return found
    at = found.verdict.hold_at
    hold_at = None if at is GATES[found.verdict.milestone].hold_at else at
    return review(found.spec, milestone, hold_at, found.catalogue, found.criteria)


def _guards(found: Review) -> frozenset[str]:
    """What a spec states of its guards."""
    guards = found.spec.schema.guards
    return frozenset(path for path in found.spec.values if field_path(path) in guards)


def _pair(
    old: Finding | None, new: Finding | None, silent: set[int], guards: frozenset[str]
) -> Pair:
    unguarded = any(item and item.evidence.leaves & guards for item in (old, new))
    return Pair(old, new, old is not None and id(old) in silent, unguarded)


def _answers(review: Review) -> Mapping[Key, Finding]:
    """Answers by check, subject and, for those on stated values, their path."""
    found: dict[Key, Finding] = {}
    for item in review.findings:
        known = review.catalogue.entry(item.check) is not None
        path = "" if known or item.place is None else item.place.path
        found.setdefault((item.check, item.subject, path), item)
    return found


def _changed(old: Finding | None, new: Finding | None) -> ChangedAnswer | None:
    effect = _effect(old, new)
    return ChangedAnswer(effect, old, new) if effect else None


def _effect(old: Finding | None, new: Finding | None) -> Effect | None:
    before, after = rank(old), rank(new)
    if after < before:
        return "appeared" if before == CLEAR else "graver"
    if after == CLEAR:
        return _without_finding(old, new, before)
    if after > before:
        return "eased"
    assert old is not None
    assert new is not None
    if bool(new.permitted) == bool(old.permitted):
        return None
    return "permitted" if new.permitted else "permission lost"


def _without_finding(old: Finding | None, new: Finding | None, before: int) -> Effect | None:
    opened = new is not None and new.status is Status.OPEN
    if old is not None and new is not None and opened and _is_eased(old, new):
        return "eased"
    if before < CLEAR:
        silent = opened or (new is not None and new.message.startswith(SILENT))
        return SILENCED if silent else "cured"
    was_open = old is not None and old.status is Status.OPEN
    if opened and not was_open:
        return "opened"
    answered = was_open and new is not None and new.status is Status.MEETS
    return "answered" if answered else None


def _is_eased(old: Finding, new: Finding) -> bool:
    """Whether a finding is open now by a better figure, not for what is unstated or guessed."""
    before = {item.path for item in old.evidence.assumed}
    unstated = {x.path for x in new.evidence.assumed} | {x.path for x in new.advice.missing}
    is_silent = bool(unstated & (old.evidence.leaves - before))
    return further_off(new, old) and not _is_guessed(old, new) and not is_silent


def _is_guessed(old: Finding | None, new: Finding | None) -> bool:
    """Whether a finding is milder by what is assumed or estimated now and was not before."""
    if old is None or new is None or rank(new) <= rank(old):
        return False
    assumed, before = ({x.path for x in item.evidence.assumed} for item in (new, old))
    return bool(assumed - before)


def _margins(
    before: Mapping[Key, Finding], after: Mapping[Key, Finding]
) -> tuple[tuple[Finding, Finding], ...]:
    moved = []
    for key, new in after.items():
        old = before.get(key)
        near = None if old is None else closeness(old.evidence), closeness(new.evidence)
        if old is None or near[0] is None or near[1] is None:
            continue
        distance = abs(min(near[1], AMPLE) - min(near[0], AMPLE))
        if distance > SAME:
            moved.append((distance, (old, new)))
    moved.sort(key=lambda item: (-item[0], item[1][1].check, item[1][1].subject))
    pairs = [pair for _, pair in moved]
    checks = list(dict.fromkeys(new.check for _, new in pairs))[:MOST_MARGINS]
    return tuple((old, new) for old, new in pairs if new.check in checks)


def _edits(old: Review, new: Review) -> Iterator[tuple[Edit, bool]]:
    """Every value that is not the same, and whether it is a promise that was lowered."""
    before, after = _stated(old, new), _stated(new, old)
    for path in dict.fromkeys((*after, *before)):
        was, now = before.get(path), after.get(path)
        if was == now or (_text(was) == _text(now) and not isinstance(was, Value)):
            continue
        field = _field(new.spec.schema, path)
        share = _share(was, now) if field is None or has_share(field.unit, 1.0) else None
        edit = Edit(path, field.meaning if field else "", _text(was), _text(now), share)
        yield edit, field is not None and is_lowered(field, was, now)


def _stated(review: Review, other: Review) -> dict[str, object]:
    """What a spec states, in the order of the file; a section stated ``none`` too.

    A section that the other spec states as ``none`` counts as one, without its fields.
    """
    gone = sorted(other.spec.none)
    found: dict[str, object] = {}
    for path, value in review.spec.values.items():
        section = next((x for x in gone if path.startswith((f"{x}.", f"{x}["))), "")
        found[section or path] = STATED if section else value
    return found | dict.fromkeys(sorted(review.spec.none), "none")


def _text(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, Value):
        source = f" ({value.provenance})" if value.provenance else ""
        return f"{value.text}{source}"
    return ", ".join(map(str, value)) if isinstance(value, tuple) else str(value)


def _share(was: object, now: object) -> float | None:
    if not isinstance(was, Value) or not isinstance(now, Value) or was.nominal == 0.0:
        return None
    return (now.nominal - was.nominal) / abs(was.nominal)


def _field(schema: Schema, path: str) -> Field | None:
    try:
        return schema.field_of(path)
    except KeyError:
        return None

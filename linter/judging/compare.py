"""Two revisions of a spec side by side: what was changed, and what it did."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal, get_args

from ..declare import Schema
from ..evaluation.answers import SILENT
from ..finding import CLEAR, Finding, Status
from ..quantities.quantity import Value
from .review import Review

MOST_MARGINS = 10
SAME = 1e-9
AMPLE = 1.0

Effect = Literal[
    "appeared",
    "graver",
    "fell silent",
    "opened",
    "permission lost",
    "permitted",
    "eased",
    "cured",
    "answered",
]
WORSE: tuple[Effect, ...] = ("appeared", "graver", "fell silent")
Key = tuple[str, str, str]


@dataclass(frozen=True, slots=True)
class Edit:
    """A value of the spec that is not the same: texts as written, empty for silence.

    change: of the nominal value, as a share of the old one, where both are numbers.
    """

    path: str
    meaning: str
    old: str
    new: str
    change: float | None = None


@dataclass(frozen=True, slots=True)
class Turn:
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

    margins: pairs of answers whose margin moved, those that moved most first; what lies
    above 100 % counts as 100 %.
    """

    old: Review
    new: Review
    edits: tuple[Edit, ...]
    turns: tuple[Turn, ...]
    margins: tuple[tuple[Finding, Finding], ...]

    @property
    def worse(self) -> bool:
        """Whether there is a new or graver finding, one that fell silent, or a lost verdict.

        A finding falls silent when the spec no longer says what it was judged by.
        """
        lost = self.old.verdict.released and not self.new.verdict.released
        return lost or any(item.effect in WORSE for item in self.turns)


def compare(old: Review, new: Review) -> Comparison:
    """Compare two reviews of what is meant to be the same product."""
    before, after = _answers(old), _answers(new)
    keys = list(dict.fromkeys((*after, *before)))
    turns = [turn for key in keys if (turn := _turn(before.get(key), after.get(key)))]
    turns.sort(key=lambda item: (_ORDER.index(item.effect), _rank(item.new), _rank(item.old)))
    return Comparison(old, new, tuple(_edits(old, new)), tuple(turns), _margins(before, after))


_ORDER: tuple[Effect, ...] = get_args(Effect)


def _answers(review: Review) -> Mapping[Key, Finding]:
    """Answers by check, subject and, for those on stated values, their path."""
    found: dict[Key, Finding] = {}
    for item in review.findings:
        known = review.catalogue.entry(item.check) is not None
        path = "" if known or item.place is None else item.place.path
        found.setdefault((item.check, item.subject, path), item)
    return found


def _turn(old: Finding | None, new: Finding | None) -> Turn | None:
    effect = _effect(old, new)
    return Turn(effect, old, new) if effect else None


def _effect(old: Finding | None, new: Finding | None) -> Effect | None:
    before, after = _rank(old), _rank(new)
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
    if before < CLEAR:
        silent = opened or (new is not None and new.message == SILENT)
        return "fell silent" if silent else "cured"
    was_open = old is not None and old.status is Status.OPEN
    if opened and not was_open:
        return "opened"
    answered = was_open and new is not None and new.status is Status.MEETS
    return "answered" if answered else None


def _rank(item: Finding | None) -> int:
    return CLEAR if item is None else item.rank


def _margins(
    before: Mapping[Key, Finding], after: Mapping[Key, Finding]
) -> tuple[tuple[Finding, Finding], ...]:
    moved = []
    for key, new in after.items():
        old = before.get(key)
        if old is None or old.margin is None or new.margin is None:
            continue
        distance = abs(min(new.margin, AMPLE) - min(old.margin, AMPLE))
        if distance > SAME:
            moved.append((distance, (old, new)))
    moved.sort(key=lambda item: (-item[0], item[1][1].check, item[1][1].subject))
    return tuple(pair for _, pair in moved[:MOST_MARGINS])


def _edits(old: Review, new: Review) -> Iterator[Edit]:
    before, after = _stated(old), _stated(new)
    for path in dict.fromkeys((*after, *before)):
        was, now = before.get(path), after.get(path)
        if was == now or (_text(was) == _text(now) and not isinstance(was, Value)):
            continue
        meaning = _meaning(new.spec.schema, path)
        yield Edit(path, meaning, _text(was), _text(now), _share(was, now))


def _stated(review: Review) -> dict[str, object]:
    """What a spec states, in the order of the file; a section stated ``none`` too."""
    stated: dict[str, object] = dict(review.spec.values)
    return stated | dict.fromkeys(sorted(review.spec.none), "none")


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


def _meaning(schema: Schema, path: str) -> str:
    try:
        return schema.field_of(path).meaning
    except KeyError:
        return ""

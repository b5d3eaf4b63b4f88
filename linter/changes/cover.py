"""The fewest changes that end the most faults, taken one after the other.

First single changes, then those of several leaves together, all of them proven; what no proven
change ends is tried with the values that its check alone would ask for.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from ..declare import field_path, local_path
from ..finding import CLEAR, Remedy, Severity
from ..judging.review import Review
from ..quantities.quantity import Value
from .faults import Fault
from .rerun import in_text
from .trial import GONE, Trials

MOSTLY = 0.5
SOMEWHAT = 0.1
OF_A_PROMISE = 0.5
MOST_TRIALS = 40

Key = tuple[tuple[str, int], ...]


@dataclass(slots=True)
class Way:
    """One change, whatever the value that each finding asks of it.

    key: its leaves as a channel sees them, each with the direction in which it goes.
    ends, eases, spoils: the faults.  changes: the values, where no remedy holds them.
    contradicts: whether it then disagrees with another stated value.
    """

    key: Key
    lowers: bool
    remedies: list[Remedy] = field(default_factory=list)
    changes: Mapping[str, object] = field(default_factory=dict)
    ends: set[Fault] = field(default_factory=set)
    eases: set[Fault] = field(default_factory=set)
    spoils: set[Fault] = field(default_factory=set)
    contradicts: bool = False

    @property
    def leaves(self) -> frozenset[str]:
        """The leaves that it changes, as a channel sees them."""
        return frozenset(path for path, _ in self.key)

    def score(self, left: set[Fault]) -> float:
        """How much of what is left it ends, half where it only eases or lowers a promise.

        What it makes worse counts against it.
        """
        ended = sum(x.weight for x in self.ends & left)
        eased = sum(x.weight for x in (self.eases - self.ends) & left if not x.has_cure)
        spoilt = sum(x.weight for x in self.spoils)
        return (ended + eased / 2) * (OF_A_PROMISE if self.lowers else 1.0) - spoilt

    def concerns(self) -> int:
        """How much the mildest of its remedies brings up, spoils or leaves open."""
        return min((_concerns(x) for x in self.remedies), default=0)


def chosen(faults: Collection[Fault], trials: Trials) -> Iterator[tuple[Way, list[Fault]]]:
    """Ways and the faults that each explains; a fault that none ends is left out."""
    left = set(faults)
    ways = proven(faults, trials.review)
    taken: list[tuple[Way, set[Fault]]] = []
    for most in (1, CLEAR + len(left)):
        few = [way for way in ways if len(way.key) <= most]
        while (best := _best(few, left)) is not None:
            ended = (best.ends | {x for x in best.eases if not x.has_cure}) & left
            left -= ended
            taken.append((best, ended))
    for way, more in _hangers_on(taken, left, trials):
        next(found for other, found in taken if other is way).update(more)
        left -= more
    for way in _unproven(left, trials):
        ended = (way.ends | way.eases) & left
        left -= ended
        taken.append((way, ended))
    for way, found in taken:
        yield way, sorted(found, key=lambda x: x.number)


def proven(faults: Iterable[Fault], review: Review) -> list[Way]:
    """The changes that the findings themselves propose, one for each set of leaves."""
    faults = sorted(faults, key=lambda x: x.number)
    named: dict[str, list[Fault]] = {}
    for fault in faults:
        for label in fault.labels:
            named.setdefault(label, []).append(fault)
    found: dict[Key, Way] = {}
    for fault in faults:
        for remedy in (x for item in fault.findings for x in item.advice.remedies):
            values = dict(remedy.values or remedy.changes)
            key = key_of(values, review)
            way = found.setdefault(key, Way(key, lowers(values, review)))
            if remedy.changes not in [x.changes for x in way.remedies]:
                way.remedies.append(remedy)
            way.ends |= {fault, *_sure(named, remedy.cured)}
            way.eases |= _sure(named, remedy.eased)
    return list(found.values())


def key_of(values: Mapping[str, object], review: Review) -> Key:
    """The leaves of a change with their directions: 1 for more, -1 for less, 0 for a word."""
    key = {local_path(path): _direction(path, value, review) for path, value in values.items()}
    return tuple(sorted(key.items()))


def lowers(values: Mapping[str, object], review: Review) -> bool:
    """Whether a change touches what the paperwork promises."""
    schema = review.spec.schema
    fields = [field_path(path) for path in values]
    return any(schema.fields[path].promise or path in schema.voluntary for path in fields)


def _direction(path: str, value: object, review: Review) -> int:
    before = review.spec.values.get(path)
    loaded = review.spec.with_values({path: value}) if isinstance(before, Value) else None
    after = loaded.spec.values.get(path) if loaded and loaded.spec else None
    if not isinstance(before, Value) or not isinstance(after, Value):
        return 0
    moved = (after.lo - before.lo) + (after.hi - before.hi)
    return (moved > 0.0) - (moved < 0.0)


def _sure(named: Mapping[str, list[Fault]], labels: Iterable[str]) -> set[Fault]:
    """The faults behind labels; a label that stands for two faults tells nothing."""
    found = (named.get(label, []) for label in labels)
    return {faults[0] for faults in found if len(faults) == 1}


def _concerns(remedy: Remedy) -> int:
    return len(remedy.appeared) + len(remedy.opened) + len(remedy.worsened)


def _best(ways: list[Way], left: set[Fault]) -> Way | None:
    """What ends the most of what is left; of equals the mildest, then the first proposed."""
    useful = [way for way in ways if way.ends & left]
    order = {way.key: number for number, way in enumerate(ways)}
    return min(
        useful,
        key=lambda way: (
            -way.score(left),
            min(x.number for x in way.ends & left),
            way.concerns(),
            order[way.key],
        ),
        default=None,
    )


def _hangers_on(
    taken: list[tuple[Way, set[Fault]]], left: set[Fault], trials: Trials
) -> list[tuple[Way, set[Fault]]]:
    """Faults without a cure of their own that shrink most with a change already chosen."""
    without = [x for x in sorted(left, key=lambda x: x.number) if not x.has_cure]
    most: dict[Fault, tuple[float, Way]] = {}
    for way, _ in taken:
        remedy = way.remedies[0]
        outcome = trials.outcome(trials.everywhere(dict(remedy.values)), without)
        for fault, share in outcome.shares.items():
            if share >= MOSTLY and share > most.get(fault, (0.0, way))[0]:
                most[fault] = share, way
    return [(way, {x for x, (_, by) in most.items() if by is way}) for way, _ in taken]


def _unproven(left: set[Fault], trials: Trials) -> Iterator[Way]:
    """What the gravest faults without a proven change would take, and what hangs on it."""
    waiting = sorted(left, key=lambda x: x.number)
    budget = MOST_TRIALS
    while waiting and waiting[0].first.severity is not Severity.MINOR and budget > 0:
        fault = waiting[0]
        ways = [_tried(fault, *item, waiting, trials) for item in trials.solutions(fault)]
        budget -= len(ways)
        best = max(
            ways, key=lambda way: (not way.contradicts, way.score(set(waiting))), default=None
        )
        if best is not None:
            yield best
        explained = {fault} | (best.ends | best.eases if best else set())
        waiting = [x for x in waiting if x not in explained]


def _tried(fault: Fault, path: str, value: object, faults: list[Fault], trials: Trials) -> Way:
    """A change that one fault asks for, and what else is gone or much milder with it.

    Of a fault whose own check would change the same part, any good step belongs to it.
    """
    changes = trials.everywhere({path: value})
    way = Way(key_of(changes, trials.review), lowers(changes, trials.review), changes=changes)
    part = local_path(path).rpartition(".")[0]
    outcome = trials.outcome(changes, faults)
    way.contradicts = outcome.contradicts
    for x, share in outcome.shares.items():
        same_part = part in {lever.rpartition(".")[0] for lever in trials.levers(x)}
        if share >= GONE:
            way.ends.add(x)
        elif share >= (SOMEWHAT if part and same_part else MOSTLY):
            way.eases.add(x)
        elif share <= -SOMEWHAT:
            way.spoils.add(x)
    way.ends.add(fault)
    return way


def told(way: Way) -> str:
    """A change in words, for what no remedy tells."""
    moves = dict.fromkeys((local_path(path), in_text(x)) for path, x in way.changes.items())
    return " and ".join(f"{path} to {text}" for path, text in moves)

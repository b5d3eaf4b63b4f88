"""The fewest changes that end the most faults, taken one after the other.

First single changes, then those of several leaves together, all of them proven; what no proven
change ends is tried with the values that its check alone would ask for.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from ..declare import local_path
from ..finding import CLEAR, Remedy
from ..judging.review import Review
from ..quantities.quantity import Value
from .faults import Fault
from .trial import MOSTLY, Trials
from .tried import OF_A_PROMISE, Tried, lowers, tried

Key = tuple[tuple[str, int], ...]


@dataclass(slots=True)
class Offer:
    """A proven remedy and the labels of all that it meets, whoever proposes it."""

    remedy: Remedy
    meets: set[str]


@dataclass(slots=True)
class Way:
    """One change, whatever the value that each finding asks of it.

    key: its leaves as a channel sees them, each with the direction in which it goes.
    ends, eases, spoils: the faults.  tried: the values, where no remedy holds them.
    """

    key: Key
    lowers: bool
    offers: list[Offer] = field(default_factory=list)
    tried: tuple[Tried, ...] = ()
    ends: set[Fault] = field(default_factory=set)
    eases: set[Fault] = field(default_factory=set)
    spoils: set[Fault] = field(default_factory=set)

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

    def cost(self) -> int:
        """How much the mildest of its remedies brings up, spoils or leaves open."""
        return min((concerns(x.remedy) for x in self.offers), default=0)


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
    for fault, found in tried(left, trials):
        way = _of_trials(found, trials.review)
        ended = {fault} | (way.ends | way.eases) & left
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
            _offer(way, remedy).meets |= {*remedy.cured, *_proposing(fault, remedy)}
            way.ends |= {fault, *_sure(named, remedy.cured)}
            way.eases |= _sure(named, remedy.eased)
    return list(found.values())


def _offer(way: Way, remedy: Remedy) -> Offer:
    """The offer of a way with the changes of a remedy; of the same changes there is one."""
    for offer in way.offers:
        if offer.remedy.changes == remedy.changes:
            return offer
    way.offers.append(Offer(remedy, set()))
    return way.offers[-1]


def _proposing(fault: Fault, remedy: Remedy) -> Iterator[str]:
    """The findings that propose a remedy themselves, as labels."""
    for item in fault.findings:
        if remedy in item.advice.remedies:
            yield f"{item.check} ({item.subject})"


def key_of(values: Mapping[str, object], review: Review) -> Key:
    """The leaves of a change with their directions: 1 for more, -1 for less, 0 for a word."""
    key = {local_path(path): _direction(path, value, review) for path, value in values.items()}
    return tuple(sorted(key.items()))


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


def concerns(remedy: Remedy) -> int:
    """How much a remedy brings up, spoils or leaves open."""
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
            way.cost(),
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
        remedy = way.offers[0].remedy
        outcome = trials.outcome(trials.everywhere(dict(remedy.values)), without)
        for fault, share in outcome.shares.items():
            if share >= MOSTLY and share > most.get(fault, (0.0, way))[0]:
                most[fault] = share, way
    return [(way, {x for x, (_, by) in most.items() if by is way}) for way, _ in taken]


def _of_trials(found: tuple[Tried, ...], review: Review) -> Way:
    """The trials of one part as one way."""
    keys = {item for trial in found for item in key_of(trial.changes, review)}
    way = Way(tuple(sorted(keys)), bool(found) and all(x.lowers for x in found), tried=found)
    for trial in found:
        way.ends |= trial.ends
        way.eases |= trial.eases
    return way

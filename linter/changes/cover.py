"""The fewest changes that end the most faults, taken one after the other.

First single changes, then those of several leaves together, all of them proven; what no proven
change ends is tried with the values that its check alone would ask for.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from ..declare import local_path
from ..design_change import DesignChange
from ..finding import Remedy
from ..judging.review import Review
from ..quantities.quantity import Value
from .faults import Fault
from .trial import MOSTLY, Trials
from .tried import OF_A_PROMISE, Tried, lowers, tried

Turns = Mapping[str, int]


@dataclass(slots=True)
class Offer:
    """A proven remedy and the labels of all that it meets, whoever proposes it."""

    remedy: Remedy
    meets: set[str]


@dataclass(slots=True)
class Way:
    """One change, whatever the value that each finding asks of it.

    turns: the leaves by which the checks themselves would cure what it ends, as a channel
    sees them, each with its direction: 1 for more, -1 for less, 0 for a word.  What has to
    go along with them does not count.  lowers: whether the paperwork promises less with it.
    ends: the faults, by a remedy that brings up no other; may_end: by any remedy.
    tried: the values, where no remedy holds them.
    """

    turns: Turns
    lowers: bool = False
    offers: list[Offer] = field(default_factory=list)
    tried: tuple[Tried, ...] = ()
    ends: set[Fault] = field(default_factory=set)
    may_end: set[Fault] = field(default_factory=set)
    eases: set[Fault] = field(default_factory=set)

    def explains(self, left: set[Fault], surely: bool) -> set[Fault]:
        """What it ends of what is left, and what it eases that nothing else ends."""
        ended = self.ends if surely else self.may_end
        return (ended | {x for x in self.eases if not x.has_cure}) & left

    def score(self, left: set[Fault], surely: bool) -> float:
        """How much of what is left it ends; half where it only eases or lowers a promise."""
        ended = (self.ends if surely else self.may_end) & left
        gained = sum(x.weight for x in ended)
        gained += sum(x.weight for x in self.explains(left, surely) - ended) / 2
        return gained * (OF_A_PROMISE if self.lowers else 1.0)

    def cost(self) -> int:
        """How much the mildest of its remedies brings up, spoils or leaves open."""
        return min((concerns(x.remedy) for x in self.offers), default=0)


def chosen(faults: Collection[Fault], trials: Trials) -> Iterator[tuple[Way, list[Fault]]]:
    """Ways and the faults that each explains; a fault that none ends is left out."""
    left = set(faults)
    ways = proven(faults, trials)
    taken: list[tuple[Way, set[Fault]]] = []
    for surely in (True, False):
        for most in (1, len(trials.review.spec.values)):
            few = [way for way in ways if len(way.turns) <= most]
            while (best := _best(few, left, surely)) is not None:
                taken.append((best, best.explains(left, surely)))
                left -= taken[-1][1]
    for number, more in _hangers_on(taken, left, trials).items():
        taken[number][1].update(more)
        left -= more
    for fault, found in tried(left, trials):
        way = _of_trials(found, trials.review)
        ended = {fault} | (way.ends | way.eases) & left
        left -= ended
        taken.append((way, ended))
    for way, explained in _joined(taken):
        yield way, sorted(explained, key=lambda x: x.number)


def _joined(taken: list[tuple[Way, set[Fault]]]) -> list[tuple[Way, set[Fault]]]:
    """Ways of which one turns all that the other turns, and more, as one."""
    wide = sorted(taken, key=lambda item: -len(item[0].turns))
    found: list[tuple[Way, set[Fault]]] = []
    for way, explained in wide:
        host = next(
            (x for x in found if way.turns and way.turns.items() < x[0].turns.items()), None
        )
        if host is None:
            found.append((way, explained))
        else:
            host[1].update(explained)
    return sorted(found, key=lambda item: min(x.number for x in item[1]))


def proven(faults: Iterable[Fault], trials: Trials) -> list[Way]:
    """The changes that the findings themselves propose, one for each set of leaves."""
    faults = sorted(faults, key=lambda x: x.number)
    named: dict[str, list[Fault]] = {}
    for fault in faults:
        for label in fault.labels:
            named.setdefault(label, []).append(fault)
    found: dict[object, Way] = {}
    for fault in faults:
        for remedy in (x for item in fault.findings for x in item.advice.remedies):
            if not _is_meant_for(remedy, fault, trials):
                continue
            levers = trials.levers(fault)
            own = {path: x for path, x in remedy.values if local_path(path) in levers}
            turns = _turns(own or dict(remedy.values), trials.review)
            less = lowers(dict(remedy.values), trials.review)
            whole = [x for x in _designs(remedy, trials.review) if not x.moves]
            key = whole[0].title if whole else tuple(sorted(turns.items()))
            way = found.setdefault(key, Way(turns, less))
            _offer(way, remedy).meets |= {*remedy.cured, *_proposing(fault, remedy)}
            cured = _sure(named, set(remedy.cured) - set(remedy.aside))
            ended = {fault, *(x for x in cured if _is_meant_for(remedy, x, trials))}
            way.may_end |= ended
            way.ends |= ended if not remedy.appeared else set()
            eased = _sure(named, set(remedy.eased) - set(remedy.aside))
            way.eases |= {x for x in eased if _is_meant_for(remedy, x, trials)}
    return list(found.values())


def _designs(remedy: Remedy, review: Review) -> list[DesignChange]:
    """The changes of the design that a remedy makes."""
    known = review.catalogue.changes if remedy.title else ()
    return [change for change in known if change.title in remedy.title]


def _is_meant_for(remedy: Remedy, fault: Fault, trials: Trials) -> bool:
    """Whether a change of the design is made for a fault, and does not only happen to end it."""
    changes = _designs(remedy, trials.review)
    if not changes or any(fault.first.check in change.helps for change in changes):
        return True
    moved = {path for change in changes for path in change.moves}
    return not moved.isdisjoint(trials.levers(fault))


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


def _turns(values: Mapping[str, object], review: Review) -> Turns:
    """The leaves of a change with their directions."""
    return {local_path(path): _direction(path, value, review) for path, value in values.items()}


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


def _best(ways: list[Way], left: set[Fault], surely: bool) -> Way | None:
    """What ends the most of what is left; of equals the mildest, then the first proposed."""
    ended = [((way.ends if surely else way.may_end) & left, way) for way in ways]
    ranked = [
        (-way.score(left, surely), min(x.number for x in faults), way.cost(), number)
        for number, (faults, way) in enumerate(ended)
        if faults
    ]
    return ways[min(ranked)[-1]] if ranked else None


def _hangers_on(
    taken: list[tuple[Way, set[Fault]]], left: set[Fault], trials: Trials
) -> dict[int, set[Fault]]:
    """Faults without a cure of their own, by the change already chosen that eases them most."""
    without = [x for x in sorted(left, key=lambda x: x.number) if not x.has_cure]
    most: dict[Fault, tuple[float, int]] = {}
    for number, (way, _) in enumerate(taken):
        remedy = way.offers[0].remedy
        meant = [x for x in without if _is_meant_for(remedy, x, trials)]
        outcome = trials.outcome(trials.everywhere(dict(remedy.values)), meant)
        for fault, share in outcome.shares.items():
            if share >= MOSTLY and share > most.get(fault, (0.0, 0))[0]:
                most[fault] = share, number
    found: dict[int, set[Fault]] = {}
    for fault, (_, number) in most.items():
        found.setdefault(number, set()).add(fault)
    return found


def _of_trials(found: tuple[Tried, ...], review: Review) -> Way:
    """The trials of one part as one way."""
    turns = {x: turn for trial in found for x, turn in _turns(trial.changes, review).items()}
    less = bool(found) and all(x.lowers for x in found)
    way = Way(turns, less, tried=found)
    for trial in found:
        way.ends |= trial.ends
        way.eases |= trial.eases
    return way

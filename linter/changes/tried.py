"""What no proven change ends: the values that its check asks for, tried on all that is left.

A part that is too small shows in many checks, and each asks for another size of it; so the
trials of one part count together.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from ..declare import field_path, local_path
from ..finding import Severity
from ..judging.review import Review
from .effect import in_text
from .faults import Fault
from .trial import GONE, MOSTLY, Trials

SOMEWHAT = 0.1
OF_A_PROMISE = 0.5
MOST_TRIALS = 40
MOST_SIZES = 4
SEVERAL = 2


@dataclass(frozen=True, slots=True)
class Tried:
    """One value tried, and the faults that it ends, eases or makes worse.

    contradicts: whether it then disagrees with another stated value.  lowers: whether the
    paperwork promises less with it.
    """

    path: str
    changes: Mapping[str, object]
    ends: frozenset[Fault]
    eases: frozenset[Fault]
    spoils: frozenset[Fault]
    contradicts: bool
    lowers: bool

    @property
    def part(self) -> str:
        """The section of the leaf; a leaf without one stands for itself."""
        return section_of(self.path)

    def in_words(self) -> str:
        """The change as a reader would write it."""
        return f"{local_path(self.path)} to {in_text(self.changes[self.path])}"


def section_of(path: str) -> str:
    """The section of a leaf as a channel sees it; a leaf without one stands for itself."""
    return local_path(path).rpartition(".")[0] or local_path(path)


def lowers(values: Iterable[str], review: Review) -> bool:
    """Whether a change touches what the paperwork promises."""
    schema = review.spec.schema
    fields = [field_path(path) for path in values]
    return any(schema.fields[path].promise or path in schema.voluntary for path in fields)


def tried(left: Iterable[Fault], trials: Trials) -> Iterator[tuple[Fault, tuple[Tried, ...]]]:
    """Each fault that is left, the gravest first, with the trials of the part it hangs on.

    What hangs on the same part is not asked again.  Minor faults get no trials of their own.
    """
    waiting = sorted(left, key=lambda x: x.number)
    budget = MOST_TRIALS
    while waiting and waiting[0].first.severity is not Severity.MINOR and budget > 0:
        fault = waiting[0]
        found = [_try(*item, waiting, trials) for item in trials.solutions(fault)]
        budget -= max(len(found), 1)
        found = [item for item in found if fault in item.ends | item.eases]
        best = _best_part(found, trials)
        grown = [_grown(item, waiting, trials) for item in best]
        yield fault, tuple(grown)
        gone = {fault}.union(*(item.ends | item.eases for item in grown))
        waiting = [x for x in waiting if x not in gone]


def _best_part(found: list[Tried], trials: Trials) -> list[Tried]:
    """The trials of the part that explains most, the least harm to other checks done.

    Those without a contradiction come first.
    """
    parts: dict[tuple[str, bool], list[Tried]] = {}
    for item in found:
        parts.setdefault((item.part, item.contradicts), []).append(item)
    if len(parts) < SEVERAL:
        return found
    gains = {
        key: _score(items) - min(trials.harm(item.changes) for item in items)
        for key, items in parts.items()
    }
    return parts[min(parts, key=lambda key: (key[1], -gains[key]))]


def _score(items: list[Tried]) -> float:
    """How much the trials of one part explain; half where they only ease or lower a promise."""
    ends = frozenset[Fault]().union(*(item.ends for item in items))
    eases = frozenset[Fault]().union(*(item.eases for item in items)) - ends
    spoils = frozenset[Fault]().union(*(item.spoils for item in items)) - ends
    share = OF_A_PROMISE if all(item.lowers for item in items) else 1.0
    gained = sum(x.weight for x in ends) + sum(x.weight for x in eases) / 2
    return gained * share - sum(x.weight for x in spoils)


def _grown(item: Tried, waiting: list[Fault], trials: Trials) -> Tried:
    """The same with the value that the most demanding of what it eases would ask for."""
    sizes = [
        (path, value)
        for fault in sorted(item.eases, key=lambda x: x.number)[:MOST_SIZES]
        for path, value in trials.solutions(fault)
        if path == item.path
    ]
    if not item.eases or not sizes:
        return item
    larger = [_try(path, value, waiting, trials) for path, value in sizes]
    return max([item, *larger], key=lambda x: (not x.contradicts, _score([x])))


def _try(path: str, value: object, faults: list[Fault], trials: Trials) -> Tried:
    """A change that one fault asks for, and what is gone or much milder with it.

    Of a fault whose own check would change the same part, any good step belongs to it.
    """
    changes = trials.everywhere({path: value})
    outcome = trials.outcome(changes, faults)
    ends: set[Fault] = set()
    eases: set[Fault] = set()
    spoils: set[Fault] = set()
    for x, share in outcome.shares.items():
        same_part = section_of(path) in {section_of(lever) for lever in trials.levers(x)}
        if share >= GONE:
            ends.add(x)
        elif share >= (SOMEWHAT if same_part else MOSTLY):
            eases.add(x)
        elif share <= -SOMEWHAT:
            spoils.add(x)
    lowered = lowers(changes, trials.review)
    found = (frozenset(ends), frozenset(eases), frozenset(spoils))
    return Tried(path, changes, *found, outcome.contradicts, lowered)

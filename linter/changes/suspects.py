"""Stated values that are doubtful in themselves, and what hangs on each of them."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from ..finding import Severity
from .faults import Fault
from .rerun import CONTRADICTS
from .trial import GONE, MOSTLY, Trials


@dataclass(frozen=True, slots=True)
class Suspect:
    """A doubtful value, and the faults that it explains, itself first.

    path: of the value.  right: what it should be, None where only the drawing can tell.
    """

    doubt: Fault
    path: str
    right: object
    explains: tuple[Fault, ...]


def suspects(faults: Iterable[Fault], trials: Trials) -> Iterator[Suspect]:
    """The suspects among faults, slips first; what a slip explains is no suspect itself.

    A value beyond its usual range without a likely slip is no suspect: it is merely unusual.
    """
    left = list(faults)
    doubts = [x for x in left if x.is_doubt and x.first.severity is not Severity.MINOR]
    for doubt in sorted(doubts, key=lambda x: (x.first.check == CONTRADICTS, x.number)):
        if doubt in left and doubt.first.place is not None:
            found = _suspect(doubt, doubt.first.place.path, left, trials)
            left = [x for x in left if x not in found.explains]
            yield found


def _suspect(doubt: Fault, path: str, left: list[Fault], trials: Trials) -> Suspect:
    """What goes with a value once it is put right; once it is unknown, where no one can say."""
    right = doubt.first.advice.follows
    if doubt.first.check == CONTRADICTS and not doubt.has_cure:
        right = None
    others = [x for x in left if x is not doubt]
    outcome = trials.outcome(trials.everywhere({path: right}), others)
    least = MOSTLY if right is not None else GONE
    found = [
        x
        for x, share in outcome.shares.items()
        if share >= least and (right is not None or not x.has_cure)
    ]
    return Suspect(doubt, path, right, (doubt, *sorted(found, key=lambda x: x.number)))

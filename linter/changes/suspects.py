"""Stated values that are doubtful in themselves, and what hangs on each of them."""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass

from ..finding import Severity
from .faults import Fault
from .rerun import CONTRADICTS
from .trial import GONE, MOSTLY, Trials

MUCH = 5


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

    A value that is merely unusual is a suspect only where very much hangs on it.
    """
    left = list(faults)
    doubts = [x for x in left if x.is_doubt and x.first.place is not None]
    for doubt in sorted(doubts, key=_trust):
        place = doubt.first.place
        if doubt not in left or place is None or not _worth_a_trial(doubt, place.path, left):
            continue
        found = _suspect(doubt, place.path, left, trials)
        if found.doubt.first.severity is Severity.MINOR and not _much_hangs(found.explains):
            continue
        left = [x for x in left if x not in found.explains]
        yield found


def _trust(doubt: Fault) -> tuple[bool, bool, int]:
    """Slips before contradictions, and what is merely unusual last."""
    minor = doubt.first.severity is Severity.MINOR
    return minor, doubt.first.check == CONTRADICTS, doubt.number


def _worth_a_trial(doubt: Fault, path: str, left: list[Fault]) -> bool:
    """Whether much can hang on a value that is merely unusual; a graver doubt always is."""
    if doubt.first.severity is not Severity.MINOR:
        return True
    return _much_hangs([x for x in left if path in x.first.evidence.leaves])


def _much_hangs(faults: Collection[Fault]) -> bool:
    return sum(1 for x in faults if x.first.severity is not Severity.MINOR) >= MUCH


def _suspect(doubt: Fault, path: str, left: list[Fault], trials: Trials) -> Suspect:
    """What goes with a value once it is put right; once it is unknown, where no one can say."""
    right = doubt.first.advice.follows
    if doubt.first.check == CONTRADICTS and not doubt.has_cure:
        right = None
    minor = doubt.first.severity is Severity.MINOR
    others = [x for x in left if x is not doubt]
    outcome = trials.outcome(trials.everywhere({path: right}), others)
    least = MOSTLY if right is not None else GONE
    found = [
        x
        for x, share in outcome.shares.items()
        if share >= least and (right is not None or minor or not x.has_cure)
    ]
    return Suspect(doubt, path, right, (doubt, *sorted(found, key=lambda x: x.number)))

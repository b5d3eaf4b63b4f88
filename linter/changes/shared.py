"""One change in place of two: the same leaf turned further ends what both were made for.

A second string of cells for the run time and a lower trip for the one string are one string too
few, where three of them end both.
"""

from collections.abc import Iterable
from dataclasses import replace

from ..declare import local_path
from .cover import Offer, Way
from .faults import Fault
from .trial import Trials

MOST_PROOFS = 3

Explained = tuple[Way, list[Fault]]


def shared(ways: Iterable[Explained], trials: Trials) -> list[Explained]:
    """The ways with what each explains; one goes where another ends all of it, turned further."""
    found, proofs = list(ways), 0
    for way, faults in list(found):
        for place, (host, others) in enumerate(found):
            if proofs == MOST_PROOFS or host is way or not _can_host(host, faults, trials):
                continue
            proofs += 1
            offer = _further(host, faults, others, trials)
            if offer is not None:
                wider = replace(host, offers=[offer], ends=host.ends.union(faults))
                found[place] = (wider, sorted([*others, *faults], key=lambda x: x.number))
                found = [x for x in found if x[0] is not way]
                break
    return sorted(found, key=lambda item: item[1][0].number)


def _can_host(host: Way, faults: list[Fault], trials: Trials) -> bool:
    """Whether a way turns one leaf that is a lever of all these faults too, and no promise."""
    if len(host.turns) != 1 or host.lowers or not host.offers:
        return False
    (path,) = host.turns
    return all(path in trials.levers(x) for x in faults) and not host.may_end.issuperset(faults)


def _further(host: Way, faults: list[Fault], others: list[Fault], trials: Trials) -> Offer | None:
    """The leaf of a way turned as far as the gravest of further faults asks, if that ends all."""
    gravest = min(faults, key=lambda x: x.number)
    (leaf,) = host.turns
    for path, value in trials.solutions(gravest):
        if local_path(path) != leaf:
            continue
        remedy = trials.advisor.prove(gravest.first, trials.everywhere({path: value}))
        if remedy is None or remedy.appeared:
            continue
        meets = {*remedy.cured, *gravest.labels}
        if all(x.labels <= meets for x in (*faults, *others)):
            first = host.offers[0].remedy
            return Offer(replace(remedy, kind=first.kind, title=first.title), meets)
    return None

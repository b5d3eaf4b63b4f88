"""Two changes of one range, each narrowing another end, as one change that is proven."""

from itertools import combinations

from ..finding import Finding, Remedy
from ..quantities.quantity import Value, spell
from .cover import Offer
from .faults import Fault
from .trial import Trials


def combined(offers: list[Offer], faults: list[Fault], trials: Trials) -> list[Offer]:
    """The offers, those that narrow the same range as one where it meets what both met."""
    for one, other in combinations(offers, 2):
        both = _both(one, other, faults, trials)
        if both is not None:
            rest = [x for x in offers if x is not one and x is not other]
            return combined([*rest, both], faults, trials)
    return offers


def _both(one: Offer, other: Offer, faults: list[Fault], trials: Trials) -> Offer | None:
    path = _only(one.remedy)
    if not path or path != _only(other.remedy):
        return None
    first, second = (_stated(path, x.remedy, trials) for x in (one, other))
    if first is None or second is None:
        return None
    low, high = max(first.lo, second.lo), min(first.hi, second.hi)
    finding = _about(one, faults)
    if low >= high or finding is None:
        return None
    unit = trials.review.spec.schema.field_of(path).unit
    text = spell(Value(low, (low + high) / 2, high, "range"), unit)
    remedy = trials.advisor.prove(finding, {path: text})
    meets = {*remedy.cured, f"{finding.check} ({finding.subject})"} if remedy else set()
    wanted = one.meets | other.meets
    return Offer(remedy, meets) if remedy and wanted <= meets else None


def _only(remedy: Remedy) -> str:
    """The one leaf that a remedy changes; nothing where there are several."""
    return remedy.changes[0][0] if len(remedy.changes) == 1 else ""


def _stated(path: str, remedy: Remedy, trials: Trials) -> Value | None:
    """The range that a remedy states; None where it states something else."""
    loaded = trials.review.spec.with_values(dict(remedy.values))
    value = loaded.spec.values.get(path) if loaded.spec else None
    return value if isinstance(value, Value) and value.form == "range" else None


def _about(offer: Offer, faults: list[Fault]) -> Finding | None:
    """A finding that an offer meets."""
    items = (item for fault in faults for item in fault.findings)
    return next((x for x in items if f"{x.check} ({x.subject})" in offer.meets), None)

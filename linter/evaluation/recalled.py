"""What a check holds from memory or as others quote it: thresholds, and constants as much."""

from collections.abc import Iterator
from dataclasses import dataclass

from ..check import Check, Constant, Source
from ..finding import Severity

UNSEEN = ("from memory", "quoted")


@dataclass(frozen=True, slots=True)
class Recalled:
    """A threshold, by its severity, or a constant, by its name, of which nobody saw the source.

    grave: whether a finding by it can hold a design.
    """

    name: str
    value: str
    source: Source
    grave: bool


def recalled(check: Check) -> tuple[Recalled, ...]:
    """The thresholds and constants of a check that rest on memory or on a quotation."""
    return tuple(item for item in _numbers(check) if item.source.kind in UNSEEN)


def unverified(check: Check) -> tuple[Recalled, ...]:
    """Those from memory of a check of safety on which a hold can hang: each is to be looked up."""
    if check.stake != "safety":
        return ()
    return tuple(x for x in recalled(check) if x.grave and x.source.kind == "from memory")


def _numbers(check: Check) -> Iterator[Recalled]:
    limits = check.limits
    for severity in Severity:
        text = getattr(limits, severity.value)
        if text is not None:
            grave = severity is not Severity.MINOR
            yield Recalled(severity.value, text, limits.basis[severity.value], grave)
    for name, item in check.inputs.items():
        if isinstance(item, Constant):
            grave = limits.critical is not None or limits.major is not None
            yield Recalled(name, item.value, item.basis, grave)

"""What a check holds from memory or as others quote it: thresholds, and constants as much."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from ..check import AtLeast, AtMost, Check, Constant, Source
from ..finding import Severity
from .threshold import has_share, limit_of

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
    """Those of a check of safety on which a hold can hang: each is to be looked up."""
    return tuple(x for x in recalled(check) if x.grave) if check.stake == "safety" else ()


def in_doubt(check: Check, figure: float | None) -> tuple[Recalled, ...]:
    """Those that an answer hangs on: a figure of nothing at all exceeds no limit."""
    return tuple(x for x in unverified(check) if figure != 0.0 or not _exceeds_nothing(check, x))


def known_how(items: Iterable[Recalled]) -> str:
    """How numbers are known of which nobody saw the source: the weaker word for several."""
    kinds = {item.source.kind for item in items}
    return "from memory" if "from memory" in kinds else "as quoted elsewhere"


def is_yes_or_no(check: Check, name: str) -> bool:
    """Whether a threshold says that something has to be there, and not how much of it."""
    limit = name in tuple(Severity)
    return limit and isinstance(check.limits, AtLeast) and check.formula.startswith("1 if ")


def _exceeds_nothing(check: Check, item: Recalled) -> bool:
    """Whether nothing at all stays below a threshold, for its scale begins at nothing."""
    if item.name not in tuple(Severity) or not isinstance(check.limits, AtMost):
        return False
    limit, _ = limit_of(check, Severity(item.name))
    return has_share(check.unit, limit)


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

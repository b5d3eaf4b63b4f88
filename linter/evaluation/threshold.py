"""A figure against the thresholds of its check."""

from dataclasses import replace

from ..check import AtLeast, Check, Limits, Source
from ..finding import Evidence, Finding, Severity
from ..quantities.quantity import to_si

EDGE = 1e-9
ZERO_CELSIUS = 273.15
NO_SHARE = ("K", "degC", "dB")
AMPLE = {"K": 50.0, "degC": 50.0, "dB": 10.0}
FURTHER = 1e-6


def missed(check: Check, figure: float) -> Severity | None:
    """The gravest threshold that a figure misses, None when it meets them all."""
    rising = isinstance(check.limits, AtLeast)
    for severity in Severity:
        text = getattr(check.limits, severity.value)
        if text is None:
            continue
        limit = to_si(text, check.unit)
        slack = EDGE * max(abs(limit), abs(figure)) if abs(figure) != float("inf") else 0.0
        if (figure < limit - slack) if rising else (figure > limit + slack):
            return severity
    return None


def mildest(limits: Limits) -> Severity:
    """The threshold that a figure misses first."""
    stated = [severity for severity in Severity if getattr(limits, severity.value)]
    return stated[-1]


def limit_of(check: Check, severity: Severity) -> tuple[float, Source]:
    """The threshold of a severity in SI, and where it comes from."""
    text = getattr(check.limits, severity.value)
    return to_si(text, check.unit), check.limits.basis[severity.value]


def measured_to(found: Evidence, limit: float, basis: Source) -> Evidence:
    """The evidence with its limit, how far from it the figure is, and which share that is."""
    if found.figure is None:
        return replace(found, limit=limit, basis=basis)
    distance = found.figure - limit if found.at_least else limit - found.figure
    share = distance / abs(limit) if has_share(found.unit, limit) else None
    return replace(found, limit=limit, basis=basis, distance=distance, margin=share)


def has_share(unit: str, limit: float) -> bool:
    """Whether a share of the limit means something.

    It does not where the zero of the scale is a convention (temperatures, levels in
    decibels), of differences of temperature as little, and of a limit of zero never.
    """
    return unit not in NO_SHARE and limit != 0.0


def closeness(found: Evidence) -> float | None:
    """How near to its limit a figure is, to put findings in order; negative when missed.

    The margin where there is one, else the distance on the scale of the check: the span of
    its thresholds, or what is ample in its unit.
    """
    if found.margin is not None or found.distance is None or found.limits is None:
        return found.margin
    steps = [getattr(found.limits, severity.value) for severity in Severity]
    stated = [to_si(text, found.unit) for text in steps if text is not None]
    span = max(stated) - min(stated) if stated else 0.0
    return found.distance / (AMPLE.get(found.unit) or span or 1.0)


def further_off(old: Finding | None, new: Finding | None, by: float = FURTHER) -> bool:
    """Whether a figure that misses its limit lies further on the wrong side than before.

    by: how much further at least, as a share of the old miss.
    """
    if old is None or new is None or new.severity is None:
        return False
    return new.evidence.figure is not None and moved_off(old, new.evidence.figure, by)


def moved_off(old: Finding, figure: float, by: float) -> bool:
    """Whether a figure lies on the wrong side of an old one by that share of the old miss."""
    was = old.evidence
    if was.figure is None or was.distance is None:
        return False
    moved = figure - was.figure if was.at_least else was.figure - figure
    return moved < -by * abs(was.distance)

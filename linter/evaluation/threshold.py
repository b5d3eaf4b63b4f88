"""A figure against the thresholds of its check."""

from dataclasses import replace

from ..check import AtLeast, Check, Limits, Source
from ..finding import Finding, Severity
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


def measured_to(finding: Finding, limit: float) -> Finding:
    """The finding with its limit, how far from it the figure is, and which share that is."""
    if finding.figure is None:
        return replace(finding, limit=limit)
    distance = finding.figure - limit if finding.at_least else limit - finding.figure
    share = distance / abs(limit) if has_share(finding.unit, limit) else None
    return replace(finding, limit=limit, distance=distance, margin=share)


def has_share(unit: str, limit: float) -> bool:
    """Whether a share of the limit means something.

    It does not where the zero of the scale is a convention (temperatures, levels in
    decibels), of differences of temperature as little, and of a limit of zero never.
    """
    return unit not in NO_SHARE and limit != 0.0


def closeness(finding: Finding) -> float | None:
    """How near to its limit a figure is, to put findings in order; negative when missed.

    The margin where there is one, else the distance on the scale of the check: the span of
    its thresholds, or what is ample in its unit.
    """
    if finding.margin is not None or finding.distance is None or finding.limits is None:
        return finding.margin
    steps = [getattr(finding.limits, severity.value) for severity in Severity]
    stated = [to_si(text, finding.unit) for text in steps if text is not None]
    span = max(stated) - min(stated) if stated else 0.0
    return finding.distance / (AMPLE.get(finding.unit) or span or 1.0)


def further_off(old: Finding | None, new: Finding | None, by: float = FURTHER) -> bool:
    """Whether a figure that misses its limit lies further on the wrong side than before.

    by: how much further at least, as a share of the old miss.
    """
    if old is None or new is None or old.distance is None or new.figure is None:
        return False
    if old.figure is None or new.severity is None:
        return False
    moved = new.figure - old.figure if old.at_least else old.figure - new.figure
    return moved < -by * abs(old.distance)

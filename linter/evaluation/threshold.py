"""A figure against the thresholds of its check."""

from ..check import AtLeast, Check, Limits, Source
from ..finding import Finding, Severity
from ..quantities.quantity import to_si

EDGE = 1e-9
ZERO_CELSIUS = 273.15


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


def margin_to(finding: Finding, limit: float) -> float | None:
    """Distance to the limit as a share of it; None where the limit is zero.

    The share of a temperature is taken in degrees Celsius, as a reader would.
    """
    scale = abs(limit - ZERO_CELSIUS) if finding.unit == "degC" else abs(limit)
    if finding.figure is None or scale == 0.0:
        return None
    distance = finding.figure - limit if finding.at_least else limit - finding.figure
    return distance / scale

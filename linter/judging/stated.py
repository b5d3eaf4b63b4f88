"""The finding on a stated value that no check computes."""

from ..check import Source
from ..declare import subject_of
from ..finding import Evidence, Finding, Place, Severity, Status

DOMAIN = "completeness"
UNUSUAL = "value-outside-usual-range"
CONTRADICTS = "stated-value-contradicts"


def stated_finding(
    name: str,
    title: str,
    path: str,
    severity: Severity,
    message: str,
    places: tuple[Place, ...],
    source: Source,
) -> Finding:
    """A finding on the value at a path; places: where it stands, then what it is held against."""
    return Finding(
        check=name,
        domain=DOMAIN,
        title=title,
        subject=subject_of(path),
        status=Status.FINDING,
        message=message,
        severity=severity,
        place=places[0] if places else None,
        related=places[1:6],
        evidence=Evidence(basis=source, sources=(source,), leaves=frozenset({path})),
    )

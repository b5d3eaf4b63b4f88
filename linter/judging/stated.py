"""What is asked of a stated value by itself, and the finding that no check computes."""

from collections.abc import Callable
from dataclasses import dataclass

from ..check import Source
from ..declare import subject_of
from ..evaluation.graph import Graph
from ..finding import Evidence, Finding, Place, Severity, Status
from ..reading.loading import Spec

DOMAIN = "completeness"
UNUSUAL = "value-outside-usual-range"
CONTRADICTS = "stated-value-contradicts"


@dataclass(frozen=True, slots=True)
class Asked:
    """One question about a stated value.

    reads: the fields and derived quantities on which the answer hangs.
    """

    reads: frozenset[str]
    answer: Callable[[Spec, Graph], Finding | None]


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

"""One spec file reviewed: read, assessed, judged.  What every report is made from."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from .catalogue import Catalogue, load
from .check import Milestone
from .consistency import standing_findings
from .engine import Assessment
from .finding import Finding, Severity, Status
from .loading import Loaded, Spec, load_file
from .milestone import RANK, Verdict, verdict
from .refusal import Refusal


@dataclass(frozen=True, slots=True)
class Review:
    """A spec with the answer of every check and the verdict on them."""

    spec: Spec
    findings: tuple[Finding, ...]
    verdict: Verdict
    catalogue: Catalogue

    def failing(self) -> tuple[Finding, ...]:
        """The findings proper, gravest first, then by how far they miss the limit."""
        found = [item for item in self.findings if item.severity is not None]
        return tuple(sorted(found, key=_gravity))

    def of_status(self, status: Status) -> tuple[Finding, ...]:
        """The answers of one kind, in the catalogue's order."""
        return tuple(item for item in self.findings if item.status is status)

    def counts(self) -> Mapping[str, int]:
        """How many answers there are of each severity and of each kind."""
        severities = {s.value: 0 for s in Severity}
        for item in self.failing():
            severities[str(item.severity)] += 1
        kinds = {s.value: len(self.of_status(s)) for s in (Status.OPEN, Status.MEETS)}
        return severities | kinds


def _gravity(finding: Finding) -> tuple[int, float, str, str]:
    severity = finding.severity or Severity.MINOR
    return (
        RANK[severity],
        finding.margin if finding.margin is not None else 0.0,
        finding.check,
        finding.subject,
    )


def review(
    spec: Spec,
    milestone: Milestone | None = None,
    hold_at: Severity | None = None,
    catalogue: Catalogue | None = None,
) -> Review:
    """Review a spec with the catalogue that comes with the program, or another one."""
    catalogue = catalogue or load()
    stage = milestone or spec.milestone
    run = Assessment(spec, catalogue, stage)
    findings = (*standing_findings(spec, run.graph), *run.findings())
    return Review(spec, findings, verdict(findings, stage, hold_at), catalogue)


def review_file(
    path: Path, milestone: Milestone | None = None, hold_at: Severity | None = None
) -> Review | tuple[Refusal, ...]:
    """Review a file, or say why it cannot be assessed."""
    loaded: Loaded = load_file(path)
    if loaded.spec is None:
        return loaded.refusals
    return review(loaded.spec, milestone, hold_at)

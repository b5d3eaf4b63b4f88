"""What holds a design at a milestone, as data, and the verdict that follows."""

from dataclasses import dataclass
from typing import Literal

from ..check import Milestone
from ..finding import Finding, Severity, Status


@dataclass(frozen=True, slots=True)
class Gate:
    """What a milestone asks for.

    hold_at: the mildest severity that holds.  open_holds: which open items hold: none, those
    of checks that can find a hazard or destruction, or all.  why: the reason, as the report
    gives it.
    """

    hold_at: Severity
    open_holds: Literal["none", "grave", "all"]
    why: str


GATES: dict[Milestone, Gate] = {
    "concept": Gate(
        Severity.CRITICAL,
        "none",
        "a concept may have gaps and weak points, but no hazard, no destroyed part and no promise"
        " that physics forbids",
    ),
    "prototype": Gate(
        Severity.MAJOR,
        "grave",
        "before boards are built, every function and rated limit must hold on paper, and no"
        " question of safety or destruction may be open",
    ),
    "production": Gate(
        Severity.MAJOR,
        "all",
        "before series production nothing may be open, and no limit met only on assumptions,"
        " estimates or typical values",
    ),
}


@dataclass(frozen=True, slots=True)
class Verdict:
    """Released or held, and the findings that hold."""

    milestone: Milestone
    hold_at: Severity
    holding: tuple[Finding, ...]
    why: str

    @property
    def released(self) -> bool:
        """Whether the design may go on to the next stage."""
        return not self.holding


def verdict(
    findings: tuple[Finding, ...], milestone: Milestone, hold_at: Severity | None = None
) -> Verdict:
    """The verdict on a list of findings; ``hold_at`` replaces the milestone's own.

    What a deviation permits does not hold.
    """
    gate = GATES[milestone]
    threshold = hold_at or gate.hold_at
    holding = tuple(
        finding
        for finding in findings
        if not finding.permitted and _holds(finding, gate, threshold)
    )
    return Verdict(milestone, threshold, holding, gate.why)


def _holds(finding: Finding, gate: Gate, threshold: Severity) -> bool:
    if finding.holds_always:
        return True
    if finding.severity is not None:
        return finding.rank <= threshold.rank
    if finding.status is not Status.OPEN or gate.open_holds == "none":
        return False
    grave = finding.can_be_critical or finding.stake == "safety"
    return grave or gate.open_holds == "all"

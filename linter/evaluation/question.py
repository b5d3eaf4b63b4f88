"""One check put to one subject, and the answers that need no figure."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from ..check import AtLeast, Check, Milestone
from ..declare import PRODUCT
from ..finding import Advice, Evidence, Finding, Place, Severity, Status
from .catalogue import Entry
from .graph import Graph
from .node import Node
from .ranges import Plan
from .tolerance import Alike, Extreme, worst_case
from .twins import Twins


@dataclass(frozen=True, slots=True)
class Question:
    """One check put to one subject at a milestone.

    plan: gives the figure's node in a graph.  sure_graph: the graph without adverse
    assumptions and placeholders.
    """

    entry: Entry
    subject: str
    milestone: Milestone
    twins: Twins
    graph: Graph
    sure_graph: Callable[[], Graph]
    plan: Plan

    @property
    def check(self) -> Check:
        """The check that is put."""
        return self.entry.check

    @property
    def channel(self) -> str | None:
        """The channel at hand, None for the whole product."""
        return None if self.subject == PRODUCT else self.subject

    def alike(self, node: Node) -> Alike:
        """The leaves of a node that move the figure as those of other channels do."""
        return self.twins.leaves(node.leaves, self.channel)

    def worst(self, node: Node) -> Extreme:
        """The figure at the corner of the tolerances that is worst for the check."""
        peaks = self.check.peaks_inside
        return worst_case(node, self.adverse, peaks, self.alike(node))

    @property
    def adverse(self) -> int:
        """The direction in which the figure gets worse."""
        return -1 if isinstance(self.check.limits, AtLeast) else 1


def blank(entry: Entry, subject: str) -> Finding:
    """An answer without a figure: the check does not concern the design."""
    check, rising = entry.check, isinstance(entry.check.limits, AtLeast)
    evidence = Evidence(check.unit, rising, check.limits, check.sources)
    return answered(entry, subject, Status.NOT_APPLICABLE, "does not concern this design", evidence)


def answered(
    entry: Entry,
    subject: str,
    status: Status,
    message: str,
    evidence: Evidence,
    places: Sequence[Place] = (),
) -> Finding:
    """An answer of a check; places: where it points, the first one first."""
    check = entry.check
    return Finding(
        check=entry.name,
        domain=entry.domain,
        title=check.title,
        subject=subject,
        status=status,
        message=message,
        stake=check.stake,
        place=places[0] if places else None,
        related=tuple(places[1:]),
        evidence=evidence,
        advice=Advice(cautions=check.cautions),
    )


def crashed(entry: Entry, subject: str, what: str) -> Finding:
    """The answer of a check that failed itself: it holds at every milestone."""
    return replace(
        blank(entry, subject),
        status=Status.FINDING,
        severity=Severity.MAJOR,
        message=f"the check itself failed and judged nothing: {what}",
        advice=Advice(),
        holds_always=True,
    )

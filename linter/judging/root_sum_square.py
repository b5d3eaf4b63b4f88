"""Root-sum-square of every check beside its worst case, on request."""

from ..evaluation.engine import Assessment
from ..evaluation.node import Computed
from ..evaluation.threshold import closeness
from ..evaluation.tolerance import root_sum_square
from ..finding import Finding
from .review import Review


def root_sum_squares(review: Review) -> list[tuple[Finding, float]]:
    """Each check that gives a figure with its root-sum-square figure, tightest first."""
    run = Assessment(review.spec, review.catalogue, review.verdict.milestone)
    rows = []
    for item in review.findings:
        entry = review.catalogue.entry(item.check)
        node = run.prepare(entry, item.subject, run.graph) if entry else None
        if item.evidence.figure is not None and isinstance(node, Computed) and node.leaves:
            rows.append((item, root_sum_square(node, -1 if item.evidence.at_least else 1)))
    rows.sort(key=lambda row: closeness(row[0].evidence) or 0.0)
    return rows

"""Promises that physics forbids: a bound that is missed with everything in their favour."""

from ..finding import Severity
from .node import Computed
from .question import Question
from .stand_ins import is_unsure
from .threshold import missed
from .tolerance import worst_case


def forbidden_at_best(
    question: Question, severity: Severity, over_usual: Computed | None
) -> float | None:
    """The figure at its best, where no design can keep the promise; else None.

    The check's major limit is a bound of physics, and the figure misses it with all
    tolerances at the end that helps, and without adverse assumptions and estimates.  Such a
    finding holds at every milestone.
    over_usual: the figure where values are missing, over all that these usually are.
    """
    check = question.check
    if not check.forbidden or severity is Severity.MINOR:
        return None
    node = over_usual or question.plan(question.sure_graph())
    if not isinstance(node, Computed) or any(map(is_unsure, node.assumed)):
        return None
    at_best = worst_case(node, -question.adverse, check.peaks_inside, question.alike(node)).figure
    return at_best if missed(check, at_best) in (Severity.CRITICAL, Severity.MAJOR) else None

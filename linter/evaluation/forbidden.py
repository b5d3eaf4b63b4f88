"""Promises that physics forbids: a bound that is missed with everything in their favour."""

from ..finding import Severity
from .node import Computed
from .question import Question
from .stand_ins import is_unsure
from .threshold import missed
from .tolerance import worst_case


def is_forbidden(question: Question, severity: Severity, over_usual: Computed | None) -> bool:
    """Whether a finding holds at every milestone, because no design can keep the promise.

    The check's major limit is a bound of physics, and the figure misses it with all
    tolerances at the end that helps, and without adverse assumptions and estimates.
    over_usual: the figure where values are missing, over all that these usually are.
    """
    check = question.check
    if not check.forbidden or severity is Severity.MINOR:
        return False
    node = over_usual or question.plan(question.sure_graph())
    if not isinstance(node, Computed) or any(map(is_unsure, node.assumed)):
        return False
    at_best = worst_case(node, -question.adverse, check.peaks_inside).figure
    return missed(check, at_best) in (Severity.CRITICAL, Severity.MAJOR)

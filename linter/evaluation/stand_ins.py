"""Failures that rest on what stands in for silence: placeholders, and parts not spoken of."""

from ..declare import field_path
from ..finding import Leaned, Severity
from .node import Computed
from .question import Question
from .ranges import Bounded, bounded, is_settled
from .threshold import missed
from .tolerance import worst_case


def over_usual(question: Question, items: list[Leaned]) -> Bounded | None:
    """The check over the usual ranges of what is only assumed."""
    paths = [item.path for item in items]
    return bounded(question.plan, question.graph, question.check, [paths]) if paths else None


def hangs_on(over: Bounded | None) -> bool:
    """Whether what is only assumed decides between a failure and something milder."""
    if over is None or over.worst is None:
        return False
    return over.best is None or not is_settled(over)


def hangs_on_a_part(
    question: Question, node: Computed, assumed: list[Leaned], severity: Severity
) -> bool:
    """Whether what is graver than a remark hangs on a part of which nothing is said."""
    if severity == Severity.MINOR:
        return False
    fields = question.graph.spec.schema.fields
    known = [fields[field_path(x.path)] for x in assumed if field_path(x.path) in fields]
    parts = [field for field in known if field.kind == "section"]
    return bool(parts) and not stands(question, node, severity)


def stands(question: Question, node: Computed, severity: Severity) -> bool:
    """Whether a severity stands without adverse assumptions and placeholders."""
    if not any(item.leaning == "adverse" or item.placeholder for item in node.leaned):
        return True
    sure = question.plan(question.sure_graph())
    if not isinstance(sure, Computed):
        return False
    figure = worst_case(sure, question.adverse, question.check.peaks_inside).figure
    found = missed(question.check, figure)
    return found is not None and found.rank <= severity.rank

"""Failures that rest on what stands in for silence: placeholders, and parts not spoken of."""

from collections.abc import Sequence

from ..declare import field_path
from ..finding import Assumed, Severity
from .node import Computed
from .question import Question
from .ranges import MOST_ASSUMED, MOST_MISSING, Bounded, bounded, is_settled
from .share import share_of
from .threshold import missed


def over_usual(
    question: Question, items: list[Assumed], shares: bool = False, beside: Sequence[str] = ()
) -> Bounded | None:
    """The check over the usual ranges of what is only assumed.

    shares: also over what assumed figures may be, which can let a pass stand and convicts nobody.
    beside: missing leaves whose ranges count as well.
    """
    if not items or any(is_usual_span(question, item) for item in items):
        return None
    if not shares and any(item.path in question.graph.derived for item in items):
        return None
    paths = [*beside, *(path for item in items for path in _behind(question, item.path))]
    most = MOST_ASSUMED if shares else MOST_MISSING
    return bounded(question.plan, question.graph, question.check, [paths], most)


def _behind(question: Question, path: str) -> list[str]:
    """What is moved for an assumption: itself, or the missing leaves of what is left out."""
    derived = question.graph.derived
    if path not in derived or share_of(derived, path) is not None:
        return [path]
    asked = [item.path for item in question.graph.asked(path, question.channel)]
    return asked or [path]


def is_usual_span(question: Question, item: Assumed) -> bool:
    """Whether the trade has a usual span, and what is usual of its ends is that of other trades.

    A band of audio has its ends; those that a band may have are no doubt about them.
    """
    field = question.graph.spec.schema.fields.get(field_path(item.path))
    return item.leaning == "neutral" and field is not None and field.given == "range"


def hangs_on(over: Bounded | None) -> bool:
    """Whether what is only assumed decides between a failure and something milder."""
    if over is None or over.worst is None:
        return False
    return over.best is None or not is_settled(over)


def is_cleared_by_the_middle(question: Question, over: Bounded) -> bool:
    """Whether values from the middle of the usual ranges already leave no more than a remark."""
    leaves = over.node.leaves
    middle = {path: leaves[path].nominal for path in over.paths if path in leaves}
    figure = float(over.node.value({**over.extreme.corner, **middle}))
    return missed(question.check, figure) in (None, Severity.MINOR)


def hangs_on_a_part(
    question: Question, node: Computed, assumed: list[Assumed], severity: Severity
) -> bool:
    """Whether what is graver than a remark hangs on nothing but a part that is not spoken of."""
    if severity == Severity.MINOR:
        return False
    fields = question.graph.spec.schema.fields
    soft = [field_path(item.path) for item in assumed if is_unsure(item)]
    parts = [path for path in soft if path in fields and fields[path].kind == "section"]
    return bool(parts) and len(parts) == len(soft) and not stands(question, node, severity)


def is_unsure(item: Assumed) -> bool:
    """Whether a failure may not rest on an assumption: it is adverse, or a placeholder."""
    return item.leaning == "adverse" or item.placeholder


def sure_figure(question: Question) -> float | None:
    """The figure at its worst without unsure assumptions; None where it needs them."""
    sure = question.plan(question.sure_graph())
    if not isinstance(sure, Computed):
        return None
    return question.worst(sure).figure


def stands(question: Question, node: Computed, severity: Severity) -> bool:
    """Whether a severity stands without unsure assumptions."""
    if not any(map(is_unsure, node.assumed)):
        return True
    figure = sure_figure(question)
    found = None if figure is None else missed(question.check, figure)
    return found is not None and found.rank <= severity.rank

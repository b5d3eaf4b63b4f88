"""The figure of a question at its worst corner, before what it leans on is weighed."""

from contextlib import suppress

from .node import Computed, FigureError
from .question import Question


def figure_at_worst(question: Question) -> float | None:
    """The figure; None where there is none, or where it cannot be computed."""
    with suppress(FigureError):
        node = question.plan(question.graph)
        if isinstance(node, Computed):
            return question.worst(node).figure
    return None

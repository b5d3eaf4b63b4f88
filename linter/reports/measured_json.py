"""The measurements as JSON."""

from math import isfinite
from typing import Any

from ..judging.measured import Compared
from ..judging.review import Review
from .measured_words import in_words


def measured_json(review: Review) -> list[dict[str, Any]]:
    """Every measurement, with the band of the model and what would explain a difference."""
    return [_measured(item) for item in review.measured]


def _measured(item: Compared) -> dict[str, Any]:
    at, figure, read = item.of, item.figure, item.read
    return {
        "figure": at.figure,
        "subject": figure.subject if figure else at.place,
        "board": at.board,
        "date": at.date,
        "instrument": at.instrument,
        "place": {"file": at.at.file, "line": at.at.line},
        "answer": item.answer,
        "unit": figure.unit if figure else "",
        "measured": {"lo": read.lo, "nominal": read.nominal, "hi": read.hi} if read else None,
        "model": _model(item),
        "conditions": {name: x.text for name, x in at.conditions.items()},
        "explained_by": [
            {"path": x.path, "kind": x.kind, "now": x.now, "needed": x.needed, "unit": x.unit}
            for x in item.explanations
        ],
        "why_not": item.why,
        "text": in_words(item),
    }


def _model(item: Compared) -> dict[str, float | None] | None:
    """What the model gives over all tolerances."""
    if item.band is None:
        return None
    low, high = item.band
    return {"lo": _finite(low), "nominal": _finite(item.nominal), "hi": _finite(high)}


def _finite(x: float | None) -> float | None:
    """A number that JSON can hold."""
    return x if x is not None and isfinite(x) else None

"""Which readings are not believed: better than the parts allow, or than any board can be."""

from dataclasses import dataclass

from ..evaluation.gap import Gap
from ..evaluation.node import Computed, LeafNode
from ..evaluation.tolerance import worst_case
from ..measurable import Measurable
from ..quantities.quantity import Value, show
from ..reading.loading import Measurement
from .modelled import Figure, Model

OF_ESTIMATE = 0.5
"""Of an estimate, how much less is doubted: as a share of what is of a computed figure."""


@dataclass(frozen=True, slots=True)
class Held:
    """A reading that is held against a model."""

    of: Measurement
    read: Value
    figure: Figure
    known: Measurable


def doubt_of(item: Held, model: Model, is_below_its_terms: bool) -> str:
    """Why a reading is not believed, or nothing."""
    most = _most(item, model)
    if most is not None and item.read.lo > most:
        return f"no board gives more than {show(most, item.figure.unit)}"
    if _is_too_little(item, model):
        return "far below what the parts give" if model.is_computed else "far below the estimate"
    return "less than the known terms add up to" if is_below_its_terms else ""


def _most(item: Held, model: Model) -> float | None:
    """How much no board can give."""
    way = item.known.most
    given = model.graph.arguments(way.inputs, item.figure.channel) if way else None
    if way is None or given is None or isinstance(given, Gap):
        return None
    return worst_case(Computed(item.figure.name, way.figure, given), 1).figure


def _is_too_little(item: Held, model: Model) -> bool:
    """Whether a reading is but a small share of the least that the model gives."""
    node, known = model.node, item.known
    guessed = isinstance(node, LeafNode) and node.stated.provenance == "estimate"
    if not (model.is_computed or guessed):
        return False
    over = item.of.conditions.get(known.rises_over)
    base = over.nominal if over else 0.0
    most = max(known.amount(x - base) for x in (item.read.lo, item.read.hi))
    least = min(known.amount(x - base) for x in model.ends())
    return most < known.doubted_below * (OF_ESTIMATE if guessed else 1.0) * least

"""Two statements of one thing: a new one beside which a stated one no longer counts."""

from contextlib import suppress

from ..declare import subject_of
from ..evaluation.graph import Graph
from ..evaluation.node import FigureError, Node


def overruled(before: Graph, after: Graph, path: str) -> frozenset[str]:
    """Stated values of the same section that nothing is computed from any more.

    To state ``path`` beside them is no change of the design: two values then say the same
    thing otherwise, and the new one wins in silence.
    """
    section = path.rpartition(".")[0]
    stated = {other for other in before.spec.values if other.rpartition(".")[0] == section}
    lost: set[str] = set()
    for quantity in after.derived.values():
        for channel in _channels(after, quantity.each, path):
            with suppress(FigureError):
                old, new = (graph.resolve(quantity.name, channel) for graph in (before, after))
                if isinstance(old, Node) and isinstance(new, Node) and path in new.used:
                    lost |= (old.used - new.used) & stated
    return frozenset(lost & after.spec.values.keys())


def _channels(graph: Graph, each: str, path: str) -> tuple[str | None, ...]:
    """The channel of the path, all channels, or None for the product."""
    if each != "channel":
        return (None,)
    subject = subject_of(path)
    return (subject,) if subject in graph.spec.channels else graph.spec.channels

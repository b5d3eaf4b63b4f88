"""A reading in place of what the model computes, through every check that hangs on it.

The spec is set to the conditions of the reading, of which each is one that it allows.  Where a
figure rises over a condition, its rise holds over the whole range of that.
"""

from collections.abc import Iterator, Mapping

from ..evaluation.catalogue import Entry
from ..evaluation.engine import Assessment
from ..evaluation.gap import Gap
from ..evaluation.graph import Graph
from ..evaluation.known import Key
from ..evaluation.node import Computed, Fixed, Node
from ..finding import Finding
from ..measurable import Measurable
from .measured import Compared
from .modelled import Figure, stated_place

READ = "read"


def answers_with(
    run: Assessment, item: Compared, known: Measurable, read: float
) -> Iterator[tuple[Entry, Finding]]:
    """The answers of all checks that hang on a figure, with what was read in its place."""
    assert item.figure is not None
    base = at_conditions(run, item, known)
    if base is None or _is_absent(base.graph, item.figure):
        return
    figure, mark = item.figure, f"measured {item.figure.name} ({item.figure.subject})"
    node = node_of_reading(base.graph, item, known, read, mark)
    nodes = dict.fromkeys(_keys(base.graph, figure, known), node)
    nodes |= _that_follow(base.graph, figure, known, node)
    led = run.dependences.led_by(frozenset(name for name, _ in nodes))
    placed = base.placing(nodes)
    for entry in run.catalogue.entries:
        if entry.name in led:
            for subject in placed.subjects(entry.check):
                found = placed.answer(entry, subject)
                if mark in found.evidence.leaves:
                    yield entry, found


def _is_absent(graph: Graph, figure: Figure) -> bool:
    """Whether a design has no such thing."""
    found = graph.resolve(figure.name, figure.channel)
    return isinstance(found, Gap) and bool(found.absent)


def at_conditions(run: Assessment, item: Compared, known: Measurable) -> Assessment | None:
    """The run at the conditions of a reading, but for the one over which its figure rises."""
    rises = known.conditions.get(known.rises_over, ())
    paths = {run.graph.full(path, None) for path in rises}
    pins = {path: text for path, text in (item.pins or {}).items() if path not in paths}
    if not pins:
        return run
    revised = run.revised(pins, apart=True)
    return revised[0] if revised else None


def node_of_reading(
    graph: Graph, item: Compared, known: Measurable, read: float, mark: str
) -> Node:
    """What was read, or its rise over the condition wherever that lies."""
    over = item.of.conditions.get(known.rises_over)
    if over is None:
        return Fixed(read, frozenset({mark}))
    for path in known.conditions[known.rises_over]:
        base = graph.resolve(path, None)
        if isinstance(base, Node):
            rise = Fixed(read - over.nominal, frozenset({mark}))
            return Computed(known.figure, _risen, {"base": base, "rise": rise})
    return Fixed(read, frozenset({mark}))


def _risen(base: float, rise: float) -> float:
    """A figure that rises over a condition."""
    return base + rise


def _keys(graph: Graph, figure: Figure, known: Measurable) -> Iterator[Key]:
    """The names under which the graph looks for a figure."""
    quantity = graph.derived.get(figure.name)
    stated = stated_place(graph, figure) and quantity and known.stands_in
    names = (figure.name, quantity.stated_at or "") if quantity and stated else (figure.name,)
    channels = (figure.channel,) if figure.channel else (None, *graph.spec.channels)
    return ((name, channel) for name in names for channel in channels)


def _that_follow(graph: Graph, figure: Figure, known: Measurable, node: Node) -> Mapping[Key, Node]:
    """The quantities that follow from a reading, by what the model gives of the rest."""
    found: dict[Key, Node] = {}
    for name, way in known.follows.items():
        of_channel = graph.derived[name].each == "channel"
        everywhere = graph.spec.channels if of_channel else (None,)
        for channel in (figure.channel,) if figure.channel else everywhere:
            given = graph.arguments(way.inputs, channel)
            if not isinstance(given, Gap) and graph.matches(way.when, channel) is True:
                found[name, channel] = Computed(name, way.figure, {**given, READ: node})
    return found

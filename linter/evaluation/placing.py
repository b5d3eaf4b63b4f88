"""A graph with nodes in place of some names, whatever the spec states of these."""

from collections.abc import Mapping

from .graph import Graph
from .known import Key
from .node import Node
from .nodes import Nodes


def placed(graph: Graph, nodes: Mapping[Key, Node], led: frozenset[str], made: Nodes) -> Graph:
    """A graph of the same spec in which nodes are found under some names.

    led: the names that may hang on these; what hangs on none of them is taken over.
    made: where the nodes of the new graph are kept.
    """
    known = graph.known.where(lambda key, _: key[0] not in led)
    for key, node in nodes.items():
        known.add(key, node)
    return Graph(graph.spec, graph.derived, graph.leaves.sure, known=known, nodes=made)

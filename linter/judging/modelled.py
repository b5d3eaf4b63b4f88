"""What the model gives of a figure under the conditions of a reading.

What the reading may replace is no part of it: neither an earlier reading nor an estimate of the
spec, where the rest of the spec computes the figure by more than a rule of thumb.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from ..declare import PRODUCT
from ..evaluation.catalogue import Catalogue
from ..evaluation.gap import Gap
from ..evaluation.graph import Graph
from ..evaluation.node import Computed, LeafNode, Node
from ..evaluation.tolerance import worst_case
from ..quantities.quantity import Value
from ..reading.loading import Spec


@dataclass(frozen=True, slots=True)
class Figure:
    """What a measurement is about: by which name, of which channel, in which unit."""

    name: str
    subject: str
    unit: str
    meaning: str

    @property
    def channel(self) -> str | None:
        """The channel at hand, None for the whole product."""
        return None if self.subject == PRODUCT else self.subject


@dataclass(frozen=True, slots=True)
class Model:
    """A figure of a spec that is set to some conditions.

    place: where the spec may state the figure, or nothing.
    """

    graph: Graph
    node: Node | Gap
    place: str = ""

    @property
    def is_computed(self) -> bool:
        """Whether the figure follows from the rest, and by more than a rule of thumb."""
        if not isinstance(self.node, Computed):
            return False
        guess = self.node.way.assumes if self.node.way else None
        return guess is None or guess.basis.kind != "common practice"

    def ends(self) -> tuple[float, float]:
        """The figure over all tolerances."""
        assert isinstance(self.node, Node)
        return worst_case(self.node, -1).figure, worst_case(self.node, 1).figure


def model_of(spec: Spec, catalogue: Catalogue, figure: Figure, pins: Mapping[str, object]) -> Model:
    """A figure as it follows under some conditions, without what was measured of itself."""
    place = stated_place(Graph(spec, catalogue.derived), figure)
    own = {place: spec.stood_in[place]} if place in spec.stood_in else {}
    set_to = {**pins, **own}
    at = (spec.with_values(set_to).spec if set_to else spec) or spec
    stated = at.values.get(place)
    if isinstance(stated, Value) and stated.provenance == "estimate":
        freed = _model(at.with_values({place: None}).spec or at, catalogue, figure, place)
        if freed.is_computed:
            return freed
    return _model(at, catalogue, figure, place)


def _model(spec: Spec, catalogue: Catalogue, figure: Figure, place: str) -> Model:
    graph = Graph(spec, catalogue.derived)
    return Model(graph, node_of(graph, catalogue, figure), place)


def as_printed(node: Node, low: float, high: float, spec: Spec) -> tuple[float, float]:
    """The band without the side that nobody prints: of a most the lower one, of a least the other.

    A data sheet that prints ``typ`` alone says nothing of either side.
    """
    if not isinstance(node, LeafNode):
        return low, high
    sides = node.stated.sides if node.stated.form == "line" else frozenset[str]()
    is_most = node.stated.form == "plain" and spec.schema.field_of(node.path).given == "max"
    if is_most or ("max" in sides and "min" not in sides):
        return -math.inf, high
    return (low, math.inf) if "min" in sides and "max" not in sides else (low, high)


def node_of(graph: Graph, catalogue: Catalogue, figure: Figure) -> Node | Gap:
    """A figure as the model computes it."""
    entry = catalogue.entry(figure.name)
    if entry is not None:
        found = graph.arguments(entry.check.inputs, figure.channel)
        return found if isinstance(found, Gap) else Computed(entry.name, entry.check.figure, found)
    return graph.resolve(figure.name, figure.channel)


def stated_place(graph: Graph, figure: Figure) -> str:
    """The path where the spec may state a figure, or nothing."""
    quantity = graph.derived.get(figure.name)
    path = quantity.stated_at if quantity else figure.name
    return graph.full(path, figure.channel) if path and path in graph.fields else ""

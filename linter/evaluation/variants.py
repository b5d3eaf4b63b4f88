"""Graphs of one spec in which values stand in for what is silent or assumed, each made once."""

from collections.abc import Callable, Mapping
from typing import Generic, Protocol, Self, TypeVar

from ..quantities.quantity import Value
from ..reading.loading import Spec
from .affected import Affected
from .nodes import Nodes

Supposed = frozenset[tuple[str, Value | str]]


class Revisable(Protocol):
    """A graph, as far as its variants know it."""

    def revised(self, spec: Spec, change: Affected, nodes: Nodes | None = None) -> Self:
        """The same of a changed spec."""


G = TypeVar("G", bound=Revisable)


class Variants(Generic[G]):
    """The variants of a graph by what stands in.

    earlier: those of the graph of another spec, as far as a change leaves them as they are.
    """

    def __init__(self, earlier: Callable[[Supposed], G | None] | None = None) -> None:
        self._made: dict[Supposed, G] = {}
        self._earlier = earlier

    def of(
        self,
        values: Mapping[str, Value | str],
        make: Callable[[Mapping[str, Value | str]], G],
    ) -> G:
        """The graph with these values: made before, taken over, or made now."""
        key = frozenset(values.items())
        if key not in self._made:
            taken_over = self._earlier(key) if self._earlier else None
            self._made[key] = taken_over or make(values)
        return self._made[key]

    def revised(self, spec: Spec, change: Affected, nodes: Nodes) -> "Variants[G]":
        """Those of a changed spec; each is taken over when it is asked for."""

        def earlier(key: Supposed) -> G | None:
            graph = self._made.get(key)
            return graph.revised(spec, change, nodes) if graph is not None else None

        return Variants(earlier)

"""Each node once: what is the same function of the same arguments is one node.

A changed spec, and a spec in which a value stands in, are planned anew; most of what is planned
then has been planned before.  One node for both keeps what has been computed of it.
"""

from collections.abc import Callable, Hashable, Mapping
from typing import Any, TypeVar, cast

from ..check import Way
from ..finding import Assumed
from ..quantities.quantity import Value
from .computations import Computations
from .node import Computed, Fixed, LeafNode, Node

N = TypeVar("N", bound=Node)
T = TypeVar("T")


class Nodes:
    """The nodes of one spec and of all that are made from it.

    computations: counts what is computed of them.  below: nodes that are shared with others;
    what is made here is not.
    """

    def __init__(
        self, computations: Computations | None = None, below: "Nodes | None" = None
    ) -> None:
        self.computations = computations or Computations()
        self._below = below
        self._made: dict[Hashable, Node] = {}
        self._found: dict[tuple[Node | str, ...], object] = {}

    def above(self) -> "Nodes":
        """Nodes for a spec that is soon forgotten: these, and its own beside them."""
        return Nodes(self.computations, self)

    def fixed(
        self,
        content: Any,
        used: frozenset[str] = frozenset(),
        assumed: tuple[Assumed, ...] = (),
    ) -> Fixed:
        """A constant, a word, a count or an assumed word."""
        key = (type(content), content, used, assumed)
        return self._one(key, lambda: Fixed(content, used, assumed))

    def leaf(
        self,
        path: str,
        stated: Value,
        assumed: tuple[Assumed, ...],
        real: bool,
        moving: bool = False,
    ) -> LeafNode:
        """A number of the spec, as it is written."""
        key = (path, stated, stated.text, assumed, real, moving)
        return self._one(key, lambda: LeafNode(path, stated, assumed, real, moving))

    def computed(
        self,
        label: str,
        figure: Callable[..., Any],
        arguments: Mapping[str, Node],
        assumed: tuple[Assumed, ...] = (),
        way: Way | None = None,
    ) -> Computed:
        """A function of other nodes."""
        key = (label, figure, *arguments, *arguments.values(), assumed, id(way))
        return self._one(
            key, lambda: Computed(label, figure, arguments, assumed, way, self.computations)
        )

    def once(self, about: tuple[Node | str, ...], find: Callable[[], T]) -> T:
        """What follows from a node and some words alone, found once."""
        known = self._found.get(about) or (self._below and self._below._found.get(about))
        if known is None:
            known = self._found[about] = find()
        return cast(T, known)

    def _one(self, key: Hashable, make: Callable[[], N]) -> N:
        found = self._find(key)
        if found is None:
            found = self._made[key] = make()
        return cast(N, found)

    def _find(self, key: Hashable) -> Node | None:
        found = self._made.get(key)
        if found is None and self._below is not None:
            return self._below._find(key)
        return found

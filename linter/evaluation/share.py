"""What an assumed figure may be instead: a share of itself, where its rule gives one."""

from collections.abc import Callable, Mapping
from functools import cache
from typing import Any

from ..check import Derived, Way
from ..declare.usual import ends
from ..quantities.quantity import Value
from .node import Computed, Node
from .nodes import Nodes
from .parameters import parameters

TIMES = "times_the_assumed"


def share_of(derived: Mapping[str, Derived], name: str) -> Value | None:
    """The share of what stands in for a derived quantity that the true value may be."""
    quantity = derived.get(name)
    ways = quantity.ways if quantity is not None else ()
    text = next((x.assumes.within for x in ways if x.assumes and x.assumes.within), "")
    if not text:
        return None
    low, high = (float(end) for end in ends(text))
    return Value(low, 1.0, high, "range")


def shared(node: Computed, way: Way, share: Value, nodes: Nodes) -> Node:
    """A derived quantity times the share, which is a leaf that can be moved."""
    times = nodes.leaf(f"{node.label}:{TIMES}", share, (), real=False, moving=True)
    arguments = {TIMES: times, **dict(zip(parameters(way.figure), node.taken, strict=False))}
    return nodes.computed(node.label, _scaled(way.figure), arguments, node.assumed, way)


@cache
def _scaled(figure: Callable[..., Any]) -> Callable[..., Any]:
    def scaled(times: Any, *arguments: Any) -> Any:
        return times * figure(*arguments)

    return scaled

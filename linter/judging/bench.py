"""Numbers of the bring-up sheet: a band over the tolerances, a limit, a setting in words."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import ceil, floor, inf, log10
from typing import Any

from ..bringup_step import Amount, Kind, Reading
from ..evaluation.gap import Gap
from ..evaluation.graph import Graph
from ..evaluation.node import FigureError, LeafNode, Node
from ..evaluation.tolerance import worst_case
from ..evaluation.wording import in_words
from ..finding import Assumed

AS_SET = ("nominal", "bottom", "top")
"""Sides that are told as they are, without rounding."""


@dataclass(frozen=True, slots=True)
class Band:
    """What a figure should be: nominal, and its ends over the tolerances; words have no ends.

    sides: of a data-sheet line, which of ``min``, ``typ`` and ``max`` are printed.
    """

    nominal: float
    lo: float
    hi: float
    assumed: tuple[Assumed, ...] = ()
    sides: frozenset[str] = frozenset()

    def kind(self, wanted: Kind, stop: str) -> Kind:
        """Which ends count: those of the reading, unless the spec knows less than both."""
        if self.floor:
            one_sided: Kind = "at least" if stop == "above" else "at most"
            return one_sided if wanted == "band" else "band"
        if wanted != "band":
            return wanted
        if len(self.sides) == 1 + ("typ" in self.sides):
            return (
                "at least" if "min" in self.sides else "at most" if "max" in self.sides else wanted
            )
        return wanted

    @property
    def floor(self) -> bool:
        """Whether something is left out, so that the figure can only be worse."""
        return any(item.leaning == "floor" for item in self.assumed)


def banded(graph: Graph, amount: Amount, channel: str | None) -> Band | Gap:
    """A number with its ends over the tolerances, or what it lacks; nothing where it fails."""
    nodes = graph.arguments(amount.inputs, channel)
    if isinstance(nodes, Gap):
        return nodes
    node = graph.nodes.computed("bringup", amount.figure, nodes)
    try:
        lo, hi = worst_case(node, -1), worst_case(node, 1)
    except FigureError:
        return Gap()
    if amount.side is None:
        return Band(hi.nominal, lo.figure, hi.figure, node.assumed, _printed(nodes))
    ends = {
        "lowest": lo.figure,
        "nominal": hi.nominal,
        "highest": hi.figure,
        "bottom": _over_ranges(node, -1),
        "top": _over_ranges(node, 1),
    }
    end = _rounded(ends[amount.side], amount)
    return Band(end, end, end, node.assumed)


def _over_ranges(node: Node, sign: int) -> float:
    """The end of a number over the ranges of use, each leaf by itself, tolerances nominal."""
    corner: dict[str, object] = {}
    for path, leaf in node.leaves.items():
        if leaf.form == "range":
            ends = {end: float(node.value({path: end})) for end in (leaf.lo, leaf.hi)}
            corner[path] = max(ends, key=lambda end: sign * ends[end])
    return float(node.value(corner))


def _printed(nodes: Mapping[str, Node]) -> frozenset[str]:
    """The sides of the data-sheet line that a number simply repeats."""
    first = next(iter(nodes.values()), None)
    lone = len(nodes) == 1 and isinstance(first, LeafNode) and first.stated.form == "line"
    return first.stated.sides if lone and isinstance(first, LeafNode) else frozenset()


def limit_in(reading: Reading, graph: Graph, channel: str | None) -> float | Gap | None:
    """The end of the limit that stops first, or the one that it names.

    A limit that leaves something out and would stop too soon is none.
    """
    if reading.limit is None:
        return None
    found = banded(graph, reading.limit, channel)
    if isinstance(found, Gap):
        return None if found.absent else found
    own = reading.limit is reading.amount
    if found.floor and (own or reading.stop == "above"):
        return None
    return found.lo if reading.stop == "above" else found.hi


def setting(graph: Graph, amount: Amount, channel: str | None) -> str | Gap:
    """An amount in words, rounded the way of its side."""
    word = _word(graph, amount, channel)
    if word:
        return word
    found = banded(graph, amount, channel)
    if isinstance(found, Gap):
        return found
    text = in_words(found.nominal, amount.unit)
    return f"at least {text}" if found.floor else text


def _word(graph: Graph, amount: Amount, channel: str | None) -> str:
    """An amount that is a word of the spec."""
    if amount.unit != "word":
        return ""
    nodes = graph.arguments(amount.inputs, channel)
    if isinstance(nodes, Gap):
        return "not stated"
    value: Any = amount.figure(**{name: node.value() for name, node in nodes.items()})
    return str(value).replace("-", " ")


def _rounded(value: float, amount: Amount) -> float:
    """One end in the digits of its amount; temperatures stay as they are."""
    if amount.side in AS_SET or amount.unit == "degC":
        return value
    return in_digits(value, amount.digits, amount.side == "highest")


def in_digits(value: float, digits: int, up: bool) -> float:
    """A number in so many significant digits, rounded up or down.

    >>> in_digits(0.2213, 2, up=True), in_digits(54.96, 2, up=False)
    (0.23, 54.0)
    """
    if value == 0.0 or abs(value) == inf:
        return value
    power = floor(log10(abs(value))) - digits + 1
    steps = value / 10.0**power
    return float(f"{ceil(steps - 1e-9) if up else floor(steps + 1e-9)}e{power}")

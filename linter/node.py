"""The nodes of the graph: values of the spec and functions of them, at any corner.

A corner overrides toleranced leaves by path; every other leaf stands at its nominal
value.  A node remembers its values, keyed by the overrides of the leaves it depends on.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from .check import Way
from .finding import Leaned, Missing
from .quantity import Value

Corner = Mapping[str, Any]
NOMINAL: Corner = {}


class FigureError(Exception):
    """A figure raised, or gave something that is not a number."""


@dataclass(frozen=True, slots=True)
class Gap:
    """Why a name has no value: leaves that are missing, or a part that is not fitted."""

    missing: tuple[Missing, ...] = ()
    absent: str = ""


class Node:
    """A value of the graph.

    leaves: the toleranced leaves it depends on; used: every stated leaf it depends on;
    leaned: the assumptions behind it.
    """

    __slots__ = ("_cache", "_order", "leaned", "leaves", "used")

    def __init__(
        self,
        leaves: Mapping[str, Value],
        used: frozenset[str],
        leaned: tuple[Leaned, ...],
    ) -> None:
        self.leaves = leaves
        self.used = used
        self.leaned = leaned
        self._order = tuple(leaves)
        self._cache: dict[tuple[Any, ...], Any] = {}

    def value(self, corner: Corner = NOMINAL) -> Any:
        """The value at a corner: overrides of leaves by path, nominal elsewhere."""
        key = tuple([corner.get(path) for path in self._order])
        if key not in self._cache:
            self._cache[key] = self.compute(lambda node: node.value(corner), corner)
        return self._cache[key]

    def compute(self, take: "Callable[[Node], Any]", corner: Corner) -> Any:
        """The value, with ``take`` for the values of the nodes below."""
        raise NotImplementedError


class Fixed(Node):
    """A constant, a word, a count or an assumed word."""

    __slots__ = ("content",)

    def __init__(
        self, content: Any, used: frozenset[str] = frozenset(), leaned: tuple[Leaned, ...] = ()
    ) -> None:
        super().__init__({}, used, leaned)
        self.content = content

    def compute(self, take: Callable[[Node], Any], corner: Corner) -> Any:
        """The constant itself."""
        return self.content


class LeafNode(Node):
    """A number of the spec, stated or assumed."""

    __slots__ = ("path", "stated")

    def __init__(
        self,
        path: str,
        stated: Value,
        leaned: tuple[Leaned, ...],
        real: bool,
        moving: bool = False,
    ) -> None:
        leaves = {path: stated} if moving or stated.lo < stated.hi else {}
        super().__init__(leaves, frozenset({path} if real else ()), leaned)
        self.path = path
        self.stated = stated

    def compute(self, take: Callable[[Node], Any], corner: Corner) -> Any:
        """The override of the corner, else the nominal value."""
        return corner.get(self.path, self.stated.nominal)


class Computed(Node):
    """A derived quantity or a figure: a function of other nodes."""

    __slots__ = ("arguments", "figure", "label", "way")

    def __init__(
        self,
        label: str,
        figure: Callable[..., Any],
        arguments: Mapping[str, Node],
        leaned: tuple[Leaned, ...] = (),
        way: Way | None = None,
    ) -> None:
        leaves: dict[str, Value] = {}
        below: dict[Leaned, None] = {}
        used: set[str] = set()
        for node in arguments.values():
            leaves |= node.leaves
            used |= node.used
            below |= dict.fromkeys(node.leaned)
        super().__init__(leaves, frozenset(used), tuple(below | dict.fromkeys(leaned)))
        self.label = label
        self.figure = figure
        self.arguments = arguments
        self.way = way

    def compute(self, take: Callable[[Node], Any], corner: Corner) -> Any:
        """The function of the values below; anything but a number is an error."""
        arguments = {name: take(node) for name, node in self.arguments.items()}
        try:
            result = self.figure(**arguments)
        except (ArithmeticError, ValueError, TypeError, IndexError) as error:
            raise FigureError(f"{self.label}: {type(error).__name__}: {error}") from error
        if isinstance(result, complex) or (isinstance(result, float) and result != result):
            raise FigureError(f"{self.label} gave {result}, which is not a number")
        return result

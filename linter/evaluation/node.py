"""The nodes of the graph: values of the spec and functions of them, at any corner.

A corner overrides toleranced leaves by path; every other leaf stands at its nominal
value.  A computed node remembers its values by the overrides that concern it, so a corner
must not be changed once something has been computed at it.
"""

from collections.abc import Callable, Mapping
from typing import Any

from ..check import Way
from ..finding import Assumed
from ..quantities.quantity import Value
from .computations import Computations

Corner = Mapping[str, Any]
NOMINAL: Corner = {}


class Moved(dict[str, Any]):
    """A corner with one more override; what does not hang on its leaf stands as in ``base``."""

    __slots__ = ("base", "path")

    def __init__(self, base: Corner, path: str, value: Any) -> None:
        super().__init__(base)
        self[path] = value
        self.base = base
        self.path = path


class FigureError(Exception):
    """A figure raised, or gave something that is not a number."""


class Node:
    """A value of the graph.

    leaves: the toleranced leaves it depends on; used: every stated leaf it depends on;
    assumed: the assumptions behind it.
    """

    __slots__ = ("assumed", "leaves", "used")

    def __init__(
        self,
        leaves: Mapping[str, Value],
        used: frozenset[str],
        assumed: tuple[Assumed, ...],
    ) -> None:
        self.leaves = leaves
        self.used = used
        self.assumed = assumed

    def value(self, corner: Corner = NOMINAL) -> Any:
        """The value at a corner: overrides of leaves by path, nominal elsewhere."""
        raise NotImplementedError


class Fixed(Node):
    """A constant, a word, a count or an assumed word."""

    __slots__ = ("content",)

    def __init__(
        self, content: Any, used: frozenset[str] = frozenset(), assumed: tuple[Assumed, ...] = ()
    ) -> None:
        super().__init__({}, used, assumed)
        self.content = content

    def value(self, corner: Corner = NOMINAL) -> Any:
        """The constant itself."""
        return self.content


class LeafNode(Node):
    """A number of the spec, stated or assumed."""

    __slots__ = ("path", "stated")

    def __init__(
        self,
        path: str,
        stated: Value,
        assumed: tuple[Assumed, ...],
        real: bool,
        moving: bool = False,
    ) -> None:
        leaves = {path: stated} if moving or stated.lo < stated.hi else {}
        super().__init__(leaves, frozenset({path} if real else ()), assumed)
        self.path = path
        self.stated = stated

    def value(self, corner: Corner = NOMINAL) -> Any:
        """The override of the corner, else the nominal value."""
        return corner.get(self.path, self.stated.nominal)


class Computed(Node):
    """A derived quantity or a figure: a function of other nodes.

    computations: counts how often it is computed.
    """

    __slots__ = (
        "_cache",
        "_last",
        "_moving",
        "_numbers",
        "_still",
        "arguments",
        "computations",
        "figure",
        "label",
        "way",
    )

    def __init__(
        self,
        label: str,
        figure: Callable[..., Any],
        arguments: Mapping[str, Node],
        assumed: tuple[Assumed, ...] = (),
        way: Way | None = None,
        computations: Computations | None = None,
    ) -> None:
        leaves: dict[str, Value] = {}
        below: dict[Assumed, None] = {}
        used: set[str] = set()
        for node in arguments.values():
            leaves |= node.leaves
            used |= node.used
            below |= dict.fromkeys(node.assumed)
        ordered = dict(sorted(leaves.items()))
        super().__init__(ordered, frozenset(used), tuple(below | dict.fromkeys(assumed)))
        self.label = label
        self.figure = figure
        self.arguments = arguments
        self.way = way
        self.computations = computations or Computations()
        self._cache: dict[object, Any] = {}
        self._numbers: dict[tuple[tuple[str, Any], ...], int] = {}
        self._last: tuple[Corner | None, int] = (None, 0)
        self._still: dict[str, Any] | None = None
        self._moving = [(name, node) for name, node in arguments.items() if node.leaves]

    def value(self, corner: Corner = NOMINAL) -> Any:
        """The function of the values below, computed once for each corner that differs."""
        if isinstance(corner, Moved):
            if corner.path not in self.leaves:
                return self.value(corner.base)
            key: object = (self._number(corner.base), corner.path, corner[corner.path])
        else:
            key = self._number(corner)
        cache = self._cache
        if key not in cache:
            if self._still is None:
                fixed = {name: x for name, x in self.arguments.items() if not x.leaves}
                self._still = {name: node.value() for name, node in fixed.items()}
            self.computations.number += 1
            arguments = self._still.copy()
            for name, node in self._moving:
                arguments[name] = node.value(corner)
            cache[key] = self.call(arguments)
        return cache[key]

    def _number(self, corner: Corner) -> int:
        """The same number for corners that agree in the leaves of this node."""
        if corner is not self._last[0]:
            concerned = self._concerned(corner)
            self._last = (corner, self._numbers.setdefault(concerned, len(self._numbers)))
        return self._last[1]

    def _concerned(self, corner: Corner) -> tuple[tuple[str, Any], ...]:
        """The overrides that concern this node; the shorter side is walked."""
        leaves = self.leaves
        if len(leaves) <= len(corner):
            return tuple([(path, corner[path]) for path in leaves if path in corner])
        return tuple([item for item in corner.items() if item[0] in leaves])

    def call(self, arguments: Mapping[str, Any]) -> Any:
        """The function of given arguments; anything but a number is an error."""
        try:
            result = self.figure(**arguments)
        except (ArithmeticError, ValueError, TypeError, LookupError) as error:
            raise FigureError(f"{self.label}: {type(error).__name__}: {error}") from error
        if isinstance(result, complex) or (isinstance(result, float) and result != result):
            raise FigureError(f"{self.label} gave {result}, which is not a number")
        return result

"""The nodes of the graph: values of the spec and functions of them, at any corner.

A corner overrides toleranced leaves by path; every other leaf stands at its nominal
value.  A computed node remembers its values by the overrides that concern it, so a corner
must not be changed once something has been computed at it.
"""

from collections.abc import Callable, Mapping
from itertools import chain
from typing import Any

from ..check import Way
from ..finding import Assumed
from ..quantities.quantity import Value
from .computations import Computations

Corner = Mapping[str, Any]
NOMINAL: Corner = {}


class Moved:
    """A corner with one more override: what does not hang on its leaf stands as in ``base``."""

    __slots__ = ("base", "path", "to")

    def __init__(self, base: Corner, path: str, to: Any) -> None:
        self.base = base
        self.path = path
        self.to = to

    def corner(self) -> dict[str, Any]:
        """The same in full, as a base for further moves."""
        return {**self.base, self.path: self.to}


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

    def value(self, corner: Corner | Moved = NOMINAL) -> Any:
        """The value at a corner: overrides of leaves by path, nominal elsewhere."""
        raise NotImplementedError

    def moved(self, corner: Moved) -> Any:
        """The value after a move of a leaf that it hangs on."""
        raise NotImplementedError


class Fixed(Node):
    """A constant, a word, a count or an assumed word."""

    __slots__ = ("content",)

    def __init__(
        self, content: Any, used: frozenset[str] = frozenset(), assumed: tuple[Assumed, ...] = ()
    ) -> None:
        super().__init__({}, used, assumed)
        self.content = content

    def value(self, corner: Corner | Moved = NOMINAL) -> Any:
        """The constant itself."""
        return self.content

    def moved(self, corner: Moved) -> Any:
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

    def value(self, corner: Corner | Moved = NOMINAL) -> Any:
        """The override of the corner, else the nominal value."""
        if isinstance(corner, Moved):
            return corner.to if corner.path == self.path else self.value(corner.base)
        return corner.get(self.path, self.stated.nominal)

    def moved(self, corner: Moved) -> Any:
        """Where the leaf is moved to."""
        return corner.to


class Computed(Node):
    """A derived quantity or a figure: a function of other nodes.

    computations: counts how often it is computed.
    """

    __slots__ = (
        "_last",
        "_moved",
        "_moving",
        "_numbers",
        "_placed",
        "_still",
        "_through",
        "_values",
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
        used: set[str] = set()
        for node in arguments.values():
            leaves |= node.leaves
            used |= node.used
        behind = [x for x in (*(node.assumed for node in arguments.values()), assumed) if x]
        joined = behind[0] if len(behind) == 1 else tuple(dict.fromkeys(chain(*behind)))
        super().__init__(dict(sorted(leaves.items())), frozenset(used), joined)
        self.label = label
        self.figure = figure
        self.arguments = arguments
        self.way = way
        self.computations = computations or Computations()
        self._values: dict[int, Any] = {}
        self._moved: dict[tuple[int, str, Any], Any] = {}
        self._placed: dict[int, dict[str, Any]] = {}
        self._numbers: dict[tuple[tuple[str, Any], ...], int] = {}
        self._last: tuple[Corner | None, int] = (None, 0)
        self._still: dict[str, Any] | None = None
        self._moving = [(name, node) for name, node in arguments.items() if node.leaves]
        self._through: dict[str, list[tuple[str, Node]]] = {}

    def value(self, corner: Corner | Moved = NOMINAL) -> Any:
        """The function of the values below, computed once for each corner that differs."""
        if isinstance(corner, Moved):
            return self.moved(corner) if corner.path in self.leaves else self.value(corner.base)
        number = self._number(corner)
        if number not in self._values:
            self.computations.number += 1
            self._values[number] = self.call(self._arguments_at(corner, number))
        return self._values[number]

    def moved(self, corner: Moved) -> Any:
        """The value after a move; that of before where the move is not felt in any argument."""
        base, path = corner.base, corner.path
        number = self._last[1] if self._last[0] is base else self._number(base)
        key = (number, path, corner.to)
        if key in self._moved:
            return self._moved[key]
        self.computations.number += 1
        before = self._arguments_at(base, number)
        after: dict[str, Any] = {}
        for name, node in self._moved_by(path):
            value = node.moved(corner)
            if value != before[name]:
                after[name] = value
        self._moved[key] = found = self.call(before | after) if after else self.value(base)
        return found

    def _arguments_at(self, corner: Corner, number: int) -> dict[str, Any]:
        """The values of the arguments at a corner."""
        if number not in self._placed:
            if self._still is None:
                fixed = {name: x for name, x in self.arguments.items() if not x.leaves}
                self._still = {name: node.value() for name, node in fixed.items()}
            moving = {name: node.value(corner) for name, node in self._moving}
            self._placed[number] = self._still | moving
        return self._placed[number]

    def _moved_by(self, path: str) -> list[tuple[str, Node]]:
        """The arguments that hang on a leaf."""
        if path not in self._through:
            self._through[path] = [item for item in self._moving if path in item[1].leaves]
        return self._through[path]

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
        if type(result) is float and result == result:
            return result
        if isinstance(result, complex) or (isinstance(result, float) and result != result):
            raise FigureError(f"{self.label} gave {result}, which is not a number")
        return result

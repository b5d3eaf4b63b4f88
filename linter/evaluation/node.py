"""The nodes of the graph: values of the spec and functions of them, at any corner.

A corner overrides toleranced leaves by path; every other leaf stands at its nominal
value.  A computed node remembers its values by the overrides that concern it, so a corner
must not be changed once something has been computed at it.
"""

from collections.abc import Callable, Mapping, Sequence
from itertools import chain
from typing import Any

from ..check import Way
from ..finding import Assumed
from ..quantities.quantity import Value
from .computations import Computations
from .parameters import in_order

Corner = Mapping[str, Any]
NOMINAL: Corner = {}


class Moved:
    """A corner with one more override: what does not hang on its leaf stands as in ``base``."""

    __slots__ = ("base", "move", "path", "to")

    def __init__(self, base: Corner, path: str, to: Any) -> None:
        self.base = base
        self.path = path
        self.to = to
        self.move = (path, to)

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


NOT_YET = object()


class _Place:
    """What a computed node knows at one corner: its arguments, its value, its value after moves."""

    __slots__ = ("arguments", "moved", "value")

    def __init__(self, arguments: list[Any]) -> None:
        self.arguments = arguments
        self.value: Any = NOT_YET
        self.moved: dict[tuple[str, Any], Any] = {}


NOWHERE = _Place([])


class Computed(Node):
    """A derived quantity or a figure: a function of other nodes.

    taken: the arguments in the order in which the function takes them.
    computations: counts how often it is computed.
    """

    __slots__ = (
        "_corner",
        "_here",
        "_moving",
        "_places",
        "_still",
        "_through",
        "arguments",
        "computations",
        "figure",
        "label",
        "taken",
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
        below = arguments.values()
        behind = [node.assumed for node in below if node.assumed]
        behind += [assumed] if assumed else []
        joined = behind[0] if len(behind) == 1 else tuple(dict.fromkeys(chain(*behind)))
        used: frozenset[str] = frozenset().union(*[node.used for node in below])
        super().__init__(_leaves_of([node for node in below if node.leaves]), used, joined)
        self.label = label
        self.figure = figure
        self.arguments = arguments
        try:
            self.taken = in_order(figure, arguments)
        except KeyError as error:
            raise FigureError(f"{label}: the figure takes {error}, which is not given") from error
        self.way = way
        self.computations = computations or Computations()
        self._places: dict[tuple[Any, ...], _Place] = {}
        self._corner: Corner | None = None
        self._here = NOWHERE
        self._still: list[Any] | None = None
        self._moving = [(slot, node) for slot, node in enumerate(self.taken) if node.leaves]
        self._through: dict[str, list[tuple[int, Node]]] = {}

    def value(self, corner: Corner | Moved = NOMINAL) -> Any:
        """The function of the values below, computed once for each corner that differs."""
        if isinstance(corner, Moved):
            return self.moved(corner) if corner.path in self.leaves else self.value(corner.base)
        here = self._at(corner)
        if here.value is NOT_YET:
            self.computations.number += 1
            here.value = self.call(here.arguments)
        return here.value

    def moved(self, corner: Moved) -> Any:
        """The value after a move; that of before where the move is not felt in any argument."""
        here = self._here if corner.base is self._corner else self._at(corner.base)
        found = here.moved.get(corner.move, NOT_YET)
        if found is NOT_YET:
            self.computations.number += 1
            before = after = here.arguments
            for slot, node in self._through.get(corner.path) or self._ways(corner.path):
                value = node.moved(corner)
                if value != before[slot]:
                    if after is before:
                        after = before.copy()
                    after[slot] = value
            found = self.value(corner.base) if after is before else self.call(after)
            here.moved[corner.move] = found
        return found

    def _at(self, corner: Corner) -> _Place:
        """What is known at a corner; the same for corners that agree in the leaves of this node."""
        if corner is not self._corner:
            concerned = tuple(map(corner.get, self.leaves))
            found = self._places.get(concerned)
            if found is None:
                found = self._places[concerned] = _Place(self._arguments_at(corner))
            self._corner, self._here = corner, found
        return self._here

    def _arguments_at(self, corner: Corner) -> list[Any]:
        """The values of the arguments at a corner; what has no tolerance is looked up once."""
        if self._still is None:
            self._still = [None if node.leaves else node.value() for node in self.taken]
        found = self._still.copy()
        for slot, node in self._moving:
            found[slot] = node.value(corner)
        return found

    def _ways(self, path: str) -> list[tuple[int, Node]]:
        """The arguments that hang on a leaf, each with its place among them."""
        found = self._through[path] = [x for x in self._moving if path in x[1].leaves]
        return found

    def call(self, arguments: Sequence[Any]) -> Any:
        """The function of given values of ``taken``; anything but a number is an error."""
        try:
            result = self.figure(*arguments)
        except (ArithmeticError, ValueError, TypeError, LookupError) as error:
            raise FigureError(f"{self.label}: {type(error).__name__}: {error}") from error
        if type(result) is float and result == result:
            return result
        if isinstance(result, complex) or (isinstance(result, float) and result != result):
            raise FigureError(f"{self.label} gave {result}, which is not a number")
        return result


def _leaves_of(moving: Sequence[Node]) -> Mapping[str, Value]:
    """The leaves of several nodes by their paths in order."""
    if len(moving) == 1:
        return moving[0].leaves
    leaves = {path: leaf for node in moving for path, leaf in node.leaves.items()}
    return {path: leaves[path] for path in sorted(leaves)}

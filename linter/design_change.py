"""What a file of design changes fills in: values that go along with each other.

Frozen dataclasses without behaviour, as in ``check``.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from .check import Arguments, Source, Words


@dataclass(frozen=True, slots=True)
class Follow:
    """A value that has to go along with a change of the design.

    figure: what it has to be, a pure function of SI floats of the changed design, at the
        worst corner; an input whose path begins with ``before `` is taken from the design
        as it was.  None: the word ``word`` is written.
    stock: as in ``Lever``; empty: what the figure gives, to three digits, tolerance and
        data-sheet line kept in proportion.
    safe: ``up`` or ``down``: the way to round, and a stated value that lies further that
        way already stays; empty: the figure is what it is, neither more nor less.
    spread: a tolerance that is written behind the value.
    guess: a value of a part that nobody has chosen yet: written with ``from: estimate``.
    within: as in ``Lever``: where it takes more than so many times what is stated, it is another
        product, and the change is not made.
    new: written also where the spec is silent about it; where it does not follow from what
        the spec states, the change cannot be made.
    """

    path: str
    figure: Callable[..., Any] | None = None
    inputs: Arguments = field(default_factory=dict)
    stock: str | tuple[str, ...] = ""
    safe: Literal["", "up", "down"] = ""
    spread: str = ""
    guess: bool = False
    new: bool = False
    word: str = ""
    within: float = float("inf")


@dataclass(frozen=True, slots=True)
class DesignChange:
    """A change of the design that no single value makes.

    title: what an engineer would call it.
    moves: the paths of the levers that bring it about: whenever a check moves one of them,
        what follows is written as well.  Empty: the change is offered by itself.
    follows: what is written, each in the light of all the others.
    helps: names of the checks for which it is tried when it is offered by itself.
    kind: ``slip``: something mistaken; ``part``: another part; ``design``: another design;
        ``promise``: less promised, the values that go along with it included.
    """

    title: str
    follows: tuple[Follow, ...]
    moves: tuple[str, ...] = ()
    helps: tuple[str, ...] = ()
    kind: Literal["slip", "part", "design", "promise"] = "design"
    applies: Mapping[str, Words] = field(default_factory=dict)
    sources: tuple[Source, ...] = ()

"""A quantity as the program holds it, and the error that refuses a quantity."""

from dataclasses import dataclass, field
from typing import Literal

Form = Literal["plain", "tolerance", "range", "line"]
Provenance = Literal["datasheet", "measured", "estimate", "supplier"]

PROVENANCES: tuple[Provenance, ...] = ("datasheet", "measured", "estimate", "supplier")
SIDES = ("min", "typ", "max")


@dataclass(frozen=True, slots=True)
class Value:
    """A quantity of the spec in SI units: where it lies at least, nominally, at most.

    form: ``plain`` one number; ``tolerance`` the spread between pieces; ``range`` a
        condition of which all occurs in use; ``line`` a data-sheet line.
    provenance: where the value comes from, if the spec says so.
    sides: for a line, which of ``min``, ``typ``, ``max`` are stated.  A missing side
        is never made up: the nearest stated one stands in for it.
    text: as written, for messages; two values are equal whatever their text.
    """

    lo: float
    nominal: float
    hi: float
    form: Form = "plain"
    provenance: Provenance | None = None
    sides: frozenset[str] = frozenset()
    text: str = field(default="", compare=False)


class QuantityError(ValueError):
    """A text that is no quantity of the kind asked for.

    problem: what is wrong with it.  expected: what belongs there.  example: a text
    that would be accepted.
    """

    def __init__(self, problem: str, expected: str, example: str) -> None:
        super().__init__(f"{problem}; expected {expected}, for example {example}")
        self.problem = problem
        self.expected = expected
        self.example = example

"""Steps that many ways share: a value taken as it is, a yes or no, a term left out."""

from typing import TypeVar

from ...linter.check import Assumption, derivation

Value = TypeVar("Value")


def as_stated(value: Value) -> Value:
    """The value itself."""
    return value


def yes() -> str:
    """It is so."""
    return "yes"


def no() -> str:
    """It is not so."""
    return "no"


def left_out(value: str | float, what: str) -> Assumption:
    """A term of a sum that nothing is known of: what is left is a lower bound."""
    return Assumption(value, "floor", derivation(f"{what} left out: the sum is a lower bound"))

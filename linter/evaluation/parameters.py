"""The names of what a figure takes and a sentence tells; values by name in the order taken."""

import inspect
import string
from collections.abc import Callable, Mapping
from functools import cache
from typing import Any, TypeVar

VARIABLE = inspect.CO_VARARGS | inspect.CO_VARKEYWORDS

T = TypeVar("T")


def parameters(figure: Callable[..., Any]) -> tuple[str, ...]:
    """The names of the arguments; of a plain function without the slow way round by ``inspect``.

    >>> parameters(lambda a, b=2, *, c: a)
    ('a', 'b', 'c')
    """
    code = getattr(figure, "__code__", None)
    if code is None or code.co_flags & VARIABLE:
        return tuple(inspect.signature(figure).parameters)
    names: tuple[str, ...] = code.co_varnames
    return names[: code.co_argcount + code.co_kwonlyargcount]


def in_order(figure: Callable[..., Any], given: Mapping[str, T]) -> tuple[T, ...]:
    """Values as a figure takes them; one that takes any number takes them as they are given.

    >>> in_order(lambda a, b, c=0: a, {"b": 2, "a": 1}), in_order(lambda *items: items, {"x": 3})
    ((1, 2), (3,))
    """
    code = getattr(figure, "__code__", None)
    if code is not None and code.co_flags & inspect.CO_VARARGS:
        return tuple(given.values())
    return tuple([given[name] for name in parameters(figure)[: len(given)]])


@cache
def placeholders(sentence: str) -> frozenset[str]:
    """The names of the values that a sentence tells.

    >>> sorted(placeholders("{figure} at {v:words}, not {figure:%}"))
    ['figure', 'v']
    """
    return frozenset(name for _, name, _, _ in string.Formatter().parse(sentence) if name)

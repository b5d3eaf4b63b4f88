"""The names of what a figure takes."""

import inspect
from collections.abc import Callable, Iterable
from typing import Any

VARIABLE = inspect.CO_VARARGS | inspect.CO_VARKEYWORDS


def parameters(figure: Callable[..., Any]) -> Iterable[str]:
    """The names of the arguments; of a plain function without the slow way round by ``inspect``.

    >>> sorted(parameters(lambda a, b=2, *, c: a))
    ['a', 'b', 'c']
    """
    code = getattr(figure, "__code__", None)
    if code is None or code.co_flags & VARIABLE:
        return inspect.signature(figure).parameters
    names: tuple[str, ...] = code.co_varnames
    return names[: code.co_argcount + code.co_kwonlyargcount]

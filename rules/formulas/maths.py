"""Elementary functions that work alike on floats, numpy arrays and pint quantities.

Formulas use these instead of ``math``, ``min`` and ``max``, so that one function serves
the engine (floats), the yield estimate (arrays) and the dimension test (quantities).
Their declared type is that of the engine, ``float``: with it the type check sees an
argument that is a word, a tuple or missing, in every call of a formula.  Arrays and
quantities behave like floats; the engine hands them over without a declared type.
"""

import math
from collections.abc import Callable
from typing import Any

PI = math.pi


def _apply(on_float: Callable[[float], float], name: str, x: float) -> float:
    """Apply a function of a pure number to ``x``; a quantity must be dimensionless."""
    if isinstance(x, (int, float)):
        return on_float(x)
    if hasattr(x, "magnitude"):
        return _apply(on_float, name, x.to("").magnitude)
    import numpy

    return getattr(numpy, name)(x)


def sin(x: float) -> float:
    """Sine of an angle in radian.

    >>> round(sin(PI / 6), 12)
    0.5
    """
    return _apply(math.sin, "sin", x)


def cos(x: float) -> float:
    """Cosine of an angle in radian.

    >>> round(cos(PI / 3), 12)
    0.5
    """
    return _apply(math.cos, "cos", x)


def atan(x: float) -> float:
    """Arc tangent, in radian.

    >>> round(atan(1.0) * 4 - PI, 12)
    0.0
    """
    return _apply(math.atan, "arctan", x)


def asin(x: float) -> float:
    """Arc sine, in radian; the argument lies within -1 .. 1.

    >>> round(asin(1.0) * 2 - PI, 12)
    0.0
    """
    return _apply(math.asin, "arcsin", x)


def exp(x: float) -> float:
    """Exponential of a pure number.

    >>> exp(0.0)
    1.0
    """
    return _apply(math.exp, "exp", x)


def settled(x: float) -> float:
    """Share of a first-order step that is done after ``x`` time constants: 1 - exp(-x).

    Also where x is so small that 1 - exp(-x) would come out as zero.

    >>> round(settled(1.0), 3), settled(1e-20)
    (0.632, 1e-20)
    """
    return -_apply(math.expm1, "expm1", -x)


def ln(x: float) -> float:
    """Natural logarithm of a pure number; minus infinity of zero.

    >>> ln(1.0), ln(0.0)
    (0.0, -inf)
    """
    return _apply(lambda number: math.log(number) if number else -math.inf, "log", x)


def log10(x: float) -> float:
    """Decimal logarithm of a pure number; minus infinity of zero.

    >>> log10(1000.0), log10(0.0)
    (3.0, -inf)
    """
    return _apply(lambda number: math.log10(number) if number else -math.inf, "log10", x)


def smaller(a: float, b: float) -> float:
    """The smaller of two values, element by element for arrays.

    >>> smaller(2.0, 3.0)
    2.0
    """
    less = b < a
    return b if less is True else a if less is False else choose(less, b, a)


def larger(a: float, b: float) -> float:
    """The larger of two values, element by element for arrays.

    >>> larger(2.0, 3.0)
    3.0
    """
    more = b > a
    return b if more is True else a if more is False else choose(more, b, a)


def clip(x: float, low: float, high: float) -> float:
    """``x`` kept within ``low`` .. ``high``.

    >>> clip(1.2, 0.0, 1.0)
    1.0
    """
    return smaller(larger(x, low), high)


def choose(condition: bool, a: float, b: float) -> float:
    """``a`` where the condition holds, else ``b``; both sides are computed.

    >>> choose(True, 1.0, 2.0)
    1.0
    """
    if isinstance(condition, bool) or not getattr(condition, "shape", ()):
        return a if condition else b
    import numpy

    chosen: Any = numpy.where(condition, a, b)
    return chosen


def central(x: float) -> float:
    """A number by which values are put in order: of an array its mean.

    >>> central(2.0)
    2.0
    """
    return float(x.mean()) if hasattr(x, "mean") else float(x)


def at_rest(before: float, after: float, within: float) -> bool:
    """Whether the number of an iteration has stopped moving; arrays always go on.

    >>> at_rest(320.0, 320.0 + 1e-9, 1e-7)
    True
    """
    numbers = isinstance(before, float) and isinstance(after, float)
    return numbers and abs(after - before) <= within

"""What can be bought: preferred numbers of IEC 60063, steps and ladders of ratings."""

import math
from collections.abc import Iterator
from functools import cache
from itertools import islice

from ..quantities.quantity import to_si

E24 = (
    *(1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0),
    *(3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1),
)
SERIES = {"E24": E24, "E12": E24[::2], "E6": E24[::4], "E3": E24[::8]}
NEAR = 1e-9


@cache
def preferred(series: str) -> tuple[float, ...]:
    """The preferred numbers of one decade, 1 .. 10.

    Up to E24 the numbers of IEC 60063 are a table with historic exceptions; from E48 on
    they are the rounded powers of ten, with the one exception 9.20 in E192.

    >>> preferred("E6")
    (1.0, 1.5, 2.2, 3.3, 4.7, 6.8)
    """
    if series in SERIES:
        return SERIES[series]
    count = int(series.removeprefix("E"))
    rounded = [round(10 ** (n / count), 2) for n in range(count)]
    return tuple(9.20 if number == 9.19 else number for number in rounded)


def upward(stock: str | tuple[str, ...], unit: str, x: float) -> Iterator[float]:
    """Stock values from ``x`` upwards (``x`` itself when it is one), in SI."""
    if isinstance(stock, tuple):
        ladder = sorted(to_si(text, unit) for text in stock)
        yield from (value for value in ladder if value >= x - abs(x) * NEAR)
    elif stock in SERIES or stock.startswith("E"):
        yield from _series(stock, x, rising=True)
    else:
        zero, step = _zero(unit), _step(stock, unit)
        first = math.ceil((x - zero) / step - NEAR)
        yield from (zero + step * n for n in range(first, first + 200))


def downward(stock: str | tuple[str, ...], unit: str, x: float) -> Iterator[float]:
    """Stock values from ``x`` downwards (``x`` itself when it is one), in SI."""
    if isinstance(stock, tuple):
        ladder = sorted((to_si(text, unit) for text in stock), reverse=True)
        yield from (value for value in ladder if value <= x + abs(x) * NEAR)
    elif stock in SERIES or stock.startswith("E"):
        yield from _series(stock, x, rising=False)
    else:
        zero, step = _zero(unit), _step(stock, unit)
        first = math.floor((x - zero) / step + NEAR)
        yield from (zero + step * n for n in range(first, max(first - 200, 0), -1))


def nearest(stock: str, unit: str, x: float) -> float:
    """The stock value nearest to ``x`` by ratio."""
    above = next(upward(stock, unit, x))
    below = next(downward(stock, unit, x), above)
    return below if x / below < above / x else above


def _zero(unit: str) -> float:
    """Where the steps are counted from: temperatures step from 0 degC."""
    return to_si("0 degC", "degC") if unit == "degC" else 0.0


def _step(stock: str, unit: str) -> float:
    """A step as text; the step of a temperature is a difference."""
    return to_si(stock, "K" if unit == "degC" else unit)


def _series(series: str, x: float, rising: bool) -> Iterator[float]:
    if x <= 0.0:
        return
    numbers = preferred(series)
    decade = math.floor(math.log10(x))
    if rising:
        decades = range(decade - 1, decade + 4)
        values = (round(m * 10.0**d, 15 - d) for d in decades for m in numbers)
        kept = (value for value in values if value >= x * (1 - NEAR))
    else:
        values = (
            round(m * 10.0**d, 15 - d)
            for d in range(decade + 1, decade - 4, -1)
            for m in reversed(numbers)
        )
        kept = (value for value in values if value <= x * (1 + NEAR))
    yield from islice(kept, 100)

"""Plain data by path: steps, what stands there, a copy with another value there."""

import re
from collections.abc import Mapping
from typing import Any


def steps_of(path: str) -> list[str | int]:
    """``rungs[0].r`` to ``["rungs", 0, "r"]``."""
    found = re.findall(r"\[(\d+)\]|([^.\[\]]+)", path)
    return [int(number) if number else name for number, name in found]


def data_at(data: Any, path: str) -> Any:
    """The plain data at a path without items of lists, or nothing."""
    for step in steps_of(path):
        data = data.get(step) if isinstance(data, Mapping) else None
    return data


def replaced(data: Any, steps: list[str | int], value: Any) -> Any:
    """A copy of the data with one value replaced; what is not on the way is shared."""
    if not steps:
        return value
    step, rest = steps[0], steps[1:]
    if isinstance(step, int) and isinstance(data, list):
        inner = data[step] if step < len(data) else None
        return [*data[:step], replaced(inner, rest, value), *data[step + 1 :]]
    copy = dict(data) if isinstance(data, Mapping) else {}
    copy[str(step)] = replaced(copy.get(str(step)), rest, value)
    return copy


def overridden(written: Any, data: Any, steps: list[str | int]) -> Any:
    """What the file says, with one value as in the data; a list of a part is written whole."""
    if not steps or (isinstance(steps[0], int) and not isinstance(written, list)):
        return data
    step, rest = steps[0], steps[1:]
    if isinstance(step, int):
        inner = written[step] if step < len(written) else None
        return [*written[:step], overridden(inner, data[step], rest), *written[step + 1 :]]
    copy = dict(written) if isinstance(written, Mapping) else {}
    copy[step] = overridden(copy.get(step), data[step], rest)
    return copy

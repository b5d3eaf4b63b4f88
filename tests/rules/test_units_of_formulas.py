"""Units of the formulas, read from their docstrings.

Every public function of ``rules/formulas`` gives the unit of each parameter and of its
result as ``name [unit]`` or ``name: what it is [unit]``, and ``returns [unit]``; several
names may share a unit (``l_1, l_2 [H]``).  Where the prose is not that regular, a line that
begins with ``Units:`` says it all.  The worked example of the docstring is then run
a second time with pint quantities of these units: pint finds the dimension of the result by
itself, and the number must be the same as on floats.
"""

import doctest
import importlib
import inspect
import pkgutil
import re
from collections.abc import Callable, Iterator
from types import ModuleType
from typing import Any

import pytest

from ampreview.linter.quantities.quantity import quantity
from ampreview.rules import formulas

PLAIN = ("1", "rad", "dB", "degC", "word", "words", "function", "bundle", "any")
"""Units whose values go in as they are: pure numbers, levels, words and bundles."""

NOT_ON_QUANTITIES = {
    "conductors.wire_current": "interpolates in a table of SI numbers",
    "dissipation.hot_resistance": "power law of the kelvins as a plain number",
    "efficiency.knots_of": "takes a bundle of SI numbers",
    "efficiency.loss_above_idle": "takes a bundle of SI numbers",
    "enclosure.convection_factor": "standard atmosphere, a fit to the metres",
    "enclosure.wall_rise": "takes a bundle of SI numbers",
    "heat.junction_over": "takes a bundle of SI numbers",
    "heat.switch_heat": "takes a bundle of SI numbers",
}
"""Functions that run on SI numbers alone, and why."""


def _functions() -> Iterator[tuple[ModuleType, Callable[..., Any]]]:
    for info in pkgutil.iter_modules(formulas.__path__):
        module = importlib.import_module(f"{formulas.__name__}.{info.name}")
        for name, item in vars(module).items():
            own = inspect.isfunction(item) and item.__module__ == module.__name__
            if own and not name.startswith("_") and info.name != "maths":
                yield module, item


def _prose(function: Callable[..., Any]) -> str:
    prose = (function.__doc__ or "").partition(">>>")[0]
    return prose.partition("Units: ")[2] or prose


def unit_of(function: Callable[..., Any], name: str) -> str:
    """The unit behind a parameter's name: the next one in brackets, in the same clause."""
    found = re.search(rf"\b{name}\b[^;.\[]*\[([^\]]+)\]", _prose(function))
    return found[1] if found else ""


def unit_of_result(function: Callable[..., Any]) -> str:
    """The unit after ``returns``, else the last one of the first line."""
    found = re.findall(r"returns [^;.\[]*\[([^\]]+)\]", _prose(function))
    first = re.findall(r"\[([^\]]+)\]", _prose(function).partition("\n")[0])
    return [*first, *found][-1] if first or found else ""


def _example(module: ModuleType, function: Callable[..., Any]) -> dict[str, Any] | None:
    """The arguments of the first call of the function in its own worked example."""
    calls: list[dict[str, Any]] = []

    def record(*values: Any, **named: Any) -> Any:
        bound = inspect.signature(function).bind(*values, **named)
        bound.apply_defaults()
        calls.append(dict(bound.arguments))
        return function(*values, **named)

    names = {**vars(module), function.__name__: record}
    for example in doctest.DocTestParser().get_examples(function.__doc__ or ""):
        exec(compile(example.source, function.__name__, "exec"), names)
    return calls[0] if calls else None


def _with_unit(value: Any, unit: str) -> Any:
    if isinstance(value, (tuple, list)):
        return type(value)(_with_unit(item, unit) for item in value)
    return value if unit in PLAIN else value * quantity(f"1 {unit}", unit).to_base_units()


FUNCTIONS = [
    pytest.param(m, f, id=f"{m.__name__.rpartition('.')[2]}-{f.__name__}") for m, f in _functions()
]


@pytest.mark.parametrize(("module", "function"), FUNCTIONS)
def test_every_parameter_has_its_unit(module: ModuleType, function: Callable[..., Any]) -> None:
    """And prose and the line of units agree."""
    names = inspect.signature(function).parameters
    assert [name for name in names if not unit_of(function, name)] == []
    assert unit_of_result(function), "returns [unit]"
    prose, _, line = (function.__doc__ or "").partition(">>>")[0].partition("Units: ")
    for name in names if line else ():
        for unit in re.findall(rf"\b{name} \[([^\]]+)\]", prose):
            assert unit.removesuffix(" rms") in (unit_of(function, name), "C or Ah"), name


@pytest.mark.parametrize(("module", "function"), FUNCTIONS)
def test_example_on_quantities(module: ModuleType, function: Callable[..., Any]) -> None:
    where = f"{module.__name__.rpartition('.')[2]}.{function.__name__}"
    values = _example(module, function)
    if where in NOT_ON_QUANTITIES or values is None:
        pytest.skip(NOT_ON_QUANTITIES.get(where, "it has no example of its own"))
    expected = function(**values)
    units = {name: unit_of(function, name) for name in values}
    result = function(**{name: _with_unit(values[name], units[name]) for name in values})
    unit = unit_of_result(function)
    if unit in PLAIN or set(units.values()) <= set(PLAIN):
        number = result.to("").magnitude if hasattr(result, "to") else result
        assert number == (pytest.approx(expected) if isinstance(expected, float) else expected)
    else:
        si = quantity(f"1 {unit}", unit).to_base_units()
        assert result.to(si.units).magnitude == pytest.approx(expected)

"""The worked examples in the docstrings of the formulas."""

import doctest
import importlib
import pkgutil

import pytest

import ampreview.rules.formulas as formulas

MODULES = sorted(info.name for info in pkgutil.iter_modules(formulas.__path__))


@pytest.mark.parametrize("name", MODULES)
def test_worked_examples_hold(name: str) -> None:
    module = importlib.import_module(f"{formulas.__name__}.{name}")
    result = doctest.testmod(module)
    assert result.attempted > 0, "no worked example"
    assert result.failed == 0

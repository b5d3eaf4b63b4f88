"""The worked examples in the docstrings: of every formula, and of the linter where it has any."""

import doctest
import importlib
import pkgutil

import pytest

import ampreview.linter
from ampreview.rules import formulas

FORMULAS = sorted(
    info.name for info in pkgutil.iter_modules(formulas.__path__, f"{formulas.__name__}.")
)
LINTER = sorted(
    info.name
    for info in pkgutil.walk_packages(ampreview.linter.__path__, "ampreview.linter.")
    if not info.name.endswith("__main__")
)


def run(name: str) -> doctest.TestResults:
    return doctest.testmod(importlib.import_module(name))


@pytest.mark.parametrize("name", FORMULAS)
def test_worked_examples_of_formulas_hold(name: str) -> None:
    result = run(name)
    assert result.attempted > 0, "no worked example"
    assert result.failed == 0


def test_examples_of_the_linter_hold() -> None:
    assert [name for name in ("ampreview.linter", *LINTER) if run(name).failed] == []

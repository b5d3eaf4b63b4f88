"""What the paperwork promises: each promise has its checks, and their numbers are right.

A number that a check allows is put back into the check's own figure, which must then come
out even: a share of one, a distance of nothing.
"""

import math
from typing import Any

import pytest

from ampreview.linter.check import Constant, Input, Promise, PromiseCheck
from ampreview.linter.declare import load_schema
from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.quantities.quantity import to_si

CATALOGUE = load()
SCHEMA = load_schema()
DISTANCE = ("%", "dB")
NUMBERS = [
    pytest.param(promise, item, id=f"{promise.name}-{item.check}")
    for promise in CATALOGUE.promises
    for item in promise.checks
    if item.allows is not None
]


def number(value: Any, unit: str) -> Any:
    if isinstance(value, tuple):
        return tuple(number(item, unit) for item in value)
    if unit == "word":
        return value
    return float(value) if isinstance(value, int | float) else to_si(value, unit)


def test_each_field_that_promises_stands_in_a_promise() -> None:
    told = {path for promise in CATALOGUE.promises for path, _ in promise.told}
    told |= {promise.path for promise in CATALOGUE.promises}
    assert {path for path, field in SCHEMA.fields.items() if field.promise} <= told


def test_no_promise_can_be_supported_without_a_proof() -> None:
    """One that nothing proves says what it takes instead."""
    for promise in CATALOGUE.promises:
        proven = any(item.proves for item in promise.checks)
        assert proven or promise.unproven.startswith("needs"), promise.name


def test_names_are_short_and_of_their_own() -> None:
    names = [promise.name for promise in CATALOGUE.promises]
    assert len(set(names)) == len(names)
    assert max(map(len, names)) <= 24


def reads(path: str, claim: str) -> bool:
    """Whether a path is a claim, or a quantity that is the claim where one is made."""
    quantity = CATALOGUE.derived.get(path)
    first = quantity.ways[0].inputs if quantity and quantity.ways else {}
    return path == claim or [getattr(x, "path", "") for x in first.values()] == [claim]


@pytest.mark.parametrize(("promise", "item"), NUMBERS)
def test_what_a_check_allows_is_just_even(promise: Promise, item: PromiseCheck) -> None:
    entry = CATALOGUE.entry(item.check)
    assert entry is not None
    assert item.allows is not None
    check = entry.check
    claims = [
        name
        for name, given in check.inputs.items()
        if isinstance(given, Input) and reads(given.path.removeprefix("all "), promise.path)
    ]
    (claim,) = claims
    a_distance = check.unit == "dB" or check.formula.startswith("efficiency - ")
    even = 0.0 if a_distance else 1.0
    tried = 0
    for case in check.cases:
        given = {
            name: to_si(str(case.inputs.get(name, x.value)))
            if isinstance(x, Constant)
            else number(case.inputs[name], x.unit)
            for name, x in check.inputs.items()
        }
        figure = check.figure(**given)
        if figure == 0.0 or not math.isfinite(figure) or isinstance(given[claim], tuple):
            continue
        given[claim] = item.allows(given[claim], figure)
        assert check.figure(**given) == pytest.approx(even, abs=1e-9), case.origin
        tried += 1
    assert tried

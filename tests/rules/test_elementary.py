"""Elementary functions on floats, arrays and quantities against numpy."""

import numpy as np
import pytest

from ampreview.linter.quantities.quantity import quantity
from ampreview.rules.formulas import maths
from ampreview.rules.formulas.dissipation import pulse_rise
from ampreview.rules.formulas.gate import bootstrap_minimum

POINTS = np.array([0.05, 0.3, 0.9])
NAMES = [
    ("sin", np.sin),
    ("cos", np.cos),
    ("atan", np.arctan),
    ("asin", np.arcsin),
    ("exp", np.exp),
    ("settled", lambda x: -np.expm1(-x)),
    ("ln", np.log),
    ("log10", np.log10),
]


@pytest.mark.parametrize(("name", "reference"), NAMES)
def test_function_on_all_kinds_of_numbers(name, reference) -> None:
    function = getattr(maths, name)
    assert function(POINTS) == pytest.approx(reference(POINTS))
    for x in POINTS:
        assert function(float(x)) == pytest.approx(reference(x))
        share = quantity(f"{1000 * x} mV", "V") / quantity("1 V", "V")
        assert float(function(share)) == pytest.approx(reference(x))


def test_a_slow_stage_takes_the_part_of_its_first_slope() -> None:
    """1 - exp(-x) is x for small x; the difference of the two numbers would be 0 or noise."""
    for x in (1e-9, 1e-17, 1e-30):
        assert maths.settled(x) == pytest.approx(x, rel=1e-8)
    rise = pulse_rise(10.0, (2.0,), (1e20,), 0.1, 0.5)
    assert rise == pytest.approx(10.0 * 2.0 * 0.1 / 0.5)
    low = bootstrap_minimum(12.0, 1.0, 30e-9, 1e9, 125.0, 5e-9)
    assert low == pytest.approx(11.0 - 30e-9 * 125.0 / 5e-9)


def test_choice_on_arrays() -> None:
    low, high = np.array([1.0, 5.0]), np.array([4.0, 2.0])
    assert list(maths.smaller(low, high)) == [1.0, 2.0]
    assert list(maths.larger(low, high)) == [4.0, 5.0]
    assert list(maths.clip(np.array([-1.0, 0.5, 2.0]), 0.0, 1.0)) == [0.0, 0.5, 1.0]

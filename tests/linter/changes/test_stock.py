"""Preferred numbers against the tables of IEC 60063 as trade tables print them."""

from itertools import islice

import pytest

from ampreview.linter.changes.stock import downward, nearest, preferred, upward


def test_table_of_e12_and_e6_in_iec_60063() -> None:
    """Values as printed in resistor tables that cite IEC 60063."""
    e12 = (1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2)
    assert preferred("E12") == e12
    assert preferred("E6") == (1.0, 1.5, 2.2, 3.3, 4.7, 6.8)
    assert preferred("E3") == (1.0, 2.2, 4.7)


def test_e24_departs_from_the_rounded_powers_in_eight_places() -> None:
    """The eight historic exceptions, as listed in trade discussions of the standard."""
    rounded = [round(10 ** (n / 24), 1) for n in range(24)]
    exceptions = {
        (calc, real) for calc, real in zip(rounded, preferred("E24"), strict=True) if calc != real
    }
    assert exceptions == {
        *((2.6, 2.7), (2.9, 3.0), (3.2, 3.3), (3.5, 3.6)),
        *((3.8, 3.9), (4.2, 4.3), (4.6, 4.7), (8.3, 8.2)),
    }


def test_e96_and_e192_are_rounded_powers_with_one_exception() -> None:
    assert len(preferred("E96")) == 96
    assert set(preferred("E96")) < set(preferred("E192"))
    assert 9.20 in preferred("E192")
    assert 9.19 not in preferred("E192")
    assert {1.02, 1.05, 4.99, 9.76} < set(preferred("E96"))


@pytest.mark.parametrize(
    ("series", "x", "expected"),
    [
        ("E12", 60.02e-6, 56e-6),
        ("E24", 60.02e-6, 62e-6),
        ("E12", 351.7e-9, 330e-9),
        ("E24", 351.7e-9, 360e-9),
        ("E24", 45.02e-6, 47e-6),
        ("E12", 937.8e-9, 1e-6),
        ("E24", 937.8e-9, 910e-9),
    ],
)
def test_nearest_value_by_ratio(series: str, x: float, expected: float) -> None:
    """Worked by hand with logarithms."""
    assert nearest(series, "H", x) == pytest.approx(expected)


def test_walks_go_the_asked_way_and_include_a_stock_value_itself() -> None:
    assert list(islice(upward("E12", "H", 21e-6), 3)) == pytest.approx([22e-6, 27e-6, 33e-6])
    assert list(islice(downward("E12", "H", 21e-6), 3)) == pytest.approx([18e-6, 15e-6, 12e-6])
    assert next(upward("E24", "ohm", 0.33)) == pytest.approx(0.33)
    assert list(islice(upward("5 ns", "s", 12e-9), 2)) == pytest.approx([15e-9, 20e-9])
    assert next(upward("5 K", "degC", 273.15 + 91.0)) == pytest.approx(273.15 + 95.0)
    assert next(downward("5 K", "degC", 273.15 + 91.0)) == pytest.approx(273.15 + 90.0)
    assert next(upward(("63 V", "80 V", "100 V"), "V", 64.0)) == 80.0
    assert list(downward(("63 V", "80 V"), "V", 60.0)) == []


def test_largest_error_of_the_nearest_e24_value_by_ratio() -> None:
    """At the geometric middle of the widest gap, 1.3 to 1.5: sqrt(1.5/1.3) - 1 = 7.42 %."""
    points = (1 + n / 10_000 * 9 for n in range(10_000))
    worst = max(abs(nearest("E24", "ohm", x) / x - 1) for x in points)
    assert worst == pytest.approx((1.5 / 1.3) ** 0.5 - 1, abs=0.001)

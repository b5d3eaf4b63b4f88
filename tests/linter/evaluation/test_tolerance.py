"""Worst case and root-sum-square against published and hand-computed examples."""

import random
from collections.abc import Mapping

import pytest

from ampreview.linter.evaluation.node import Computed, LeafNode, Moved
from ampreview.linter.evaluation.tolerance import root_sum_square, worst_case
from ampreview.linter.quantities.quantity import parse


def leaf(name: str, text: str, unit: str) -> LeafNode:
    return LeafNode(name, parse(text, unit), (), real=True)


def test_coupled_tolerance_example_of_the_maxima_manual() -> None:
    """R1 1000 and R2 2000 ohm, 1 % each and 2 % shared: 2910.6 .. 3090.6 ohm.

    Source: Maxima manual, chapter on worst-case analysis (wrstcse).
    """
    node = Computed(
        "sum",
        lambda r1, r2, shared: (r1 + r2) * shared,
        {
            "r1": leaf("r1", "1000 ohm ± 1 %", "ohm"),
            "r2": leaf("r2", "2000 ohm ± 1 %", "ohm"),
            "shared": leaf("shared", "1 V/V ± 2 %", "V/V"),
        },
    )
    assert worst_case(node, -1).figure == pytest.approx(2910.6, rel=1e-9)
    assert worst_case(node, 1).figure == pytest.approx(3090.6, rel=1e-9)


def lc_corner() -> Computed:
    return Computed(
        "corner",
        lambda ind, cap: 1 / (2 * 3.141592653589793 * (ind * cap) ** 0.5),
        {"ind": leaf("ind", "10 uH ± 20 %", "H"), "cap": leaf("cap", "0.68 uF ± 10 %", "F")},
    )


def test_filter_corner_at_its_extremes() -> None:
    """10 uH ± 20 %, 0.68 uF ± 10 %: 61.03 kHz, extremes 53.12 and 71.93 kHz.

    Computed by hand: 61.03/sqrt(1.2 x 1.1) and 61.03/sqrt(0.8 x 0.9).
    """
    low, high = worst_case(lc_corner(), -1), worst_case(lc_corner(), 1)
    assert low.nominal == pytest.approx(61.03e3, rel=1e-4)
    assert low.figure == pytest.approx(61.033e3 / (1.2 * 1.1) ** 0.5, rel=1e-4)
    assert high.figure == pytest.approx(61.033e3 / (0.8 * 0.9) ** 0.5, rel=1e-4)
    assert low.corner == pytest.approx({"ind": 12e-6, "cap": 0.748e-6})


def test_filter_corner_in_root_sum_square() -> None:
    """The linear form gives ± 11.18 %; the finite steps down give 1 - 0.9129 and 1 - 0.9535."""
    expected = 61.033e3 * (1 - ((1 - 1.2**-0.5) ** 2 + (1 - 1.1**-0.5) ** 2) ** 0.5)
    assert root_sum_square(lc_corner(), -1) == pytest.approx(expected, rel=1e-4)
    assert root_sum_square(lc_corner(), -1) == pytest.approx(61.03e3 * (1 - 0.1118), rel=0.02)


def test_share_of_the_span() -> None:
    """The inductor moves the corner by 1/sqrt(0.8) - 1/sqrt(1.2), the capacitor by less."""
    span_l, span_c = 0.8**-0.5 - 1.2**-0.5, 0.9**-0.5 - 1.1**-0.5
    share_l = span_l / (span_l + span_c)
    shares = worst_case(lc_corner(), 1).shares
    assert shares == pytest.approx({"ind": share_l, "cap": 1 - share_l}, rel=1e-6)


def test_conditions_are_taken_to_their_ends_in_root_sum_square() -> None:
    node = Computed(
        "drop",
        lambda v, r: v - r,
        {"v": leaf("v", "20 V .. 30 V", "V"), "r": leaf("r", "5 V ± 1 V", "V")},
    )
    assert root_sum_square(node, -1) == pytest.approx(20 - 5 - 1)
    assert worst_case(node, -1).figure == pytest.approx(14.0)


def test_peak_inside_a_range_is_found_when_named() -> None:
    """x (1 - x) is largest at one half, inside 0.1 .. 0.7."""
    node = Computed("hump", lambda x: x * (1 - x), {"x": leaf("a.x", "10 % .. 70 %", "%")})
    assert worst_case(node, 1, ("x",)).figure == pytest.approx(0.25, rel=1e-9)
    assert worst_case(node, 1).figure < 0.25


def test_a_peak_beside_an_end_is_found_as_well() -> None:
    """-(x - c)^2 is largest at c, a tenth of a step of the scan from the end of 0 .. 32."""
    for c in (0.1, 31.9, 0.0, 32.0):
        leaves = {"x": leaf("a.x", "0 V .. 32 V", "V")}
        node = Computed("hump", lambda x, c=c: -((x - c) ** 2), leaves)
        extreme = worst_case(node, 1, ("x",))
        assert extreme.corner["a.x"] == pytest.approx(c, abs=1e-4)
        assert extreme.figure == pytest.approx(0.0, abs=1e-8)


def test_signs_that_flip_between_corners_are_followed() -> None:
    """x y over -1 .. 2 by -1 .. 2: single moves from the middle miss the corner (-1, -1)."""
    node = Computed(
        "product",
        lambda x, y: -x * y,
        {"x": leaf("x", "-1 V .. 2 V", "V"), "y": leaf("y", "-1 V .. 2 V", "V")},
    )
    assert worst_case(node, 1).figure == pytest.approx(2.0)
    assert worst_case(node, -1).figure == pytest.approx(-4.0)


def test_without_tolerances_the_nominal_value_is_the_worst() -> None:
    node = Computed("r", lambda r: r, {"r": leaf("r", "5 ohm", "ohm")})
    extreme = worst_case(node, 1)
    assert (extreme.figure, extreme.nominal, extreme.corner, extreme.shares) == (5.0, 5.0, {}, {})


def test_a_move_gives_what_the_whole_corner_gives() -> None:
    """Quantities over quantities, moved in any order from any start, against fresh arithmetic."""
    a, b, c = (leaf(name, "2 ohm .. 5 ohm", "ohm") for name in "abc")
    ab = Computed("ab", lambda x, y: 3 * x - y, {"x": a, "y": b})
    abc = Computed("abc", lambda x, y: x * y, {"x": ab, "y": c})
    top = Computed("top", lambda x, y, z: x + 10 * y + 100 * z, {"x": abc, "y": ab, "z": b})
    dice = random.Random(5)
    corner: Mapping[str, float] = {}
    for _ in range(300):
        path, value = dice.choice("abc"), dice.choice((2.0, 3.0, 4.0, 5.0))
        moved = Moved(corner, path, value)
        full = {"a": 3.5, "b": 3.5, "c": 3.5} | moved.corner()
        x, y, z = (full[name] for name in "abc")
        assert top.value(moved) == (3 * x - y) * z + 10 * (3 * x - y) + 100 * y
        assert top.value(moved.corner()) == top.value(moved)
        if dice.random() < 0.5:
            corner = moved.corner()

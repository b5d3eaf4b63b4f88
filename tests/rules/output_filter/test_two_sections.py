"""Filters of two sections against their node equations, solved as matrices on a fine grid."""

import numpy as np
import pytest

from ampreview.linter.finding import Severity, Status
from ampreview.rules.formulas.lc import two_section_lower, two_section_peak, two_section_upper
from ampreview.rules.output_filter.filter_damping_two_sections import TWO

from ..whole import answer

GRID = np.geomspace(3e3, 2e6, 6001)
OPEN = 1e12


def solved(parts: tuple[float, ...], grid: np.ndarray = GRID) -> np.ndarray:
    """Voltage at the load over that of the stage, relative to low frequency."""
    l_1, c_1, r_load, r_series, l_2, c_2, r_damper, c_damper = parts
    s = 2j * np.pi * grid
    first, second = 1 / (r_series + s * l_1), 1 / (s * l_2)
    end = 1 / r_load + s * c_2 + s * c_damper / (1 + s * r_damper * c_damper)
    nodes = np.array([[first + s * c_1 + second, -second], [-second, second + end]])
    source = np.stack([first, 0 * first], axis=-1)[..., None]
    found = np.linalg.solve(np.moveaxis(nodes, -1, 0), source)[:, 1, 0]
    return np.abs(found) * (1 + r_series / r_load)


def drawn(seed: int) -> tuple[float, ...]:
    rng = np.random.default_rng(seed)
    low = np.array([8e-6, 0.2e-6, 8.0, 0.03, 0.5e-6, 0.05e-6, 2.0, 0.1e-6])
    high = np.array([47e-6, 1.5e-6, 60.0, 0.3, 22e-6, 1e-6, 20.0, 2e-6])
    values = low * (high / low) ** rng.random(8)
    values[7] *= seed % 2  # every other one has no damper
    return tuple(float(x) for x in values)


@pytest.mark.parametrize("seed", range(16))
def test_peak_of_filters_at_random(seed: int) -> None:
    parts = drawn(seed)
    fine = solved(parts).max()
    found = two_section_peak(*parts, 1.0, 0.0)
    assert found <= fine * 1.02  # the grid itself misses the very top of a narrow peak
    if fine > 1.5:
        assert found == pytest.approx(fine, rel=0.03)


@pytest.mark.parametrize("seed", range(4))
def test_natural_frequencies_are_those_of_the_matrix(seed: int) -> None:
    """Capacitances times voltages against inverse inductances: a generalised eigenvalue."""
    l_1, c_1, _, _, l_2, c_2, *_ = drawn(seed)
    inverse = np.array([[1 / l_1 + 1 / l_2, -1 / l_2], [-1 / l_2, 1 / l_2]])
    w = np.sqrt(np.linalg.eigvals(np.diag([1 / c_1, 1 / c_2]) @ inverse).real)
    found = [mode(l_1, c_1, l_2, c_2) for mode in (two_section_lower, two_section_upper)]
    assert found == pytest.approx(sorted(w / (2 * np.pi)))


def test_a_second_section_no_longer_hides_a_filter_that_rings() -> None:
    """16 ohm behind 15 uH, 0.47 uF, 3.3 uH and 0.33 uF: 3.4 times; 4 ohm: level."""
    assert answer("filter-damping", TWO.replace("LOAD", "16 ohm")).status is Status.NOT_APPLICABLE
    found = answer("filter-damping-two-sections", TWO.replace("LOAD", "16 ohm"))
    assert found.severity is Severity.MAJOR
    fine = solved((15e-6, 0.47e-6, 16.0, 0.02, 3.3e-6, 0.33e-6, 1.0, 0.0)).max()
    assert found.evidence.figure == pytest.approx(fine, rel=0.03)


def test_the_corner_of_two_sections_is_the_lower_natural_frequency() -> None:
    """Both corners alone lie above 20 kHz; together they ring at 18 kHz."""
    text = TWO.replace("LOAD", "4 ohm").replace("15 uH", "22 uH").replace("470 nF", "1 uF")
    text = text.replace("3.3 uH, c: 330 nF", "22 uH, c: 1.5 uF")
    found = answer("filter-corner", text + "    band: 20 Hz .. 20 kHz\n")
    lower = two_section_lower(22e-6, 1e-6, 22e-6, 1.5e-6)
    assert found.evidence.figure == pytest.approx(lower / 20e3)
    assert found.severity is Severity.MINOR


def test_a_resonance_that_nothing_damps_has_a_peak_and_no_division_by_zero() -> None:
    """The inductor at the very end of its tolerance: reactances cancel to the last digit."""
    lossless = (3.99084132777e-14, 9.03435122934e-07, 8.0, 0.0, 68e-6, 330e-9, 1.0, 0.0)
    assert two_section_peak(*lossless, 1.0, 0.0) > 1e3

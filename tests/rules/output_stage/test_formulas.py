"""Formulas of the output stage at their bounds, and with no input at one or zero."""

import math

import pytest

from ampreview.rules.derived.losses import with_load
from ampreview.rules.formulas.losses import idle_loss
from ampreview.rules.formulas.ringing import current_overshoot, snubber_share
from ampreview.rules.formulas.switching import (
    dead_time_distortion,
    dead_time_errors,
    distorting_dead_time,
    slope,
)


def test_slope_of_the_edge() -> None:
    """80 % of 60 V in 12 ns."""
    assert slope(60.0, 12e-9) == pytest.approx(4e9)


def test_idle_heat_adds_the_core_once() -> None:
    """Two legs: (4 + 2) uJ at 400 kHz and 3 A^2 of ripple, 0.3 ohm; 1.5 W in the cores."""
    per_leg = 6e-6 * 400e3 + 3.0**2 / 12 * 0.3
    assert idle_loss(2.0, 400e3, 6e-6, 3.0, 0.3, 1.5) == pytest.approx(2 * per_leg + 1.5)


def test_overshoot_goes_from_step_to_ramp_where_both_are_equal() -> None:
    root = math.sqrt(10e-9 * 400e-12)
    step = 8.0 * math.sqrt(10e-9 / 400e-12)
    assert current_overshoot(8.0, 10e-9, 400e-12, 1.9 * root) == pytest.approx(step)
    assert current_overshoot(8.0, 10e-9, 400e-12, 6 * root) == pytest.approx(step / 3)


@pytest.mark.parametrize(("ratio", "counted"), [(0.5, 0.5), (3.5, 3.5), (4.0, 4.0), (6.0, 4.0)])
def test_snubber_beyond_the_fit_helps_no_more(ratio: float, counted: float) -> None:
    assert snubber_share(ratio * 300e-12, 300e-12) == pytest.approx(1 / (1 + 0.43 * counted))


@pytest.mark.parametrize("falls", [False, True])
def test_error_of_the_dead_time_along_a_quarter_wave(falls: bool) -> None:
    """Twice the share of the period is lost beyond the clean current; a loop slows as 1 - m^2."""
    found = dead_time_errors(0.8, 0.01, 0.2, falls)
    for k, error in enumerate(found):
        m = 0.8 * math.sin((k + 0.5) * math.pi / 2 / len(found))
        clean = 0.2 if falls else 0.2 * (1 - m * m)
        lost = 0.02 * (1 - m * m) if falls else 0.02
        assert error == pytest.approx(min(max(m - clean, 0.0), lost), abs=1e-15)


def test_distorting_dead_time_is_never_negative() -> None:
    assert distorting_dead_time(20e-9, 10e-9, 50e-9) == 0.0
    assert distorting_dead_time(60e-9, 10e-9, 50e-9) == pytest.approx(20e-9)


def test_output_charge_that_idle_holds_already_is_not_counted_twice() -> None:
    """Without ripple both idle edges are hard: load adds nothing; all of it where they are soft."""
    common = (1.0, 60.0, 5.0, 0.5, 0.0, 400e3, 2.0, 0.0, 0.8, 40e-9, "natural-sampling")
    rest = ("two-level", "none", 0.0, 1e-15, 0.0)
    hard = with_load(*common, 10e-9, 0.0, *rest)
    assert hard == pytest.approx(with_load(*common, 0.0, 0.0, *rest))
    soft = with_load(*common, 10e-9, 9.0, *rest)  # half of it, 4.5 A, below the peak of 5 A
    share = 1 - 2 / math.pi * math.asin(0.9)
    idle_diodes = 2 * 0.8 * (4.5 * 40e-9 * 0.968 - 40e-9)
    diodes = max(4 * 0.8 * 5.0 * 40e-9 / math.pi - idle_diodes, 0.0) * 400e3
    assert soft == pytest.approx(share * 20e-9 * 60.0 * 400e3 + diodes)


def test_dead_time_that_eats_the_whole_signal_leaves_all_distortion() -> None:
    """A depth of 0.01 against a loss of 0.2: no fundamental is left, which counts as 100 %."""
    assert dead_time_distortion(0.01, 0.1, 0.0, 0.0, 1.0) == 1.0
    assert 0.0 < dead_time_distortion(0.8, 0.01, 0.0, 0.0, 1.0) < 0.1

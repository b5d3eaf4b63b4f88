"""Figures of the output stage with every input away from one and zero, by hand."""

import math

import pytest

from ampreview.rules.output_stage.dead_time_margin import figure as margin
from ampreview.rules.output_stage.dead_time_soft_switching import figure as soft
from ampreview.rules.output_stage.drain_current_margin import figure as drain
from ampreview.rules.output_stage.trip_below_destruction import figure as destruction


def test_soft_edge_by_charge() -> None:
    """1.5 A for 40 ns are 60 nC; two devices each way of 10 nC hold 40 nC."""
    assert soft(3.0, 40e-9, 2.0, 10e-9) == pytest.approx(1.5)


def test_margin_counts_the_mismatch_against_itself() -> None:
    assert margin(60e-9, 35e-9, 5e-9) == pytest.approx(20e-9)


def test_drain_current_by_samples() -> None:
    """Each switch carries the sine and its ripple for half of the time; two share it."""
    steps, total = 2000, 0.0
    for k in range(steps):
        for x in range(20):
            ripple = 12.0 * ((x + 0.5) / 20 - 0.5)
            total += (8.0 * math.sin(2 * math.pi * k / steps) + ripple) ** 2 / 2
    rms = math.sqrt(total / steps / 20) / 2
    rating = 20.0 * math.sqrt((175 - 100) / (175 - 25))
    found = drain(8.0, 12.0, 2.0, 20.0, 448.15, 373.15, 298.15, 1.0)
    assert found == pytest.approx(rms / rating, rel=2e-3)


@pytest.mark.parametrize(("i_trip", "followed"), [(8.0, 0.8), (15.0, 1.5), (40.0, 2.0)])
def test_top_of_a_short_circuit(i_trip: float, followed: float) -> None:
    """A bridge on 60 V, 10 uH less 30 % at 10 A: l / (1 + 3/7 (i/10)^2), followed to 20 A."""
    left = 10e-6 / (1 + 0.3 / 0.7 * followed**2)
    top = i_trip + 60.0 / left * 200e-9
    found = destruction(i_trip, 200e-9, 60.0, 2.0, 10e-6, 10.0, 0.3, 2.0, 80.0, 2.0)
    assert found == pytest.approx(top / 160)

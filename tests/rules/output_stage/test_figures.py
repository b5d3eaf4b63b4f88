"""Figures of the output stage with every input away from one and zero, by hand."""

import math

import pytest

from ampreview.rules.output_stage.dead_time_margin import figure as margin
from ampreview.rules.output_stage.dead_time_soft_switching import figure as soft
from ampreview.rules.output_stage.drain_current_margin import figure as drain


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
            ripple = 3.0 * ((x + 0.5) / 20 - 0.5)
            total += (8.0 * math.sin(2 * math.pi * k / steps) + ripple) ** 2 / 2
    rms = math.sqrt(total / steps / 20) / 2
    rating = 20.0 * math.sqrt((175 - 100) / (175 - 25))
    found = drain(8.0, 3.0, 2.0, 20.0, 448.15, 373.15, 298.15, 1.0)
    assert found == pytest.approx(rms / rating, rel=1e-3)

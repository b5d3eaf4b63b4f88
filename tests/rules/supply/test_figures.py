"""Figures of the supply with unlike channels, by hand."""

import pytest

from ampreview.rules.supply.clipping_power import figure as clipping
from ampreview.rules.supply.offset_pumping import figure as offset
from ampreview.rules.supply.rail_trough import figure as trough

INF = float("inf")


def test_square_wave_of_three_channels() -> None:
    """2 x 40 W; limited to 20 V peak in 4 ohm: 100 W; to 30 V rms in 7.5 ohm: 120 W; of 600 W."""
    found = clipping(
        (40.0, 200.0, 900.0), (4.0, 4.0, 7.5), (INF, 20.0, INF), (INF, INF, 30.0), 600.0
    )
    assert found == pytest.approx(0.5)


def test_offset_of_two_half_bridges_beside_a_bridge() -> None:
    """v/(2 r) (1 - v/rail) comes back; idle 2, 3, 4 W of both rails and 40 V in 100 ohm go.

    Insulation of 1e12 ohm takes nothing beside it.
    """
    back = 2.0 / (2 * 4.0) * (1 - 2.0 / 40) + 1.0 / (2 * 8.0) * (1 - 1.0 / 40)
    drawn = (2.0 + 3.0 + 4.0) / 80 + 40.0 / 100
    three = ((1.0, 1.0, 2.0), (2.0, 1.0, 3.0), (4.0, 8.0, 4.0), (2.0, 3.0, 4.0), 40.0, 100.0, 1e12)
    assert offset(*three, "no") == pytest.approx(back / drawn)
    assert offset(*three, "yes") == 0.0


@pytest.mark.parametrize(
    ("legs", "rails", "peak"),
    [
        (1.0, 1.0, 15.0),
        (1.0, 2.0, 30.0),
        (2.0, 1.0, 30.0),
        (2.0, 2.0, 60.0),
    ],
)
def test_crest_in_the_trough(legs: float, rails: float, peak: float) -> None:
    """50 W in 4 ohm have a crest of 20 V; 30 V a rail, nine tenths of it usable."""
    assert trough(50.0, 4.0, 0.9, legs, rails, 30.0) == pytest.approx(20.0 / (0.9 * peak))

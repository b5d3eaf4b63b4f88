"""Figures of the battery: every word, and the edge between slow and fast trips."""

import pytest

from ampreview.rules.battery.charge_temperature_sensor import figure as sensor
from ampreview.rules.battery.protection_trip_above_music import figure as trip
from ampreview.rules.battery.start_against_protection import figure as above_trip_at_start


@pytest.mark.parametrize(("word", "nearness"), [("none", 0.0), ("board", 1.0), ("cell", 2.0)])
def test_nearness_of_the_sensor(word: str, nearness: float) -> None:
    """None is critical (below 1), on the board is minor (below 2), at the cell is right."""
    assert sensor(word) == nearness


@pytest.mark.parametrize(("delay", "against"), [(11e-3, 12.0), (12.4e-3, 12.0), (12.6e-3, 7.0)])
def test_trip_slower_than_a_crest_sees_the_rms(delay: float, against: float) -> None:
    """Music of 40 Hz and 100 Hz: the power crests every 12.5 ms."""
    assert trip(9.0, delay, 12.0, 7.0, (100.0, 40.0)) == pytest.approx(9.0 / against)


def test_time_above_the_trip_by_a_simulated_charge() -> None:
    """Second method: the charge of 10 mF through 0.25 ohm from 25.2 V, stepped in time."""
    v, r, c, i_trip, delay, step = 25.2, 0.25, 10e-3, 40.0, 5e-3, 1e-6
    charged, above = 0.0, 0.0
    while (v - charged) / r > i_trip:
        charged += (v - charged) / r / c * step
        above += step
    found = above_trip_at_start(v / r, i_trip, v, c, delay)
    assert found == pytest.approx(above / delay, rel=1e-3)

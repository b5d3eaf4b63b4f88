"""A fan that stops, by hand: what the heatsink has in still air, and where a trip ends it.

A bridge of 100 W at 85 % of efficiency loses 17.65 W in a lasting sine, through 12 K/W and
1 K/W over 40 degC: 269 degC at the junction.  With 1 W idle, an eighth of the power loses
1 W + 16.65 W x 0.125^0.82 = 4.03 W, 48.3 K over the room.
"""

import pytest

from ampreview.linter.finding import Finding, Severity, Status
from ampreview.rules.thermal.stopped_fan_junction import BLOWN

from ..whole import answer

STAGE = "milestone: prototype\nenvironment: {altitude: 0 m, ambient: 0 degC .. 40 degC}\n" + BLOWN


def judged(check: str, trip: str = "none", **changed: str) -> Finding:
    """The answer of one check; changed: texts of the heatsink in place of others."""
    text = STAGE.replace("TRIP", trip)
    for old, new in changed.items():
        text = text.replace({"still": "r_th_sa: 12 K/W,"}[old], new)
    return answer(check, text)


def test_the_junction_follows_the_heatsink_in_still_air() -> None:
    found = judged("stopped-fan-junction")
    assert found.severity is Severity.CRITICAL
    assert found.evidence.figure == pytest.approx(150 - (40 + 13 * 17.647), abs=1.0)
    assert "Fan stopped" in found.message


def test_a_trip_at_the_heatsink_ends_it() -> None:
    """90 degC and 17.65 W through 1 K/W."""
    found = judged("stopped-fan-junction", "{t_trip: 90 degC, at: heatsink}")
    assert found.status is Status.MEETS
    assert found.evidence.figure == pytest.approx(150 - 90 - 17.65, abs=0.1)


def test_a_trip_that_is_not_known_to_reach_the_junction_does_not_pass() -> None:
    found = judged("stopped-fan-junction", "{t_trip: 90 degC, at: board}")
    assert found.status is Status.OPEN


def test_a_measured_heatsink_says_nothing_of_a_stopped_fan() -> None:
    cool = judged("stopped-fan-junction", still="r_th_sa: 12 K/W, t: 45 degC,")
    assert cool.evidence.figure == judged("stopped-fan-junction").evidence.figure


def test_a_fan_without_a_word_on_still_air_asks_for_it() -> None:
    found = judged("stopped-fan-junction", still="")
    assert found.status is Status.OPEN
    assert "thermal.heatsink.r_th_sa" in {item.path for item in found.advice.missing}


@pytest.mark.parametrize(
    ("trip", "left"),
    [
        ("none", 70 - 25 - 48.3),
        ("{t_trip: 60 degC, at: heatsink}", 70 - 60),
        ("{t_trip: 60 degC, at: case}", 70 - 60),
        ("{t_trip: 60 degC, at: board}", 70 - 25 - 48.3),
    ],
)
def test_the_surface_ends_where_a_trip_senses_it(trip: str, left: float) -> None:
    """Metal, touched for less than a second: 70 degC in a room of 25 degC."""
    found = judged("stopped-fan-touch", trip)
    assert found.evidence.figure == pytest.approx(left, abs=0.3)

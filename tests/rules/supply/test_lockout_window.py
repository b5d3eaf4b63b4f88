"""A lockout against the rail as it sags: constant power behind a resistance, by a quadratic."""

import pytest

from ampreview.linter.finding import Severity, Status

from ..whole import answer

CHECK = "under-voltage-trip-window"
SPEC = """supply: {{source: dc-source, rails: single, v_rail: 24 V{resistance}, bulk: {{c: 1 mF}}}}
channels:
  main:
    rated_power: 60 W
    rated_load: 4 ohm
    output_stage: {{topology: full-bridge, devices: integrated, efficiency: 90 %}}
protection: {{under_voltage: {{v_trip: {trip}}}}}"""


def asked(trip: str, resistance: str = ""):
    return answer(CHECK, SPEC.format(trip=trip, resistance=resistance))


def test_a_rail_that_sags_reaches_the_lockout() -> None:
    """60 W at 90 % are 66.7 W in the mean, and at most twice that at the crest: the rail of 24 V
    behind 0.3 ohm falls by 0.9 V at least and by 1.9 V at most."""
    low, high = (12 + (144 - 0.3 * p) ** 0.5 for p in (2 * 66.7, 66.7))
    assert (low, high) == (pytest.approx(22.2, abs=0.05), pytest.approx(23.1, abs=0.05))
    assert asked("23.3 V").status is Status.MEETS
    assert asked("23.3 V", ", r_source: 0.3 ohm").severity is Severity.MAJOR
    assert asked("21 V", ", r_source: 0.3 ohm").status is Status.MEETS
    assert asked("24.5 V").severity is Severity.MAJOR

"""What is asked about the over-current trip, and what counts as stated."""

import pytest

from ampreview.linter.finding import Finding, Severity, Status

from ..whole import answer as answer_of

STAGE = """milestone: prototype
supply: {source: dc-source, rails: single, v_rail: 24 V}
channels:
  main:
    rated_load: 4 ohm
    loudspeaker: {z_rated: 4 ohm, z_min: 3.2 ohm}
    output_stage: {topology: full-bridge, devices: DEVICES, over_current: OVER_CURRENT}
"""


def answer(check: str, devices: str, over_current: str) -> Finding:
    text = STAGE.replace("DEVICES", devices).replace("OVER_CURRENT", over_current)
    return answer_of(check, text.replace(", over_current: silent", ""))


def asked(found: Finding) -> set[str]:
    return {gap.path.removeprefix("channels.main.output_stage.") for gap in found.advice.missing}


TRIP, SENSING = "over_current.i_trip", "over_current.sensing"


@pytest.mark.parametrize(
    ("devices", "over_current", "questions"),
    [
        ("discrete", "silent", {TRIP, SENSING}),
        ("discrete", "{sensing: shunt}", {TRIP}),
        ("integrated", "silent", {TRIP}),  # a part senses its own current
        ("integrated", "{sensing: internal}", {TRIP}),
    ],
)
def test_trip_and_sensing_are_asked_at_once(devices, over_current, questions) -> None:
    found = answer("trip-above-music", devices, over_current)
    assert found.status is Status.OPEN
    assert asked(found) == questions


@pytest.mark.parametrize("devices", ["discrete", "integrated"])
def test_sensing_alone_is_no_protection(devices) -> None:
    found = answer("over-current-protection", devices, "{sensing: internal}")
    assert found.status is Status.OPEN
    assert asked(found) == {TRIP}
    assert asked(answer("over-current-protection", devices, "silent")) == {"over_current"}


@pytest.mark.parametrize("devices", ["discrete", "integrated"])
def test_a_trip_is_protection_and_none_is_not(devices) -> None:
    stated = answer("over-current-protection", devices, "{i_trip: 12 A}")
    assert stated.status is Status.MEETS
    none = answer("over-current-protection", devices, "none")
    assert none.severity is Severity.CRITICAL
    assert none.place is not None

"""What no paper promises is minor at the limit of good practice; far beyond it is major.

The limits stand in NIOSH 98-126 (3 dB halve the time), IEC 60268-5 (10 dB end the effective
range, from memory); figures are worked by hand beside each case.
"""

import pytest

from ampreview.linter.finding import Severity, Status
from ampreview.rules.sound.hearing_exposure import NEAR

from .whole import answer

# sine of 103.0 dB at 1 m behind the limiter of 20 V, programme 94.0 dB; 4 h allow 88 dBA
SAFETY = "{nearest_listener: 1 m, exposure_time: 4 h, exposure_rule: niosh}"


@pytest.mark.parametrize(
    ("safety", "check", "severity"),
    [
        ("1 m, hearing_notice: yes", "hearing-exposure-with-notice", Severity.MINOR),
        ("0.5 m, hearing_notice: yes", "hearing-exposure-with-notice", Severity.MAJOR),
        ("1 m, hearing_notice: no", "hearing-exposure", Severity.MAJOR),
        ("1 m", "hearing-exposure", Severity.MAJOR),
        ("1 m, hearing_notice: yes, exposure_rule: niosh", "hearing-exposure", Severity.MAJOR),
    ],
)
def test_a_notice_without_a_claimed_rule_is_minor_within_ten_decibels(
    safety: str, check: str, severity: Severity
) -> None:
    """6 dB above at 1 m, 12 dB above at half of it."""
    assert SAFETY in NEAR
    text = NEAR.replace(SAFETY, f"{{exposure_time: 4 h, nearest_listener: {safety}}}")
    assert answer(check, text).severity is severity


DETECTOR = """
supply: {source: dc-source, rails: single, converter: none, v_rail: 11 V .. 15 V}
protection: {dc_detector: {v_trip: TRIP, t_trip: 300 ms}}
channels: {main: {rated_power: 11 W}}
"""


@pytest.mark.parametrize(("trip", "severity"), [("2.5 V", Severity.MINOR), ("4 V", Severity.MAJOR)])
def test_a_detector_above_a_fifth_of_the_rail_still_sees_a_shorted_switch(
    trip: str, severity: Severity
) -> None:
    """2.5 V are 1.14 of 2.2 V; a dead bridge gives 11 V. 4 V are 1.8 of it."""
    assert answer("dc-detector-threshold", DETECTOR.replace("TRIP", trip)).severity is severity


FILTER = """
channels:
  main:
    band: 20 Hz .. 20 kHz
    rated_load: 4 ohm
    output_stage: {topology: half-bridge}
    modulator: {feedback: before-filter}
    filter: {inductor: {l: INDUCTOR, dcr: 1 mohm}, c_across: {c: 680 nF, dielectric: polypropylene},
      c_ground: none, second_stage: none, damper: none}
"""


# |1 - x^2 + j x/Q| at 20 kHz by hand: 56 uH 5.1 dB down, 220 uH 17.0 dB down
@pytest.mark.parametrize(
    ("inductor", "severity"), [("56 uH", Severity.MINOR), ("220 uH", Severity.MAJOR)]
)
def test_treble_that_nobody_promised(inductor: str, severity: Severity) -> None:
    text = FILTER.replace("INDUCTOR", inductor)
    assert answer("treble-response-unclaimed", text).severity is severity
    assert answer("treble-response", text).status is Status.NOT_APPLICABLE
    claimed = text + "claims: {response: 3 dB}\n"
    assert answer("treble-response", claimed).severity is Severity.MAJOR
    assert answer("treble-response-unclaimed", claimed).status is Status.NOT_APPLICABLE

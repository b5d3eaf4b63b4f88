"""Clipped power where clip onset, rating or rail is not stated: what the engine answers."""

import pytest

from ampreview.linter.finding import Finding, Severity, Status

from ..whole import answer as answer_of

# TPA3136D2 on 12 V, 4 ohm, with the loudspeaker of a product: 3 W (e2e.ti.com thread 651100)
THREE_WATT = """milestone: prototype
supply: {source: dc-source, rails: single, v_rail: 12 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: full-bridge, devices: integrated}
    loudspeaker: {z_rated: 4 ohm, p_rated: 3 W}
    limiter: none
"""
NOISE = "{} W, rating_method: aes2-1984"


def answer(text: str) -> Finding:
    """The answer of loudspeaker-clipped-power."""
    return answer_of("loudspeaker-clipped-power", text)


def test_the_rails_alone_show_a_loudspeaker_far_too_small() -> None:
    """18 W of sine, 36 W clipped, twelve times 3 W; 7.7 times at 80 % of the voltage."""
    found = answer(THREE_WATT)
    assert found.evidence.figure == pytest.approx(12.0)
    assert found.severity is Severity.CRITICAL


@pytest.mark.parametrize(("rated", "figure"), [("6 W", 6.0), ("8 W", 4.5)])
def test_an_upper_bound_alone_convicts_nobody(rated: str, figure: float) -> None:
    """At 80 % of the voltage 3.84 and 2.88 times: neither critical nor major for certain."""
    found = answer(THREE_WATT.replace("3 W", rated))
    assert found.evidence.figure == pytest.approx(figure)
    assert found.status is Status.OPEN


def test_what_the_rails_cannot_overload_is_met_whatever_the_losses() -> None:
    """36 W clipped on 20 W are 1.8; a rating of unknown method may be a programme rating."""
    found = answer(THREE_WATT.replace("3 W", NOISE.format(20)))
    assert found.status is Status.MEETS
    assert found.evidence.figure == pytest.approx(1.8)
    silent = answer(THREE_WATT.replace("3 W", "20 W"))
    assert silent.status is Status.OPEN
    (missing,) = silent.advice.missing
    assert missing.path == "channels.main.loudspeaker.rating_method"


def test_without_rail_and_rating_it_stays_open() -> None:
    text = THREE_WATT.replace(", v_rail: 12 V", "")
    assert answer(text).status is Status.OPEN


def test_a_rating_beyond_the_rail_makes_no_critical() -> None:
    """160 W claimed from 24 V into 8 ohm: 36 W of sine, 72 W clipped on 30 W."""
    text = THREE_WATT.replace("12 V", "24 V").replace("4 ohm", "8 ohm")
    text = text.replace("3 W", NOISE.format(30))
    found = answer(text.replace("rated_load", "rated_power: 160 W\n    rated_load"))
    assert found.evidence.figure == pytest.approx(2.4)
    assert found.severity is Severity.MINOR

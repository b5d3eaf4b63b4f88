"""High-pass against the promised band: scipy, by hand, and what is not judged."""

import math

import numpy as np
import pytest
from scipy import signal

from ampreview.linter.finding import Status
from ampreview.rules.formulas.acoustics import decibel
from ampreview.rules.formulas.driver import sealed_response
from ampreview.rules.loudspeaker.high_pass_in_band import figure

from ..whole import answer as answer_of


@pytest.mark.parametrize("order", [1, 2, 3, 4, 8])
@pytest.mark.parametrize("f", [12.0, 25.0, 60.0, 224.0])
def test_against_scipy(order: int, f: float) -> None:
    numerator, denominator = signal.butter(order, 2 * np.pi * f, "highpass", analog=True)
    _, response = signal.freqs(numerator, denominator, [2 * np.pi * 25.0])
    taken = -20 * np.log10(abs(response[0]))
    assert figure(f, order, 25.0) == pytest.approx(taken, abs=1e-7)


def test_a_corner_above_the_band_takes_more_than_3_db_from_all_of_it() -> None:
    """224 Hz, fourth order: 10 log10(1 + 8.96^8) = 76.2 dB at 25 Hz, 5.4 dB at 200 Hz."""
    assert figure(224.0, 4, 25.0) == pytest.approx(76.18, abs=0.01)
    assert figure(224.0, 4, 200.0) == pytest.approx(5.41, abs=0.01)
    assert figure(224.0, 1, 200.0) > 3.01


def answer(channel: str) -> tuple[Status, str]:
    found = answer_of("high-pass-in-band", f"channels: {{sub: {{{channel}}}}}\n", "prototype")
    return found.status, found.severity or ""


BAND = "band: 25 Hz .. 200 Hz, "


@pytest.mark.parametrize(
    ("high_pass", "severity"),
    [
        ("{f: 25 Hz, order: 8}", ""),  # 3 dB at any order
        ("{f: 32 Hz, order: 2}", ""),  # 5.7 dB
        ("{f: 33 Hz, order: 2}", "minor"),  # 6.1 dB
        ("{f: 44 Hz, order: 2}", "major"),  # 10.2 dB
        ("{f: 224 Hz}", "major"),  # first order: 19.1 dB
    ],
)
def test_severity(high_pass: str, severity: str) -> None:
    status = Status.FINDING if severity else Status.MEETS
    assert answer(f"{BAND}loudspeaker: {{high_pass: {high_pass}}}") == (status, severity)


def test_without_band_or_high_pass_nothing_fails() -> None:
    assert answer("loudspeaker: {high_pass: {f: 224 Hz, order: 4}}")[0] is Status.OPEN
    for spec in ("loudspeaker: {high_pass: none}", "loudspeaker: {z_rated: 8 ohm}"):
        assert answer(BAND + spec)[0] is Status.NOT_APPLICABLE


def test_the_box_of_a_subwoofer_takes_what_its_nodes_give() -> None:
    """Mass, spring and damper of the cone with the air spring of the box, solved at 28 Hz."""
    f_s, q_ts, alpha, f = 32.0, 6 * 0.42 / 6.42, 120 / 90, 28.0
    s = 2j * math.pi * f
    mass = 1.0
    spring = (2 * math.pi * f_s) ** 2 * mass
    damper = 2 * math.pi * f_s * mass / q_ts
    cone = 1 / (s**2 * mass + s * damper + spring * (1 + alpha))
    loss = -20 * math.log10(abs(s**2 * mass * cone))
    assert loss == pytest.approx(-decibel(sealed_response(f, f_s, q_ts, alpha)), rel=1e-9)
    assert loss == pytest.approx(10.9, abs=0.2)  # by hand: f_c 48.9 Hz, Q 0.6

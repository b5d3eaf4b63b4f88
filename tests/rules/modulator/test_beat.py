"""Beats between clocks: spectra of square waves, and what the spec says of the clocks."""

from math import inf

import numpy as np
import pytest

from ampreview.linter.finding import Finding, Severity, Status
from ampreview.rules.modulator.channel_beat import apart

from ..whole import answer


def judge(carriers: tuple[str, ...], locked: str, converter: str = "") -> Finding:
    supply = f"supply: {{converter: step-up{converter}}}\n" if converter else ""
    channels = "".join(
        f"  c{n}: {{modulator: {{carrier: {text}, locked: {locked}}}}}\n"
        for n, text in enumerate(carriers)
    )
    return answer("channel-beat", f"{supply}channels:\n{channels}", "prototype")


def lowest_beat(one: int, other: int) -> int:
    """Lowest strong tone below 25 kHz in the product of two square waves, in steps of 1 kHz.

    One of the two is off half duty, so that it has a second harmonic.
    """
    t = np.arange(2**16) / 2**16
    a = np.where((one * t) % 1 < 0.3, 1.0, -1.0)
    b = np.where((other * t) % 1 < 0.3, 1.0, -1.0)
    spectrum = abs(np.fft.rfft((a - a.mean()) * (b - b.mean())))[:25]
    return int(np.flatnonzero(spectrum > 0.3 * spectrum.max())[0])


@pytest.mark.parametrize(("one", "other"), [(330, 340), (330, 108), (400, 210), (250, 493)])
def test_beat_by_the_spectrum_of_the_product(one: int, other: int) -> None:
    assert apart(float(one), float(other)) == lowest_beat(one, other)
    assert apart(float(other), float(one)) == lowest_beat(one, other)


def test_the_fourth_harmonic_is_left_out() -> None:
    assert apart(400e3, 101e3) == pytest.approx(400e3 - 3 * 101e3)


@pytest.mark.parametrize(
    ("carriers", "locked", "converter", "figure", "severity"),
    [
        (("330 kHz", "340 kHz"), "no", ", converter_frequency: 108 kHz", 6e3, Severity.MAJOR),
        (("250 kHz", "250 kHz"), "no", "", 0.0, Severity.MAJOR),
        (("400 kHz", "417 kHz"), "no", "", 17e3, Severity.MINOR),
        # 330 against 331.2 kHz at the ends; in squares 60 - hypot(30, 28.8) = 18.4 kHz
        (("300 kHz ± 10 %", "360 kHz ± 8 %"), "no", "", 1.2e3, Severity.MINOR),
        # they overlap; in squares 60 - hypot(45, 54) is below zero
        (("300 kHz ± 15 %", "360 kHz ± 15 %"), "no", "", 0.0, Severity.MAJOR),
        (("400 kHz", "400 kHz"), "channels", ", converter_frequency: 403 kHz", 3e3, Severity.MAJOR),
    ],
)
def test_clocks_that_beat(carriers, locked, converter, figure, severity) -> None:
    found = judge(carriers, locked, converter)
    assert found.evidence.figure == pytest.approx(figure, abs=1.0)
    assert found.severity is severity


def test_channels_on_one_clock_do_not_beat_with_each_other() -> None:
    equal = ("400 kHz", "400 kHz")
    assert judge(equal, "channels", ", converter_frequency: 600 kHz").status is Status.MEETS
    alone = judge(equal, "channels")  # nothing but each other, which is one clock
    assert (alone.status, alone.evidence.figure) == (Status.MEETS, inf)
    assert judge(equal, "no").severity is Severity.MAJOR
    assert judge(equal[:1], "channels").status is Status.NOT_APPLICABLE


def test_a_converter_of_unknown_frequency_is_asked_for_and_hides_no_whistle() -> None:
    found = judge(("400 kHz",), "no", " ")
    assert found.status is Status.OPEN
    assert [item.path for item in found.advice.missing] == ["supply.converter_frequency"]
    assert judge(("400 kHz", "403 kHz"), "no", " ").severity is Severity.MAJOR

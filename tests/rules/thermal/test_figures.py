"""Figures of heat with every input away from one and zero, by hand."""

import math

import pytest

from ampreview.rules.thermal.burst_temperature import figure as burst
from ampreview.rules.thermal.thermal_test_condition import figure as condition

SINE = 10 * math.log10(2)


@pytest.mark.parametrize(
    ("basis", "share"),
    [
        ("one-eighth", 0.125),
        ("one-third", 1 / 3),
        ("full-sine", 1.0),
    ],
)
def test_cooling_for_a_share_of_the_power(basis: str, share: float) -> None:
    """Programme with a crest of 9 dB has a quarter of the power of its sine."""
    assert condition(basis, 10 * math.log10(8), SINE) == pytest.approx(share * 4)


def test_burst_by_superposition() -> None:
    """20 ms of 30 W four times as seldom as they are long, two stages, summed pulse by pulse."""
    rise = 0.0
    for k in range(4000):
        for r, tau in ((0.5, 5e-3), (2.0, 0.4)):
            since = 0.02 + 0.08 * k
            rise += 30.0 * r * (math.exp(-(since - 0.02) / tau) - math.exp(-since / tau))
    found = burst(423.15, 353.15, 30.0, (0.5, 2.0), (5e-3, 0.4), 0.02, 10 * math.log10(8), SINE)
    assert found == pytest.approx(70.0 - rise, rel=1e-6)


def test_a_sine_is_one_long_burst() -> None:
    """No programme is denser than a sine: the steady rise of all stages."""
    found = burst(423.15, 353.15, 30.0, (0.5, 2.0), (5e-3, 0.4), 0.02, 2.0, SINE)
    assert found == pytest.approx(70.0 - 75.0)

"""Limiters against the rated power, by a sampled sine and sampled noise."""

import math
import random

import pytest

from ampreview.rules.claims.limiter_below_rated_crest import figure as crest
from ampreview.rules.claims.limiter_below_rated_power import figure as long_term
from ampreview.rules.output_stage.stage_capacitor_voltage import figure as capacitors

ANGLES = [2 * math.pi * n / 1000 for n in range(1000)]


def test_a_sine_of_the_rated_power_just_passes() -> None:
    sine = [24.0 * math.sin(angle) for angle in ANGLES]
    power = sum(v * v for v in sine) / len(sine) / 6.0
    assert crest(max(sine), power, 6.0) == pytest.approx(1.0, rel=1e-5)
    rms = (sum(v * v for v in sine) / len(sine)) ** 0.5
    assert long_term(rms, power, 6.0) == pytest.approx(1.0)


def test_music_of_the_rated_crest_has_an_eighth_of_the_power() -> None:
    """Noise four times as high as its rms value: the limit of 0.35 lets it just pass."""
    dice = random.Random(1)
    noise = [dice.gauss(0.0, 1.0) for _ in range(20000)]
    rms = (sum(v * v for v in noise) / len(noise)) ** 0.5
    peak = 4 * rms
    assert long_term(rms, peak**2 / 2 / 6.0, 6.0) == pytest.approx(8**-0.5)
    assert 0.35 < 8**-0.5 < 0.36


@pytest.mark.parametrize(
    ("ratings", "expected"),
    [
        ((50.0, 100.0, 100.0), 1.6),
        ((100.0, 50.0, 100.0), 1.6),
        ((100.0, 100.0, 20.0), 2.0),
        ((math.inf, 100.0, math.inf), 0.8),
    ],
)
def test_the_weakest_capacitor_decides(ratings: tuple[float, ...], expected: float) -> None:
    """80 V across the leg, 40 V across the damper."""
    assert capacitors(80.0, 40.0, *ratings) == pytest.approx(expected)

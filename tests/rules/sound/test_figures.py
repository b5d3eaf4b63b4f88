"""Exposure with every input away from one and zero, by hand."""

import math

import pytest

from ampreview.rules.sound.hearing_exposure import figure as exposure


def test_level_at_the_ear_against_the_rule() -> None:
    """120 dB of sine, 12.04 dB of crest: 9.03 dB less; 4 m: 12.04 less; 2 h after NIOSH: 91."""
    at_ear = 120.0 - 10 * math.log10(8) - 20 * math.log10(4.0)
    found = exposure(120.0, 10 * math.log10(16), 4.0, 7200.0, "niosh", 1.0, 3600.0)
    assert found == pytest.approx(at_ear - 91.0, abs=0.01)

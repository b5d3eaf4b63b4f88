"""The most that the rails give at a stated largest modulation depth."""

import pytest

from ampreview.rules.derived.rated import most_power


def test_a_stated_depth_bounds_the_crest() -> None:
    """24 V bridge at half depth: a crest of 12 V, 144 / 8 = 18 W into 4 ohm."""
    assert most_power(24.0, 0.5, 4.0, 2, 0.0, 1, 0.0, 0.0) == pytest.approx(18.0)


def test_at_full_depth_the_rails_alone_count() -> None:
    """The same bridge at full depth: 576 / 8 = 72 W."""
    assert most_power(24.0, 1.0, 4.0, 2, 0.0, 1, 0.0, 0.0) == pytest.approx(72.0)

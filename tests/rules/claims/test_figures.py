"""Figures of claims with unlike channels, by hand."""

import pytest

from ampreview.rules.claims.efficiency_plausibility import figure as plausible


def test_output_of_all_channels_over_the_input() -> None:
    """40, 60 and 90 W from 250 W are 76 %: a claim of 85 % is 9 points too much."""
    assert plausible(0.85, (40.0, 60.0, 90.0), 250.0) == pytest.approx(0.09)

"""Windows of common cells, as their makers print them."""

import pytest

from ..whole import answer

SPEC = """milestone: prototype
environment: {{ambient: {air}}}
supply: {{source: battery}}
battery: {{chemistry: {kind}, charger: {{sensor: cell, t_window: {window}}}}}
channels:
  main: {{rated_power: 40 W}}
"""


@pytest.mark.parametrize(
    ("kind", "low", "high"),
    [
        ("lfp", 0.0, 45.0),  # AA Portable Power LFP-26650-3300: charge from 0 to 45 degC
        ("nimh", 0.0, 45.0),  # Panasonic HHR70AAAJ: standard charge from 0 to 45 degC
    ],
)
def test_a_charger_is_measured_by_the_window_of_its_chemistry(kind, low, high) -> None:
    text = SPEC.format(kind=kind, window="-3 degC .. 47 degC", air="0 degC .. 40 degC")
    assert answer("charge-in-cold", text).evidence.figure == pytest.approx(-3.0 - low)
    assert answer("charge-in-heat", text).evidence.figure == pytest.approx(high - 47.0)


def test_nickel_cells_are_used_down_to_minus_10() -> None:
    """Panasonic HHR70AAAJ: discharge from -10 to 65 degC."""
    text = SPEC.format(kind="nimh", window="0 degC .. 40 degC", air="-15 degC .. 40 degC")
    assert answer("discharge-in-cold", text).evidence.figure == pytest.approx(-5.0)

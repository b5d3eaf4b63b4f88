"""Figures of the output filter with every input away from one and zero, second methods."""

import math

import pytest

from ampreview.rules.output_filter.carrier_heats_loudspeaker import figure as coil_heat
from ampreview.rules.output_filter.damper_power import figure as damper_power
from ampreview.rules.output_filter.damper_size import figure as damper_size


def test_carrier_in_four_coils_by_node_equations() -> None:
    """Six coils, two in series and three such strings: the heat of the residual in all."""
    f, l_total, c_total, n_legs, dcr = 400e3, 44e-6, 0.47e-6, 2.0, 0.03
    s = 2j * math.pi * f
    load = 6.0 + s * 0.5e-3 * 2 / 3
    branch = 1 / (s * c_total + 1 / load)
    across = branch / (branch + s * l_total + n_legs * dcr)
    drive = 4 / math.pi * 24.0 / math.sqrt(2)  # fundamental of +-24 V across a bridge, rms
    watts = abs(drive * across / load) ** 2 * 6.0
    found = coil_heat(24.0, "two-level", f, l_total, c_total, n_legs, dcr, 6.0, 0.5e-3, 2.0, 3.0,
                      0.5)
    assert found == pytest.approx(watts / (0.5 * 6), rel=1e-9)


@pytest.mark.parametrize(("connection", "legs", "share"), [
    ("across-load", 2.0, 1.0), ("each-terminal", 2.0, 2.0), ("each-terminal", 1.0, 1.0),
])
def test_damper_at_programme_by_phasors(connection: str, legs: float, share: float) -> None:
    """20 V of sine at most, 12 dB of crest: the r of a series r-c takes |u/z|^2 r."""
    u = 20.0 * math.sqrt(2) / 10 ** (12.0 / 20) / share
    z = 10.0 + 1 / (2j * math.pi * 20e3 * 680e-9)
    sine = 10 * math.log10(2)
    found = damper_power(20.0, 12.0, sine, 20e3, 10.0, 680e-9, connection, legs, 0.5)
    assert found == pytest.approx(abs(u / z) ** 2 * 10.0 / 0.5, rel=1e-9)


def test_damper_of_each_terminal_is_two_in_series() -> None:
    """Two of r, c in series across the load are 2 r and c / 2: the same ratio."""
    l_total, c_total = 44e-6, 0.47e-6
    one = damper_size(20.0, 0.5e-6, "across-load", 2.0, l_total, c_total)
    two = damper_size(10.0, 1.0e-6, "each-terminal", 2.0, l_total, c_total)
    assert two == pytest.approx(one, rel=1e-12)
    low = damper_size(2.0, 0.5e-6, "across-load", 2.0, l_total, c_total)
    high = damper_size(200.0, 0.5e-6, "across-load", 2.0, l_total, c_total)
    assert low * high == pytest.approx(100.0)  # one lies below the best, the other above
    assert min(low, high) > 1.0

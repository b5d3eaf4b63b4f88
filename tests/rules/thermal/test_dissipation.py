"""Heat at part load, hot resistance and bursts, against published and simulated numbers."""

import numpy as np
import pytest

from ampreview.rules.derived.heat import summed_programme, summed_rated
from ampreview.rules.derived.thermal_use import conduction_slope
from ampreview.rules.formulas.dissipation import (
    efficiency_loss,
    hot_resistance,
    programme_share,
    pulse_rise,
)


def test_lab_gruppen_table_3() -> None:
    """2 x 1500 W: 1/3 power draws 1440 W, heat 440 W; 1/8 draws 685 W, heat 310 W."""
    assert efficiency_loss(1000, 1000 / 1440) == pytest.approx(440, rel=2e-3)
    assert efficiency_loss(375, 375 / 685) == pytest.approx(310, rel=2e-3)


def test_crest_factor_12_db_is_one_eighth() -> None:
    """A sampled sine has a crest factor of 3.01 dB; 9.03 dB more is one eighth."""
    sine = np.sin(np.linspace(0, 2 * np.pi, 100_000, endpoint=False))
    crest = 20 * np.log10(np.max(sine) / np.sqrt(np.mean(sine**2)))
    assert programme_share(crest + 10 * np.log10(8), crest) == pytest.approx(1 / 8)
    assert programme_share(12.0, 3.0103) == pytest.approx(1 / 7.92, rel=1e-3)


def test_hot_resistance_meets_both_printed_points_and_bends_upwards() -> None:
    """Exact at 25 and 150 degC; below the straight line between, above it beyond."""
    assert hot_resistance(0.05, 1.8, 298.15) == pytest.approx(0.05)
    assert hot_resistance(0.05, 1.8, 423.15) == pytest.approx(0.09)
    assert hot_resistance(0.05, 1.8, 373.15) < 0.05 * (1 + 0.8 * 75 / 125)
    assert hot_resistance(0.05, 1.8, 448.15) > 0.05 * (1 + 0.8 * 150 / 125)


def test_slope_of_conduction_by_finite_difference() -> None:
    """Loss of a bridge at two temperatures, written down anew."""

    def loss(t: float) -> float:
        return 2 * 0.058 * (t / 298.15) ** (np.log(1.8) / np.log(423.15 / 298.15)) * 7.75**2 / 2

    expected = (loss(380.01) - loss(379.99)) / 0.02
    assert conduction_slope(2, 1, 7.75, 0.058, 1.8, 380.0, 423.15) == pytest.approx(
        expected, rel=1e-4
    )


def test_conduction_of_a_bridge_by_simulation() -> None:
    """Mean square of a sine through one switch of each of two legs: 2 r I^2 / 2."""
    current = 5 * np.sin(np.linspace(0, 2 * np.pi, 10_000, endpoint=False))
    expected = np.mean(2 * 0.05 * current**2)
    heat = summed_rated(50, 0, 0, 0, 0, 2, 1, 5.0, 0.05, 1.8)
    assert heat.conduction == pytest.approx(expected)
    eighth = summed_programme(50, 0, 0, 0, 0, 2, 1, 5.0, 0.05, 1.8, 1 / 8)
    assert eighth.conduction == pytest.approx(expected / 8, rel=1e-4)


def test_burst_by_step_simulation() -> None:
    """12 W, 20 ms each 0.5 s, 2000 periods stepped: peak 27.69 K; first pulse 9.985 K."""
    r, tau = np.array([0.3, 0.7, 8, 30]), np.array([1e-3, 20e-3, 2, 60])
    rise = np.zeros(4)
    first = None
    for _ in range(2000):
        rise = 12 * r + (rise - 12 * r) * np.exp(-0.02 / tau)
        peak = rise.sum()
        first = peak if first is None else first
        rise = rise * np.exp(-0.48 / tau)
    assert first == pytest.approx(9.985, abs=1e-3)
    assert peak == pytest.approx(27.69, abs=5e-3)
    assert pulse_rise(12.0, tuple(r), tuple(tau), 0.02, 0.5) == pytest.approx(peak, rel=1e-6)
    assert pulse_rise(12.0, tuple(r), tuple(tau), 0.02, 1e6) == pytest.approx(first, rel=1e-6)

"""Gate drive against solved differential equations and iterated charge balances."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from ampreview.linter.check import Constant
from ampreview.linter.judging.review import review
from ampreview.linter.quantities.quantity import to_si
from ampreview.linter.reading.loading import load_text
from ampreview.rules.derived.gate_charge import THRESHOLD_FALLS, share_of_threshold, steepest_fall
from ampreview.rules.formulas.gate import (
    bootstrap_charge,
    bootstrap_minimum,
    gate_power,
    miller_bump,
    period_at,
    threshold_hot,
)
from ampreview.rules.formulas.switching import charge_time, edge_time, gate_loop, scaled_time
from ampreview.rules.gate_drive.bootstrap_hold_at_clipping import figure as hold
from ampreview.rules.gate_drive.miller_turn_on import figure as miller_share


@pytest.mark.parametrize(
    ("swing", "slope", "r", "c_gd", "c_gs", "printed"),
    [
        (100.0, 10e9, 5.0, 50e-12, 1500e-12, 1.812),
        (40.0, 5e9, 5.6, 145e-12, 3048e-12, 1.465),
        (40.0, 5e9, 3.6, 145e-12, 3048e-12, 1.309),
    ],
)
def test_bump_by_differential_equation(
    swing: float, slope: float, r: float, c_gd: float, c_gs: float, printed: float
) -> None:
    """Second and third: CSD19501KCS data sheet, charge over 40 V, two gate resistors."""

    def rate(_: float, v: np.ndarray) -> np.ndarray:
        return (c_gd * (slope - 0.0) - v / r) / (c_gd + c_gs)

    solved = solve_ivp(rate, (0.0, swing / slope), [0.0], rtol=1e-10, atol=1e-12)
    bump = miller_bump(swing, slope, r, c_gd, c_gs)
    assert bump == pytest.approx(float(solved.y[0, -1]), rel=1e-6)
    assert bump == pytest.approx(printed, rel=1e-3)


def test_bump_behind_an_open_gate_is_the_capacitive_divider() -> None:
    assert miller_bump(100.0, 10e9, 1e7, 50e-12, 1500e-12) == pytest.approx(
        100.0 * 50 / 1550, rel=1e-3
    )


def test_threshold_of_a_hot_device() -> None:
    """IRFB4020PbF data sheet, p. 2: 3.0 V at 25 degC and -13 mV/degC are 1.7 V at 125 degC."""
    assert threshold_hot(3.0, 398.15, 298.15, 13e-3) == pytest.approx(1.7)


@pytest.mark.parametrize(
    ("least", "typical", "fall"),
    [  # threshold in volts and its coefficient in mV/degC, as the data sheets print them
        (3.0, 3.95, 13.0),  # IRFB4020PbF; of 3.0 .. 4.9 V the middle
        (3.0, 4.0, 12.0),  # IRF6645
        (2.5, 3.6, 9.93),  # NVMTS4D3N15MC
        (2.0, 2.7, 10.0),  # FDMS86101DC
        (1.35, 1.8, 8.6),  # IRLR8726PbF
        (1.32, 1.6, 3.8),  # NTMFS4926N
    ],
)
def test_a_printed_fall_lies_between_the_assumed_ones(
    least: float, typical: float, fall: float
) -> None:
    steepest, slowest = (
        {name: constant(item) for name, item in way.inputs.items() if name != "v_gs_th"}
        for way in THRESHOLD_FALLS.ways
    )
    assert steepest_fall(least, **steepest) >= 0.999e-3 * fall
    assert share_of_threshold(typical, **slowest) <= 1.02e-3 * fall


def constant(item: object) -> float:
    assert isinstance(item, Constant)
    return to_si(item.value)


def test_edge_on_the_plateau_by_a_transistor_model() -> None:
    """Drain falls from 100 V at 5 A: v_th 3 V, 40 A/V, gate-drain charge 6 nC, 6 ohm, 12 V."""
    r, v_drv, v_th, gain, load, swing = 6.0, 12.0, 3.0, 40.0, 5.0, 100.0
    c_gd, c_gs, c_node = 6e-9 / swing, 1500e-12, 5e-12

    def rates(_: float, x: np.ndarray) -> np.ndarray:
        v_gs = x[0]
        channel = gain * max(v_gs - v_th, 0.0)
        # c_gs v_gs' + c_gd (v_gs' - v_ds') = gate current
        # c_node v_ds' + c_gd (v_ds' - v_gs') = load - channel
        matrix = [[c_gs + c_gd, -c_gd], [-c_gd, c_node + c_gd]]
        return np.linalg.solve(matrix, [(v_drv - v_gs) / r, load - channel])

    def nearly_on(_: float, x: np.ndarray) -> float:
        return float(x[1] - 0.05 * swing)

    nearly_on.terminal = True  # type: ignore[attr-defined]
    plateau = v_th + load / gain
    solved = solve_ivp(
        rates,
        (0.0, 20e-9),
        [plateau, swing],
        method="Radau",
        events=nearly_on,
        dense_output=True,
        rtol=1e-6,
    )
    times = np.linspace(0.0, solved.t[-1], 20001)
    drain = solved.sol(times)[1]
    below = times[drain < 0.1 * swing][0] - times[drain < 0.9 * swing][0]
    assert plateau == 3.125
    assert charge_time(6e-9, r, v_drv - plateau) == pytest.approx(4.056e-9, rel=1e-3)
    assert 0.8 * charge_time(6e-9, r, v_drv - plateau) == pytest.approx(below, rel=0.05)
    both = edge_time(6e-9, r, r, v_drv, plateau)
    assert both == pytest.approx(0.8 * (4.056e-9 + 11.52e-9) / 2, rel=1e-3)


def test_gate_loop_of_a_driver_shared_by_two_devices() -> None:
    """Each device sees twice the driver's resistance: two loops in parallel draw its current."""
    one = gate_loop(12.0, 2.0, 2.0, 0.0, 0.0)
    assert 2 * 12.0 / one == pytest.approx(2.0)


def test_printed_time_behind_the_same_resistance_stays() -> None:
    assert scaled_time(16e-9, 5.6, 2.4, 3.2, 0.5) == pytest.approx(16e-9)
    assert scaled_time(16e-9, 11.2, 2.4, 3.2, 0.5) == pytest.approx(32e-9)
    assert scaled_time(16e-9, 1.0, 0.0, 0.0, 0.5) == pytest.approx(32e-9)


def iterated_minimum(
    v_drv: float, v_f: float, charge: float, c: float, r: float, t_refill: float
) -> float:
    """Charge and refill in turn until the lowest voltage stays."""
    top = v_drv - v_f
    v = top
    for _ in range(200000):
        low = v - charge / c
        after = top - (top - low) * np.exp(-t_refill / (r * c))
        if abs(after - v) < 1e-13:
            break
        v = after
    return float(low)


@pytest.mark.parametrize("duty", [0.5, 0.9, 0.95])
def test_bootstrap_balance_by_iteration(duty: float) -> None:
    """12 V, 1 V, 4.7 ohm, 220 nF, 30 nC, 0.2 mA, 400 kHz; 10.36 V at duty 0.9."""
    charge = bootstrap_charge(30e-9, 0.2e-3, 400e3)
    t_refill = (1 - duty) / 400e3
    found = bootstrap_minimum(12.0, 1.0, charge, 220e-9, 4.7, t_refill)
    expected = iterated_minimum(12.0, 1.0, charge, 220e-9, 4.7, t_refill)
    assert found == pytest.approx(expected, rel=1e-4)
    if duty == 0.9:
        assert found == pytest.approx(10.36, abs=0.01)


def test_bootstrap_without_resistance_loses_the_plain_charge() -> None:
    assert bootstrap_minimum(12.0, 1.0, 44e-9, 220e-9, 0.0, 1e-7) == pytest.approx(10.8)


def test_bootstrap_worked_examples() -> None:
    """MCF8329A data sheet: 54 nC + 115 uA / 20 kHz = 59.75 nC (printed 59.8 nC)."""
    assert bootstrap_charge(54e-9, 115e-6, 20e3) == pytest.approx(59.8e-9, rel=1e-3)


def test_hold_time_by_discharging() -> None:
    """220 nF at 0.2 mA from 11 to 8.9 V: 2.310 ms."""
    v, t = 11.0, 0.0
    while v > 8.9:
        v -= 0.2e-3 / 220e-9 * 1e-7
        t += 1e-7
    assert t == pytest.approx(2.310e-3, rel=1e-3)
    assert hold(220e-9, 12.0, 1.0, 8.9, 0.2e-3, 20.0) == pytest.approx(t / 25e-3, rel=1e-3)


def test_gate_power_of_published_parts() -> None:
    """15 nC, 12 V, 400 kHz: 72 mW; 38 nC (CSD19501KCS), 10 V, 300 kHz: 114 mW; Wulf: 36 mA."""
    assert gate_power(1, 15e-9, 12.0, 400e3) == pytest.approx(72e-3)
    assert gate_power(1, 38e-9, 10.0, 300e3) == pytest.approx(114e-3)
    assert gate_power(4, 18e-9, 12.0, 500e3) / 12.0 == pytest.approx(36e-3)


def test_period_of_a_self_oscillating_loop() -> None:
    """500 kHz at idle and depth 0.9: 95 kHz."""
    assert 1 / period_at("self-oscillating", 0.9, 500e3) == pytest.approx(95e3)
    assert period_at("natural-sampling", 0.9, 500e3) == pytest.approx(2e-6)


@pytest.mark.parametrize(
    ("supply", "severity"), [("18 V", "critical"), ("15.5 V", "major"), ("12 V", None)]
)
def test_a_gate_supply_beyond_the_rating_is_critical_whatever_rings(
    supply: str, severity: str | None
) -> None:
    """On a gate rated 16 V: 18 V breaks it alone, 15.5 V only with the assumed ringing."""
    text = (
        "amplifier_spec: 1\nchannels:\n  main:\n"
        "    output_stage: {devices: discrete, device: {v_gss: 16 V}}\n"
        f"    gate_drive: {{v_drv: {supply}}}\n"
    )
    loaded = load_text(text, "typical")
    assert loaded.spec is not None
    (found,) = [x for x in review(loaded.spec).findings if x.check == "gate-voltage-margin"]
    assert found.severity == severity


@pytest.mark.parametrize("v_on", [4.0, 9.0, 11.0])
def test_driver_conducts_at_least_twice_as_well_near_zero(v_on: float) -> None:
    """Square law: peak current with 12 V across against the slope of the curve at zero.

    v_on is the overdrive of the driver's transistor, less than its 12 V of supply.
    """

    def current(v: float) -> float:
        return v_on * v - v**2 / 2 if v < v_on else v_on**2 / 2

    at_peak = 12.0 / current(12.0)
    near_zero = 1e-6 / current(1e-6)
    assert near_zero <= at_peak / 2


def test_threshold_of_gallium_nitride_does_not_fall() -> None:
    """The same bump of 1.812 V on 2.2 V at 125 degC: 82 % where the gate is rated for 7 V."""
    usual = (1.0e10, 100.0, 5.0, 5e-9, 1500e-12, 2.2, 398.15, 298.15, 7e-3, 0.1)
    assert miller_share(*usual, 7.0, 8.0) == pytest.approx(1.812 / 2.2, rel=1e-3)
    assert miller_share(*usual, 20.0, 8.0) == pytest.approx(1.812 / 1.5, rel=1e-3)

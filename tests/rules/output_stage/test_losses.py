"""Losses against numerical integration, a worked example and measured boards."""

import math
from typing import Any

import numpy as np
import pytest
from scipy.integrate import quad

from ampreview.rules.derived.idle import idle, idle_of_part
from ampreview.rules.derived.losses import with_load
from ampreview.rules.formulas.losses import (
    charge_left,
    charge_moved,
    dead_time_loss,
    hot_ratio,
    loaded_share,
    mean_carrier_share,
    output_charge,
    output_charge_from_capacitance,
    overlap_loss,
)

I_PEAK, DEPTH, CARRIER = 5.0, 0.8, 400e3
RIPPLE = 100.0 / (4 * 22e-6 * CARRIER)


def mean_over_sine(function: object) -> float:
    """Mean of a function of the angle over one audio period."""
    area, _ = quad(function, 0, 2 * math.pi, points=[math.pi])
    return area / (2 * math.pi)


def test_overlap_by_quadrature() -> None:
    t_10_90 = 8e-9

    def energy(x: float) -> float:
        return 2 * 100.0 * abs(I_PEAK * math.sin(x)) * (t_10_90 / 0.8) / 2

    assert overlap_loss(100.0, I_PEAK, t_10_90, CARRIER) == pytest.approx(
        CARRIER * mean_over_sine(energy), rel=1e-9
    )


def test_dead_time_diode_by_quadrature() -> None:
    expected = CARRIER * mean_over_sine(lambda x: 2 * 25e-9 * abs(I_PEAK * math.sin(x)))
    assert dead_time_loss(1.0, I_PEAK, 25e-9, CARRIER) == pytest.approx(expected, rel=1e-9)


def test_output_charge_is_the_integral_of_the_capacitance() -> None:
    def rate(root: float) -> float:
        """C dv with v = root^2, which takes the singularity at 0 V away."""
        return 2 * root * 300e-12 * 50.0**0.5 / max(root, 1e-30)

    charge, _ = quad(rate, 0.0, 100.0**0.5)
    assert output_charge_from_capacitance(300e-12, 50.0, 100.0) == pytest.approx(charge, rel=1e-6)
    printed, _ = quad(rate, 0.0, 50.0**0.5)
    assert output_charge(printed, 50.0, 100.0) == pytest.approx(charge, rel=1e-6)


def test_energy_of_a_hard_edge_by_integration() -> None:
    """The node rises through a resistor: the loss is that in the resistor, whatever its value.

    It charges one nonlinear capacitance and discharges the other; together Q V.
    """
    swing = 100.0

    def lost(root: float) -> float:
        """(V - v) C(v) dv with v = root^2, the capacitance to ground."""
        return (swing - root**2) * 300e-12 * 50.0**0.5 * 2

    def lost_above(root: float) -> float:
        """(V - v) C(V - v) dv with V - v = root^2, the capacitance to the rail."""
        return root**2 * 300e-12 * 50.0**0.5 * 2

    edge = quad(lost, 0.0, swing**0.5)[0] + quad(lost_above, 0.0, swing**0.5)[0]
    charge = output_charge_from_capacitance(300e-12, 50.0, swing)
    assert swing * charge == pytest.approx(edge, rel=1e-9)


def test_charge_left_by_time_stepping() -> None:
    """Charge left when half the ripple, with the dead time off its half period, flows on."""
    q_oss, dead_time, steps = 30e-9, 25e-9, 1000
    conducting = 0.5 / CARRIER - dead_time
    half = 50.0 / 22e-6 * conducting / 2
    left = 2 * q_oss
    for _ in range(steps):
        left = max(left - half * dead_time / steps, 0.0)
    moved = charge_moved(RIPPLE, dead_time, CARRIER)
    assert charge_left(moved, 2 * q_oss) == pytest.approx(left / (2 * q_oss), rel=1e-9)
    assert charge_left(charge_moved(RIPPLE, 60e-9, CARRIER), 2 * q_oss) == 0.0


def test_mean_carrier_of_a_self_oscillating_loop_by_quadrature() -> None:
    expected = mean_over_sine(lambda x: 1 - (DEPTH * math.sin(x)) ** 2)
    assert mean_carrier_share("self-oscillating", DEPTH) == pytest.approx(expected, rel=1e-9)
    assert mean_carrier_share("natural-sampling", DEPTH) == 1.0


def test_hot_resistance_between_its_two_printed_points() -> None:
    points = np.interp(373.15, [298.15, 423.15], [1.0, 1.8])
    assert hot_ratio(373.15, 1.8, 298.15, 125.0) == pytest.approx(float(points))


def conduction(r_ds_on: float) -> float:
    """Sine and triangular ripple in the conducting switch, by quadrature."""

    def square(x: float) -> float:
        m = DEPTH * math.sin(x)
        return (I_PEAK * math.sin(x)) ** 2 + (RIPPLE * (1 - m * m)) ** 2 / 12

    return r_ds_on * mean_over_sine(square)


def idle_of(**values: Any) -> float:
    """A half bridge of the worked example without signal, some values changed."""
    known: dict[str, Any] = {
        "n_legs": 1.0, "v_swing": 100.0, "carrier": CARRIER, "parallel": 1.0, "q_oss": 30e-9,
        "q_g": 0.0, "v_drv": 12.0, "dead_time": 25e-9, "v_sd": 0.0, "ripple": RIPPLE,
        "r_ds_on": 0.0, "r_winding": 0.0, "p_core": 0.0, "levels": "two-level",
        "c_ground": "none", "c_snubber": 0.0, "q_least": 1e-15, "p_auxiliary": 0.0,
    }  # fmt: skip
    return idle(**{**known, **values})


def loaded(**values: Any) -> float:
    """What the same half bridge loses beyond idle at its rated current."""
    known: dict[str, Any] = {
        "n_legs": 1.0, "v_swing": 100.0, "i_rated_peak": I_PEAK, "depth": DEPTH, "t_edge": 0.0,
        "carrier": CARRIER, "parallel": 1.0, "q_rr": 0.0, "v_sd": 0.0, "dead_time": 25e-9,
        "modulator": "natural-sampling", "q_oss": 30e-9, "ripple": RIPPLE, "levels": "two-level",
        "c_ground": "none", "c_snubber": 0.0, "q_least": 1e-15, "p_core": 0.0,
    }  # fmt: skip
    return with_load(**{**known, **values})


def worked_example() -> float:
    """+-50 V, 8 ohm, 100 W, 50 mohm, 400 kHz, 10 ns, 30 nC, 40 nC, 15 nC, 12 V, 1 V, 25 ns.

    The sum that it comes from counts one hard edge over the whole sine: hard at idle it is.
    """
    steady = idle_of(q_g=15e-9, q_oss=0.0)
    growing = loaded(t_edge=8e-9, q_rr=40e-9, v_sd=1.0, ripple=0.0, q_oss=0.0)
    return float(steady + growing + 30e-9 * 100.0 * CARRIER + conduction(0.05))


def test_worked_example_of_a_loss_budget() -> None:
    """Terms computed apart: 0.6423, 1.273, 1.200, 1.600, 0.1440, 0.06366 W, sum 4.923 W."""
    assert worked_example() == pytest.approx(4.923, rel=1e-3)
    assert 100.0 / (100.0 + worked_example()) == pytest.approx(0.9531, rel=1e-3)


def test_switching_stage_beats_the_linear_bound() -> None:
    """Class B ends at pi/4 = 78.54 % (integrated); about 60 % is common practice, no source.

    A switching stage of the worked example passes 90 %.
    """
    supply = mean_over_sine(lambda x: abs(math.sin(x)))
    load = mean_over_sine(lambda x: math.sin(x) ** 2)
    assert load / supply == pytest.approx(0.7854, rel=1e-4)
    assert 100.0 / (100.0 + worked_example()) > 0.9 > load / supply


def test_load_switches_one_edge_hard_also_where_idle_is_soft() -> None:
    """60 ns of dead time make idle soft: the 1.200 W of output charge come with the load.

    Not while its current stays below half the ripple, counted here on 100,000 angles.
    """
    assert idle_of(dead_time=60e-9) == 0.0
    current = np.abs(I_PEAK * np.sin((np.arange(100_000) + 0.5) * 2 * np.pi / 100_000))
    share = float(np.mean(current > RIPPLE / 2))
    assert loaded_share(RIPPLE, I_PEAK) == pytest.approx(share, rel=1e-4)
    assert loaded(dead_time=60e-9) == pytest.approx(1.200 * share, rel=1e-4)
    assert loaded(dead_time=60e-9, i_rated_peak=RIPPLE / 2.01) == 0.0


def test_a_part_of_the_power_has_less_current_and_less_depth() -> None:
    """A quarter: half the current, half the depth, by which the loop slows down less."""
    values = {"q_oss": 0.0, "ripple": 0.0, "t_edge": 8e-9, "q_rr": 40e-9, "v_sd": 1.0}
    slower = 1 - (DEPTH / 2) ** 2 / 2
    overlap = 2.5 * 100.0 * I_PEAK / 2 * 8e-9 / math.pi
    diode = 4 * 1.0 * I_PEAK / 2 * 25e-9 / math.pi
    expected = (overlap + diode + 20e-9 * 100.0) * CARRIER * slower
    found = loaded(**values, modulator="self-oscillating", part=0.25)
    assert found == pytest.approx(expected)


def test_three_level_bridge_without_ground_capacitors_idles_hard() -> None:
    bridge = {"n_legs": 2.0, "v_swing": 50.0, "q_oss": 10e-9, "ripple": 2.0, "p_core": 0.3}
    assert idle_of(**bridge) == pytest.approx(0.3)
    assert idle_of(**bridge, levels="three-level", c_ground="fitted") == pytest.approx(0.3)
    hard = idle_of(**bridge, levels="three-level")
    assert hard == pytest.approx(2 * 2 * 10e-9 * 50.0 * CARRIER)


def test_the_core_of_a_still_filter_warms_with_load_alone() -> None:
    bridge = {"n_legs": 2.0, "levels": "three-level", "p_core": 0.3}
    assert loaded(**bridge) - loaded(**{**bridge, "p_core": 0.0}) == pytest.approx(0.3)
    assert loaded(p_core=0.3) == loaded()


def test_parallel_devices_double_charges_and_halve_resistance() -> None:
    one = {"v_swing": 50.0, "q_oss": 10e-9, "q_g": 5e-9, "v_drv": 10.0, "dead_time": 0.0}
    ripple = 3.0**2 / 12
    charges = CARRIER * (2 * 10e-9 * 50.0 + 2 * 5e-9 * 10.0)
    found = idle_of(**one, ripple=3.0, r_ds_on=0.1, r_winding=0.02)
    assert found == pytest.approx(charges + ripple * 0.12)
    two = idle_of(**one, ripple=3.0, r_ds_on=0.1, r_winding=0.02, parallel=2.0)
    assert two == pytest.approx(2 * charges + ripple * 0.07)


def test_snubber_and_diode_add_to_both() -> None:
    """1 nF at hard edges: 2 x C V^2 / 2 per period at idle, nothing more with load."""
    snubber = {"q_oss": 0.0, "dead_time": 0.0, "c_snubber": 1e-9}
    assert idle_of(**snubber) == pytest.approx(1e-9 * 100.0**2 * CARRIER)
    assert loaded(**snubber) == 0.0
    soft = idle_of(c_snubber=1e-10, dead_time=100e-9, v_sd=0.9)
    beyond = RIPPLE / 2 * 0.92 * 100e-9 - 60e-9 - 10e-9  # 8 % of the period are dead time
    assert soft == pytest.approx(2 * 0.9 * beyond * CARRIER)
    with_sine = loaded(c_snubber=1e-10, dead_time=100e-9, v_sd=0.9)
    hard = (30e-9 * 100.0 + 1e-10 * 100.0**2 / 2) * CARRIER * loaded_share(RIPPLE, I_PEAK)
    diode = dead_time_loss(0.9, I_PEAK, 100e-9, CARRIER)
    assert with_sine == pytest.approx(hard + diode - soft)


def test_unknown_output_charge_leaves_the_sum_a_lower_bound() -> None:
    """Nothing is said of the diodes then; with the charge the sum is larger, soft or hard."""
    for dead_time in (10e-9, 60e-9, 200e-9):
        values = {"dead_time": dead_time, "v_sd": 1.0}
        assert idle_of(**values, q_oss=0.0) == 0.0 < idle_of(**values)


def test_idle_loss_of_a_published_board_is_not_exceeded() -> None:
    """IRAUDAMP7D, +-35 V, fig. 15 read toward no output: 4.8 W, two channels and housekeeping.

    Charges and ripple alone (22 uH, 400 kHz, 58 mohm, 12 nC, 20 mohm) must come out below.
    """
    board = {"v_swing": 70.0, "q_oss": 0.0, "q_g": 12e-9, "dead_time": 45e-9, "r_ds_on": 0.058}
    channel = idle_of(**board, r_winding=0.02, ripple=70.0 / (4 * 22e-6 * 400e3))
    assert 0.1 < 2 * channel < 4.8


def test_idle_loss_of_a_part_from_its_printed_current() -> None:
    """TDA8950 rev. 01, table 7: 50 mA at +-35 V, both half bridges, no filter, no snubber.

    25 mA from rail to rail are 1.75 W.  The circuit of the same sheet has 22 uH: at 345 kHz
    2.306 A of ripple, in 0.15 ohm and 0.1 ohm (as such sheets have it) 0.111 W.
    """
    part: dict[str, Any] = {
        "n_legs": 1.0, "v_swing": 70.0, "i_q": 25e-3, "carrier": 345e3, "parallel": 1.0,
        "ripple": 0.0, "r_ds_on": 0.15, "r_winding": 0.1, "p_core": 0.0, "levels": "two-level",
        "c_ground": "none", "c_snubber": 0.0, "p_auxiliary": 0.0,
    }  # fmt: skip
    assert idle_of_part(**part) == pytest.approx(1.75)
    ripple = 70.0 / (4 * 22e-6 * 345e3)
    filtered = idle_of_part(**{**part, "ripple": ripple, "p_core": 0.3, "p_auxiliary": 0.2})
    assert filtered == pytest.approx(1.75 + 0.1108 + 0.5, rel=1e-3)
    snubber = idle_of_part(**{**part, "n_legs": 2.0, "c_snubber": 220e-12})
    assert snubber == pytest.approx(1.75 + 2 * 220e-12 * 70.0**2 * 345e3)
    still = {**part, "ripple": ripple, "p_core": 0.3, "levels": "three-level"}
    assert idle_of_part(**still) == pytest.approx(1.75)

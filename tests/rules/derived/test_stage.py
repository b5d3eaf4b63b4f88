"""Quantities of the output stage and its gates, by hand for small specs through the graph."""

import math

import pytest

SPLIT = "supply: {source: dc-source, rails: split, v_rail: 30 V}\n"
SINGLE = "supply: {source: dc-source, rails: single, v_rail: 24 V}\n"


def channel(*lines: str) -> str:
    """A spec with one channel."""
    return "channels:\n  main:\n" + "".join(f"    {line}\n" for line in lines)


def stage(topology: str, device: str, more: str = "parallel: 1") -> str:
    """A discrete output stage."""
    return (
        f"output_stage: {{topology: {topology}, devices: discrete, {more}, device: {{{device}}}}}"
    )


HALF = "output_stage: {topology: half-bridge}"
FULL = "output_stage: {topology: full-bridge}"
LOAD = ("rated_power: 50 W", "rated_load: 4 ohm")


@pytest.mark.parametrize(
    ("name", "supply", "topology", "expected"),
    [
        ("n_legs", SINGLE, HALF, 1.0),
        ("n_legs", SINGLE, FULL, 2.0),
        ("v_swing", SINGLE, FULL, 24.0),
        ("v_swing", SPLIT, HALF, 60.0),
        ("v_ideal", SINGLE, HALF, 12.0),
        ("v_ideal", SINGLE, FULL, 24.0),
        ("v_ideal", SPLIT, HALF, 30.0),
        ("v_ideal", SPLIT, FULL, 60.0),
        ("i_rated_peak", SPLIT, HALF, 5.0),  # 50 W = 5 A^2 / 2 * 4 ohm
        ("depth_rated", SPLIT, HALF, 20.0 / 30.0),  # 5 A in 4 ohm
        ("depth_rated", SINGLE, FULL, 20.0 / 24.0),
        ("v_terminal_dc", SINGLE, FULL, 12.0),
        ("v_terminal_dc", SPLIT, HALF, 0.0),
        ("v_terminal_dc", SPLIT, FULL, 0.0),
        ("v_terminal_ac", SINGLE, FULL, 12.0 / math.sqrt(2)),
        ("v_touch", SPLIT, HALF, 60.0),
        ("v_touch", SINGLE, HALF, 24.0),
        ("rail_harmless", SPLIT, HALF, "no"),  # 60 V against 48 V
        ("rail_harmless", SINGLE, HALF, "yes"),
        ("output_harmless", SINGLE, FULL, "yes"),  # 24 V against 0.8 * 42.4 V = 33.9 V
        ("output_harmless", SPLIT, FULL, "no"),
    ],
)
def test_swing_and_levels(derived, name, supply, topology, expected):
    assert derived(name, supply + channel(topology, *LOAD)) == pytest.approx(expected)


@pytest.mark.parametrize(("rail", "word"), [("33.9 V", "yes"), ("33.95 V", "no")])
def test_output_is_harmless_up_to_four_fifths_of_42_4_volt(derived, rail, word):
    supply = f"supply: {{source: dc-source, rails: single, v_rail: {rail}}}\n"
    assert derived("output_harmless", supply + channel(FULL)) == word


@pytest.mark.parametrize(("rail", "word"), [("47.9 V", "yes"), ("48 V", "yes"), ("48.1 V", "no")])
def test_rail_is_harmless_up_to_four_fifths_of_60_volt(derived, rail, word):
    supply = f"supply: {{source: dc-source, rails: single, v_rail: {rail}}}\n"
    assert derived("rail_harmless", supply + channel(FULL)) == word


def test_withstand_of_one_rail(derived):
    discrete = channel(stage("half-bridge", "v_dss: 100 V"))
    assert derived("v_withstand", SPLIT + discrete) == 50.0
    assert derived("v_withstand", SINGLE + discrete) == 100.0


def test_direct_voltage_on_the_coil(derived):
    """30 V across two coils of 3 ohm in series: 15 V each, 75 W."""
    text = SPLIT + channel(HALF, "loudspeaker: {series: 2, r_e: 3 ohm}")
    assert derived("p_dc_fault", text) == pytest.approx(75.0)


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        ((), 2.0),
        (("environment: {place: outdoor}",), 3.0),
        (("environment: {place: indoor}",), 2.0),
    ],
)
def test_pollution_degree(derived, lines, expected):
    assert derived("pollution_degree", "\n".join(lines) + "\n") == expected


GATE = "gate_drive: {v_drv: 12 V, i_source: 2 A, i_sink: 4 A, r_g_on: 10 ohm, r_g_off: 4 ohm"
DEVICE = "r_g_int: 1 ohm, r_g_test: 9 ohm, t_d_on: 10 ns, t_d_off: 30 ns, t_r: 20 ns, t_f: 15 ns"


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        # two devices share the driver: 2 * 12 / 2 + 10 + 1 = 23 ohm on, 2 * 12 / 4 + 4 + 1 = 11 off
        ("r_gate_on", 23.0),
        ("r_gate_off", 11.0),
        ("t_on_circuit", 23e-9),
        ("t_d_off_circuit", 33e-9),
        ("t_off_outlasts", 35e-9),  # 30 + 15 - 10 ns as printed; the gates' capacitance is silent
        ("t_dead_distortion", 50e-9),
        ("t_edge", (20 * 2.3 + 15 * 1.1) / 2 * 1e-9),
        ("t_pulse_min", 60e-9 + (20 * 2.3 + 15 * 1.1) / 2 * 1e-9),
        ("slew", 0.8 * 60 / ((20 * 2.3 + 15 * 1.1) / 2 * 1e-9)),
    ],
)
def test_times_in_the_circuit(derived, name, expected):
    gate = GATE + ", dead_time: 60 ns}"
    text = SPLIT + channel(stage("half-bridge", DEVICE, "parallel: 2"), gate)
    assert derived(name, text) == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize(
    ("charges", "c_gate"),
    [
        ("c_iss: 2 nF", 2e-9),
        ("q_g: 30 nC, q_gd: 6 nC", 2e-9),
        ("q_g: 24 nC", 1.4e-9),
    ],
)
def test_gates_decide_where_they_take_longer_than_printed(derived, charges, c_gate):
    """A quarter of the supply: exp(-t / tau) = 1/4 on the way down, 3/4 on the way up.

    3.525 V at 25 degC are 3 V at 100 degC, where the junction stands while nothing is known.
    """
    gate = f"{charges}, v_gs_th: 3.525 V, v_gs_th_fall: 7 mV/K, r_g_int: 1 ohm"
    device = f"{gate}, t_d_on: 1 ns, t_d_off: 2 ns, t_f: 1 ns"
    text = SPLIT + channel(stage("half-bridge", device), GATE + ", dead_time: 60 ns}")
    r_on, r_off = 12 / 2 + 10 + 1, 12 / 4 + 4 + 1
    by_hand = c_gate * (r_off * math.log(4) - r_on * math.log(12 / 9))
    assert derived("t_off_outlasts", text) == pytest.approx(by_hand)


def test_test_set_up_is_credited_with_half_an_ohm(derived):
    """10 ns printed for 0.3 ohm in all: 16.2 ohm count as 32.4 times half an ohm."""
    device = "r_g_int: 0.2 ohm, r_g_test: 0.1 ohm, t_d_on: 10 ns"
    text = SPLIT + channel(stage("half-bridge", device), GATE + "}")
    assert derived("t_on_circuit", text) == pytest.approx(10e-9 * 16.2 / 0.5)


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("t_on_circuit", 10e-9),
        ("t_d_off_circuit", 30e-9),
        ("t_edge", 17.5e-9),
    ],
)
def test_times_as_printed_where_the_gate_loop_is_unknown(derived, name, expected):
    device = "t_d_on: 10 ns, t_d_off: 30 ns, t_r: 20 ns, t_f: 15 ns"
    assert derived(name, SPLIT + channel(stage("half-bridge", device))) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("v_dss", "share"),
    [
        ("480 V", 0.5),  # 60 V are a quarter of the 240 V of the test, the root is a half
        ("100 V", 1.0),  # above the 50 V of the test: not more than printed
    ],
)
def test_gate_drain_charge_grows_with_the_root_of_the_swing(derived, v_dss, share):
    device = f"q_gd: 20 nC, v_dss: {v_dss}"
    text = SPLIT + channel(stage("half-bridge", device))
    assert derived("q_gd_swing", text) == pytest.approx(20e-9 * share)


@pytest.mark.parametrize(
    ("limiter", "expected"),
    [
        ("limiter: none", 30.0 / 3.2),
        ("limiter: {v_peak: 16 V}", 5.0),
    ],
)
def test_peak_current_of_a_stage_that_clips(derived, limiter, expected):
    """A load of 4 ohm may fall to 3.2 ohm (IEC 60268-3 allows 80 %)."""
    text = SPLIT + channel(
        HALF,
        "rated_load: 4 ohm",
        "loudspeaker: {z_min: 3.2 ohm}",
        limiter,
        "modulator: {m_max: 100 %}",
    )
    assert derived("i_peak", text) == pytest.approx(expected)


def test_trip_sensed_across_the_switch_falls_when_hot(derived):
    """r_ds_on grows by 1.8 from 25 to 150 degC, 1.48 at 100 degC on the straight line."""
    device = "r_ds_on_hot_factor: 1.8"
    over = "over_current: {i_trip: 14.8 A, sensing: r-ds-on}, parallel: 1"
    text = SPLIT + channel(stage("half-bridge", device, over))
    assert derived("i_trip_hot", text) == pytest.approx(14.8 / 1.48, rel=0.02)
    shunt = text.replace("r-ds-on", "shunt")
    assert derived("i_trip_hot", shunt) == pytest.approx(14.8)


def test_shortest_pulse_and_depth(derived):
    """100 ns twice in a period of 2.5 us: 0.92."""
    gate = "gate_drive: {t_pulse_min: 100 ns}"
    text = SPLIT + channel(HALF, gate, "modulator: {carrier: 400 kHz}")
    assert derived("m_max", text) == pytest.approx(0.92)
    loop = text.replace("{carrier", "{type: self-oscillating, carrier")
    assert derived("m_max", loop) == 1.0


def test_refill_of_the_bootstrap_sets_the_shortest_pulse(derived):
    """40 nC through 10 ohm, a tenth of 12 V as drop: 40n * 10 / 1.2 = 333 ns."""
    device = "q_g: 40 nC, t_r: 10 ns, t_f: 10 ns"
    gate = "gate_drive: {dead_time: 20 ns, v_drv: 12 V, bootstrap: {r: 10 ohm}}"
    text = SPLIT + channel(stage("half-bridge", device), gate)
    assert derived("t_pulse_min", text) == pytest.approx(40e-9 * 10 / 1.2)


@pytest.mark.parametrize(
    ("name", "topology", "more", "expected"),
    [
        ("package_share", "half-bridge", "switches_per_package: 2", 1.0),
        ("package_share", "full-bridge", "switches_per_package: 2", 0.5),
        ("package_share", "full-bridge", "v_dss: 60 V", 0.25),
        ("package_share", "half-bridge", "v_dss: 60 V", 0.5),
    ],
)
def test_share_of_a_package(derived, name, topology, more, expected):
    assert derived(name, SPLIT + channel(stage(topology, more))) == pytest.approx(expected)
    two = SPLIT + channel(stage(topology, more, "parallel: 2"))
    assert derived(name, two) == pytest.approx(expected / 2)


def test_slope_at_turn_on():
    """20 nC through 10 ohm with 12 - 4 V across: 25 ns for 60 V."""
    from ampreview.rules.derived.edge import turn_on_slope

    assert turn_on_slope(60.0, 20e-9, 10.0, 12.0, 4.0) == pytest.approx(60 / 25e-9)


def test_gate_that_is_held_off():
    """11 ohm of loop, of which two devices count 2 x 12 V / 4 A = 6 ohm of driver: half of it."""
    from ampreview.rules.derived.gate import held_off

    assert held_off(11.0, 12.0, 4.0, 2.0) == pytest.approx(8.0)


def test_dead_time_that_the_gates_eat_up():
    """Exponentials: 12 to 4 V through 20 ohm, 0 to 4 V through 5 ohm, 2 nF."""
    from ampreview.rules.derived.commutation import distorting_by_gates

    later = 20 * 2e-9 * math.log(12 / 4) - 5 * 2e-9 * math.log(12 / 8)
    found = distorting_by_gates(100e-9, 2e-9, 5.0, 20.0, 12.0, 4.0)
    assert found == pytest.approx(100e-9 - later)
    assert distorting_by_gates(10e-9, 2e-9, 5.0, 20.0, 12.0, 4.0) == 0.0


@pytest.mark.parametrize("period", [2.5e-6, 10e-6])
def test_no_pulse_fits_into_the_period(derived, period):
    """Two pulses of 6 us do not fit into 10 us: depth is next to nothing, not below."""
    gate = "gate_drive: {t_pulse_min: 6 us}"
    text = SPLIT + channel(HALF, gate, f"modulator: {{carrier: {1e-3 / period:.0f} kHz}}")
    assert 0.0 <= derived("m_max", text) <= 1e-3

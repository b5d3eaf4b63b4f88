"""Switch node, modulator and inductor crest, by hand for small specs through the graph."""

import math

import pytest

from ampreview.rules.formulas.losses import (
    capacitance_at,
    capacitance_of_charge,
    output_charge_from_capacitance,
)

SPLIT = "supply: {source: dc-source, converter: none, rails: split, v_rail: 30 V}\n"


def channel(*lines: str) -> str:
    """A spec with one channel."""
    return "channels:\n  main:\n" + "".join(f"    {line}\n" for line in lines)


LOOP = "rated_load: 4 ohm\n    loudspeaker: {z_min: 4 ohm}\n    limiter: {v_peak: 24 V}"


def test_ringing_of_a_ramp(derived):
    """6 A turned over in 20 ns through 5 nH, the swing of an L-C driven by a ramp doubles it."""
    stage = "output_stage: {topology: half-bridge, l_loop: 5 nH, t_edge: 20 ns}"
    text = SPLIT + channel(LOOP, stage, "modulator: {m_max: 95 %}")
    assert derived("i_peak", text) == pytest.approx(6.0)
    assert derived("v_overshoot", text) == pytest.approx(2 * 5e-9 * 6.0 / 20e-9)


@pytest.mark.parametrize(
    ("recommended", "times"),
    [("2.5 V .. 5.5 V", 1), ("2.5 V .. 4.5 V", 2)],  # the maker's own range, or beyond it
)
def test_ringing_at_the_pins_of_a_part(derived, recommended: str, times: int) -> None:
    """1.2 A turned over in 5 ns through 1.5 nH: 0.36 V across the loop while the ramp lasts."""
    part = f"device: {{v_supply: {recommended}}}"
    stage = f"output_stage: {{topology: full-bridge, devices: integrated, l_loop: 1.5 nH, {part},"
    supply = "supply: {source: dc-source, rails: single, v_rail: 4.8 V, sinks_current: yes}\n"
    load = "rated_load: 4 ohm\n    loudspeaker: {z_min: 4 ohm}\n    modulator: {m_max: 100 %}"
    text = supply + channel(load, f"{stage} t_edge: 5 ns}}")
    assert derived("v_pin_overshoot", text) == pytest.approx(times * 1.5e-9 * 1.2 / 5e-9)


def test_ringing_where_nothing_is_known(derived):
    """A quarter of the swing, common practice."""
    text = SPLIT + channel("output_stage: {topology: half-bridge}")
    assert derived("v_overshoot", text) == pytest.approx(15.0)
    assert derived("v_static_peak", text) == pytest.approx(60.0)
    assert derived("v_node_peak", text) == pytest.approx(75.0)


@pytest.mark.parametrize(
    ("snubber", "c_snubber"),
    [
        ("snubber: none", 0.0),
        ("snubber: {c: 400 pF}", 400e-12),
    ],
)
def test_ringing_with_the_output_capacitance_of_two_devices(snubber, c_snubber):
    """200 pF each: 400 pF together; an instant edge gives i sqrt(l / c)."""
    from ampreview.rules.derived.node import overshoot, overshoot_of_ramp

    plain = 6.0 * math.sqrt(5e-9 / 400e-12)
    # fitted to solved differential equations: 1 / (1 + 0.43 c_s / c)
    expected = plain / (1 + 0.43 * c_snubber / 400e-12)
    found = overshoot(6.0, 5e-9, 200e-12, 2.0, 1e-15, c_snubber, 20e-12)
    assert found == pytest.approx(expected)
    slow = overshoot(6.0, 5e-9, 200e-12, 2.0, 20e-9, 0.0, 20e-12)
    assert slow == pytest.approx(overshoot_of_ramp(6.0, 5e-9, 20e-9))
    least = overshoot(6.0, 5e-9, 0.0, 2.0, 1e-15, 0.0, 20e-12)
    assert least == pytest.approx(6.0 * math.sqrt(5e-9 / 20e-12))


@pytest.mark.parametrize(
    ("printed", "expected"),
    [
        ("c_oss: 400 pF", 373.0e-12),  # 400 sqrt(100 / 115) by hand
        ("c_oss: 400 pF, q_oss: 160 nC", 373.0e-12),  # as printed, not from the charge
        ("q_oss: 30 nC", 139.88e-12),  # 30 nC sqrt(115 / 100) over 230 V
    ],
)
def test_what_rings_is_the_capacitance_at_the_swing(derived, printed, expected):
    device = f"device: {{{printed}, v_c_oss: 100 V}}"
    text = (
        "supply: {source: dc-source, rails: single, v_rail: 115 V}\n"
        f"channels: {{main: {{output_stage: {{topology: full-bridge, {device}}}}}}}\n"
    )
    assert derived("c_oss_swing", text) == pytest.approx(expected, rel=1e-4)


def test_half_of_charge_over_voltage_is_the_slope_of_the_charge():
    """Second method: the charge of C ~ v^-1/2 differentiated by small steps."""
    charge = [output_charge_from_capacitance(300e-12, 50.0, v) for v in (79.99, 80.0, 80.01)]
    slope = (charge[2] - charge[0]) / 0.02
    assert capacitance_of_charge(charge[1], 80.0) == pytest.approx(slope, rel=1e-6)
    assert capacitance_at(300e-12, 50.0, 80.0) == pytest.approx(slope, rel=1e-6)


@pytest.mark.parametrize(
    ("feedback", "name", "expected"),
    [
        ("none", "loop_gain_1k", 0.0),
        ("none", "loop_gain_treble", 0.0),
        # an integrator: 50 kHz over 1 kHz and over 20 kHz; second order at 1 kHz: squared
        ("before-filter, loop_crossover: 50 kHz", "loop_gain_1k", 50.0),
        ("before-filter, loop_crossover: 50 kHz, loop_order: 2", "loop_gain_1k", 2500.0),
        ("after-filter, loop_crossover: 50 kHz", "loop_gain_treble", 2.5),
        ("after-filter", "filter_in_loop", "yes"),
        ("before-filter", "filter_in_loop", "no"),
        ("none", "filter_in_loop", "no"),
    ],
)
def test_loop_gain(derived, feedback, name, expected):
    text = channel("band: 20 Hz .. 20 kHz", f"modulator: {{feedback: {feedback}}}")
    assert derived(name, text) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("converter", "count", "word"),
    [("none", 1, "no"), ("none", 2, "yes"), ("step-up", 1, "yes"), ("step-up", 2, "yes")],
)
def test_who_may_beat(derived, converter, count, word):
    text = f"supply: {{converter: {converter}}}\nchannels:\n" + "".join(
        f"  c{k}: {{modulator: {{carrier: 400 kHz}}}}\n" for k in range(count)
    )
    assert derived("several_clocks", text) == word


def crest(v: float, half: float, end: float) -> float:
    """Largest of m v + half (1 - m^2) up to ``end``, by trying."""
    return max(m * v + half * (1 - m * m) for m in (end * k / 10000 for k in range(10001)))


@pytest.mark.parametrize("half", [0.5, 9.0])
def test_crest_of_sine_and_ripple(half):
    from ampreview.rules.derived.current import crest_with_ripple

    found = crest_with_ripple(6.0, 30.0, 4.0, 2 * half, "natural-sampling")
    assert found == pytest.approx(crest(7.5, half, 6.0 / 7.5), rel=1e-6)
    loop = crest_with_ripple(6.0, 30.0, 4.0, 2 * half, "self-oscillating")
    assert loop == pytest.approx(6.0 + half)


def test_crest_of_the_inductor_behind_the_cold_path():
    """27 V at most or the 24 V of a limiter, 4 ohm and 0.5 ohm, ripple of 1 A."""
    from ampreview.rules.derived.saturation import stated_crest, warmed

    free = stated_crest(0.9, 30.0, 99.0, 4.0, 0.5, 1.0, "natural-sampling")
    assert free == pytest.approx(crest(30.0 / 4.5, 0.5, 0.9), rel=1e-6)
    limited = stated_crest(0.9, 30.0, 24.0, 4.0, 0.5, 1.0, "natural-sampling")
    assert limited == pytest.approx(crest(30.0 / 4.5, 0.5, 0.8), rel=1e-6)
    # copper and core warm with the square of the current: 40 K at 5 A, 6 A give 57.6 K
    assert warmed(313.15, 40.0, 6.0, 5.0) == pytest.approx(313.15 + 57.6)


def test_saturation_between_cold_and_hot(derived):
    """0.8 at 100 degC; at 62.5 degC half of the fall: 0.9."""
    from ampreview.rules.formulas.inductor import hot_saturation

    text = channel(
        "rated_power: 50 W",
        "rated_load: 4 ohm",
        "modulator: {type: self-oscillating}",
        "filter: {type: lc, inductor: {i_sat: 10 A, i_sat_hot_factor: 0.7, rise_rated: 40 K,"
        " i_rms: 5 A, l: 10 uH}}",
    )
    assert derived("i_sat_factor", text) == pytest.approx(0.7)
    assert hot_saturation(10.0, 0.8, 335.65, 298.15, 373.15) == pytest.approx(9.0)


@pytest.mark.parametrize(
    ("line", "name", "expected"),
    [
        ("loudspeaker: {z_rated: 8 ohm}", "r_e", 6.4),
        ("loudspeaker: {z_rated: 8 ohm, series: 2, parallel: 4}", "z_network", 4.0),
        ("loudspeaker: {z_rated: 8 ohm, z_min: 6 ohm, series: 2, parallel: 4}", "z_load_min", 3.0),
        (
            "loudspeaker: {z_rated: 8 ohm, p_rated: 60 W, rating_method: programme}",
            "p_driver_noise",
            30.0,
        ),
        (
            "loudspeaker: {z_rated: 8 ohm, p_rated: 60 W, rating_method: peak}",
            "p_driver_noise",
            15.0,
        ),
        (
            "loudspeaker: {z_rated: 8 ohm, p_rated: 60 W, rating_method: aes2-1984}",
            "p_driver_noise",
            60.0,
        ),
        (
            "loudspeaker: {z_rated: 4 ohm, sensitivity: 86 dB, sensitivity_basis: 1-watt}",
            "sensitivity_2v83",
            86 + 10 * math.log10(2),
        ),
        (
            "loudspeaker: {z_rated: 4 ohm, sensitivity: 86 dB, sensitivity_basis: 2.83-volt}",
            "sensitivity_2v83",
            86.0,
        ),
    ],
)
def test_loads_and_drivers(derived, line, name, expected):
    assert derived(name, channel(line)) == pytest.approx(expected)


@pytest.mark.parametrize(("type_", "expected"), [("bead", 1.25 / 2), ("filterless", 0.10)])
def test_length_of_lead_that_is_allowed(derived, type_, expected):
    """125 cm of one data sheet behind beads, 6 dB below; 100 mm of another without."""
    found = derived("lead_allowed", channel(f"filter: {{type: {type_}}}"))
    assert found == pytest.approx(expected, rel=0.01)


def test_level_of_a_network_at_its_rating():
    """90 dB at 2.83 V; 32 W in each of two in series, three strings: 16 V each, six units."""
    from ampreview.rules.derived.sound import level_at_rating

    one = 90 + 20 * math.log10(16.0 / math.sqrt(8))
    found = level_at_rating(90.0, 32.0, 8.0, 2.0, 3.0, math.sqrt(8))
    assert found == pytest.approx(one + 20 * math.log10(6))

"""Operating point of the output stage, and published designs through the engine."""

import math

import numpy as np
import pytest

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.evaluation.engine import Assessment
from ampreview.linter.finding import Finding, Severity, Status
from ampreview.linter.reading.loading import load_text
from ampreview.rules.derived.current import clipped_peak, crest_with_ripple, trip_hot
from ampreview.rules.derived.node import node_peak, static_peak
from ampreview.rules.derived.stage import (
    depth_limit,
    ideal_peak,
    modulation_depth,
    shortest_pulse,
    sine_peak_current,
)
from ampreview.rules.output_stage.drain_current_margin import figure as drain_current
from ampreview.rules.output_stage.trip_below_destruction import figure as short_circuit


def test_rms_of_a_device_by_sampling_the_switched_current() -> None:
    """Each switch of a leg carries half the peak of the sine, rms, ripple apart."""
    angle = (np.arange(200000) + 0.5) * 2 * math.pi / 200000
    duty = (1 + 0.8 * np.sin(angle)) / 2
    mean_square = np.mean(duty * (12.5 * np.sin(angle)) ** 2)
    rated = drain_current(12.5, 0.0, 1.0, 10.0, 448.15, 298.15, 298.15, 1.0)
    assert rated * 10.0 == pytest.approx(math.sqrt(mean_square), rel=1e-4)


@pytest.mark.parametrize(("ripple", "depth"), [(2.841, 0.95), (20.0, 0.95), (0.0, 0.9)])
def test_largest_current_by_scanning_the_sine(ripple: float, depth: float) -> None:
    """Load current and half of a ripple that falls as 1 - m^2, every depth tried."""
    full = 50.0 / 6.4
    m = np.linspace(0, depth, 20001)
    expected = np.max(m * full + ripple / 2 * (1 - m * m))
    found = crest_with_ripple(depth * full, 50.0, 6.4, ripple, "natural-sampling")
    assert found == pytest.approx(float(expected), rel=1e-6)


def test_ripple_of_a_self_oscillating_loop_stays_in_full() -> None:
    """50 V at depth 0.95 into 6.4 ohm with 2.841 A of ripple: 8.842 A, simulated."""
    peak = clipped_peak(0.95, 50.0, float("inf"), 6.4)
    assert crest_with_ripple(peak, 50.0, 6.4, 2.841, "self-oscillating") == pytest.approx(
        8.842, rel=1e-3
    )


def test_short_circuit_current_by_time_stepping() -> None:
    """Half-bridge of 50 V into a short behind 22 uH: 2.273 A in a microsecond."""
    current, steps = 14.4, 1000
    for _ in range(steps):
        current += 50.0 / 22e-6 * 500e-9 / steps
    found = short_circuit(14.4, 500e-9, 100.0, 1.0, 22e-6, 1e6, 0.3, 1.0, 60.0, 2.0)
    assert found * 60.0 == pytest.approx(current, rel=1e-6)
    assert current == pytest.approx(15.54, rel=1e-3)


def test_depth_left_by_a_shortest_pulse() -> None:
    """100 ns at 400 kHz 0.92; 200 ns at 200 kHz 0.92; 520 ns at 150 kHz about 8 to 92 %."""
    assert depth_limit(100e-9, 400e3) == pytest.approx(0.92)
    assert depth_limit(200e-9, 200e3) == pytest.approx(0.92)
    duty = (1 + depth_limit(520e-9, 150e3)) / 2
    assert duty == pytest.approx(0.92, abs=0.003)


def test_shortest_pulse_refills_the_bootstrap_capacitor() -> None:
    """30 nC through 125 ohm in 5 us drop 0.75 V (ST L6388E data sheet, p. 9)."""
    assert shortest_pulse(0.0, 0.0, 125.0, 30e-9, 10.0, 0.075) == pytest.approx(5e-6)


def test_published_power_and_rails() -> None:
    """250 W into 4 ohm: 44.7 V peak; +-50 V ideal half-bridge; 48 V bridge into 4 ohm 288 W."""
    assert sine_peak_current(250.0, 4.0) * 4.0 == pytest.approx(44.72, rel=1e-3)
    assert ideal_peak(1.0, 100.0) == 50.0
    assert ideal_peak(2.0, 48.0) ** 2 / 8.0 == pytest.approx(288.0)
    assert modulation_depth(300.0, 4.0, 48.0) > 1.0


def test_trip_on_hot_resistance() -> None:
    """0.6 V over 20 mohm is 30 A cold, 18.75 A where the resistance is 1.6 times as high."""
    hot = 298.15 + 125.0 * 0.6 / 0.8
    assert trip_hot(0.6 / 0.020, hot, 1.8, 298.15, 125.0) == pytest.approx(18.75)


def test_trip_stops_pumping_of_one_rail_only() -> None:
    """Rails of 35 V tripped at 40 V: 75 V, not 2 x 40; a source above the trip counts in full."""
    assert static_peak(70.0, 35.0, 37.0, 40.0) == 75.0
    assert static_peak(90.0, 45.0, 10.0, 40.0) == 90.0
    assert node_peak(110.0 + 4.0, 15.0) == 129.0


FIRST_BRIDGE = """
amplifier_spec: 1
supply: {source: dc-source, rails: single, v_rail: 48 V}
channels:
  mono:
    rated_power: 300 W
    rated_load: 4 ohm
    output_stage:
      topology: full-bridge
      devices: discrete
      over_current: {i_trip: 10 A, t_response: 500 ns, sensing: shunt}
      device: {v_dss: 200 V, r_ds_on: {typ: 80 mohm, max: 100 mohm}, t_d_on: {typ: 7.8 ns},
        t_r: {typ: 12 ns}, t_d_off: {typ: 16 ns},
        t_f: {typ: 6.3 ns}, r_g_test: 2.4 ohm, r_g_int: 3.2 ohm}
    gate_drive: {r_g_on: 0 ohm, r_g_off: 0 ohm, i_source: 2 A, i_sink: 2 A,
      dead_time: {typ: 9 ns}}
    modulator: {type: natural-sampling, carrier: 500 kHz}
    filter: {type: lc, inductor: {l: 15 uH}, c_across: {c: 1 uF}, c_ground: {c: 270 nF}}
"""

REFERENCE_BOARD = """
amplifier_spec: 1
supply: {source: dc-source, rails: split, v_rail: 35 V, sinks_current: yes}
channels:
  left:
    rated_power: 120 W
    rated_load: 4 ohm
    load_range: 4 ohm .. 8 ohm
    output_stage:
      topology: half-bridge
      devices: discrete
      snubber: {c: 150 pF, r: 10 ohm}
      over_current: {i_trip: 23 A, sensing: r-ds-on}
      device: {v_dss: 100 V, i_d: 11 A, r_ds_on: {typ: 58 mohm}, q_g: {typ: 12 nC},
        q_sw: {typ: 6.9 nC}, r_g_int: 3.4 ohm, t_j_max: 150 degC, v_gss: 20 V}
    gate_drive: {v_drv: 12 V, r_g_on: 20 ohm, r_g_off: 20 ohm, i_source: {typ: 1.0 A},
      i_sink: {typ: 1.2 A}, dead_time: {min: 40 ns, max: 45 ns}, bootstrap: {c: 22 uF}}
    modulator: {type: self-oscillating, carrier: 400 kHz ± 25 kHz}
    filter: {type: lc, inductor: {l: 22 uH, i_sat: 13 A, dcr: {max: 20 mohm}},
      c_across: {c: 0.47 uF}, c_ground: none}
"""


def own_findings(text: str) -> dict[str, Finding]:
    """Findings of the output stage and gate drive, by check."""
    loaded = load_text(text, "board")
    assert loaded.spec is not None, loaded.refusals
    run = Assessment(loaded.spec, load(), loaded.spec.milestone)
    return {
        item.check: item
        for item in run.findings()
        if item.domain in ("output_stage", "gate_drive") and item.status is Status.FINDING
    }


def test_bridge_that_blew_up_is_caught() -> None:
    """M. Wulf, docu.pdf 2019: 48 V, dead time of one gate delay, trip of 10 A at 500 ns."""
    found = own_findings(FIRST_BRIDGE)
    assert found["dead-time-margin"].severity is Severity.CRITICAL
    assert found["trip-above-music"].severity is Severity.MAJOR


def test_reference_board_is_not_condemned() -> None:
    """IRAUDAMP7D at +-35 V, built many times: nothing worse than minor in these domains."""
    found = own_findings(REFERENCE_BOARD)
    grave = {
        name: item.message for name, item in found.items() if item.severity is not Severity.MINOR
    }
    assert not grave


@pytest.mark.parametrize(
    ("dead_time", "carrier", "expected"),
    [
        ("520 ns", "250 kHz", Severity.MAJOR),
        ("375 ns", "165 kHz", Severity.MAJOR),
        ("45 ns", "400 kHz", None),
    ],
)
def test_dead_time_share_of_published_designs(
    dead_time: str, carrier: str, expected: Severity | None
) -> None:
    """NBitWonder notebook; thesis Universidad de Cantabria 2017; IRAUDAMP7D."""
    text = f"""
amplifier_spec: 1
channels:
  main:
    output_stage: {{devices: discrete}}
    gate_drive: {{dead_time: {dead_time}}}
    modulator: {{carrier: {carrier}}}
"""
    found = own_findings(text).get("dead-time-share")
    assert (found.severity if found else None) == expected

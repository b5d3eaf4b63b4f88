"""Capacitors ahead of a loudspeaker: the cone behind them and the current through them."""

from math import inf

import numpy as np
import pytest

from ampreview.linter.finding import Severity, Status
from ampreview.rules.derived.bass import ahead
from ampreview.rules.derived.excursion import excursion
from ampreview.rules.formulas.driver import box_load, cone_shape

from ..whole import answer
from .test_excursion import Driver, solve

V_RMS, V_B, F_B, Q_L = 20.0, 0.012, 50.0, 7.0


@pytest.mark.parametrize("c", [100e-6, 470e-6, 2e-3])
def test_cone_behind_a_capacitor_moves_as_the_nodes_say(c: float) -> None:
    """Coil, motor, mass, springs, leak and port as complex equations, 1/(s c) beside r_e."""
    d = Driver()
    driver = (d.f_s, d.q_ms, d.q_es)
    alpha, x_free = d.v_as / V_B, d.x_free(V_RMS)
    for f in (12.0, 31.5, 45.0, 63.0, 160.0):
        for v_b, f_b, load in (
            (np.inf, 0.0, 0.0),
            (V_B, 0.0, alpha),
            (V_B, F_B, box_load(f, alpha, F_B, 0.0, Q_L)),
        ):
            quality = Q_L if f_b else 1e15
            model = solve(d, V_RMS, f, v_b, f_b, quality, c).cone
            ours = x_free * cone_shape(f, *driver, load, d.r_e, c)
            assert ours == pytest.approx(model, rel=1e-9)


def test_search_over_the_band_against_a_fine_one() -> None:
    """The peak behind 150 uF is that of the mechanical Q, and lies below the resonance."""
    d = Driver(q_ms=8.0)
    fine = np.geomspace(20.0, 200.0, 2001)
    for c in (150e-6, 1e15):
        motion = (d.x_free(V_RMS), d.f_s, d.q_ms, d.q_es, d.r_e, c, d.v_as)
        for v_b, f_b in ((1e9, 0.0), (V_B, 0.0), (V_B, F_B)):
            found = excursion(*motion, v_b, f_b, 1e9, Q_L, 0.0, 1.0, 20.0, 5e3)
            quality = Q_L if f_b else 1e15
            best = max(solve(d, V_RMS, f, v_b, f_b, quality, c).cone for f in fine)
            assert best * 0.995 < found <= best * (1 + 1e-4)


def free(d: Driver, c: float) -> float:
    """The cone at 22.5 Hz without a box."""
    motion = (d.x_free(V_RMS), d.f_s, d.q_ms, d.q_es, d.r_e, c, d.v_as)
    return excursion(*motion, 1e9, 0.0, 1e9, 1.0, 0.0, 1.0, 22.5, 22.5)


def test_below_the_resonance_a_capacitor_makes_the_cone_move_more() -> None:
    """It resonates with the driver, an inductance there: half as much again at 22.5 Hz."""
    assert free(Driver(), 1e-3) == pytest.approx(1.5 * free(Driver(), inf), rel=0.01)


def test_an_output_capacitor_as_one_coil_sees_it() -> None:
    """Three strings of two coils at 31 Hz, each coil behind 220 uF, all behind 1 mF: voltages."""
    s, coil = 2j * np.pi * 31.0, complex(6.0, 9.0)
    one = coil + 1 / (s * 220e-6)
    whole = 1 / (s * 1e-3) + 2 * one / 3
    across_coil = (2 * one / 3) / whole / 2 * coil / one
    alone = coil / (coil + 1 / (s * ahead(220e-6, 1e-3, 2, 3))) / 2
    assert abs(across_coil) == pytest.approx(abs(alone), rel=1e-12)


SUBWOOFER = """milestone: prototype
supply: {source: dc-source, rails: single, v_rail: 32 V, r_source: 20 mohm, bulk: {c: 4700 uF}}
channels:
  main:
    rated_power: 50 W
    rated_load: 8 ohm
    band: 20 Hz .. 5 kHz
    output_stage: {topology: full-bridge, devices: integrated, efficiency: 90 %,
      r_series: 50 mohm, device: {r_ds_on: 60 mohm}}
    gate_drive: {dead_time: 5 ns, t_pulse_min: 50 ns}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 10 uH, dcr: 15 mohm}}
    limiter: {v_rms: 20 V}
    loudspeaker: {z_rated: 8 ohm, r_e: 6 ohm, f_s: 45 Hz, q_ms: 4, q_es: 0.45, v_as: 20 L,
      s_d: 137 cm2, x_mech: 8 mm, high_pass: none, enclosure: {type: sealed, v_b: 10 L}, MORE}
"""


HALF_BRIDGE = SUBWOOFER.replace("full-bridge", "half-bridge").replace("20 V}", "18 V}")


def moved(block: str, series: str) -> float:
    """Excursion over the mechanical limit, as the program says."""
    text = HALF_BRIDGE.replace("type: lc,", f"type: lc, c_block: {block},")
    found = answer("excursion-destructive", text.replace("MORE", f"c_series: {series}"))
    assert found.evidence.figure is not None, found.message
    return found.evidence.figure


@pytest.mark.parametrize(
    ("block", "series", "c"),
    [
        ("none", "{c: 500 uF}", 500e-6),
        ("{c: 1 mF}", "{c: 1 mF}", 500e-6),
        ("{c: 500 uF}", "none", 500e-6),
        ("{c: 1000 F}", "none", 1e15),
    ],
)
def test_where_the_capacitor_sits_makes_no_difference_to_the_cone(
    block: str, series: str, c: float
) -> None:
    """The nodes with and without one, in a sealed box of 10 L: a third more with 500 uF."""
    fine = np.geomspace(20.0, 150.0, 2001)
    with_c, without = (
        max(solve(Driver(), 1.0, f, 0.01, 0.0, 1e15, x).cone for f in fine) for x in (c, 1e15)
    )
    found = moved(block, series) / moved("none", "none")
    assert found == pytest.approx(with_c / without, rel=2e-4)


def test_an_output_capacitor_that_is_not_given_leaves_the_cone_open() -> None:
    text = HALF_BRIDGE.replace("type: lc,", "type: lc, c_block: {v_rated: 35 V},")
    found = answer("excursion-destructive", text.replace("MORE", "c_series: none"))
    assert found.status is Status.OPEN
    assert [x.path for x in found.advice.missing] == ["channels.main.filter.c_block.c"]


@pytest.mark.parametrize(
    ("more", "severity", "status"),
    [
        # 9.4 mm at 20 Hz without a capacitor; 1 F takes nothing
        ("c_series: none", Severity.CRITICAL, Status.FINDING),
        ("c_series: {c: 1 F}, x_peak: 3 mm", Severity.CRITICAL, Status.FINDING),
        # a reading is no less than the cone moves: it convicts, and acquits nobody
        ("c_series: {v_rated: 63 V}, x_peak: 9 mm", Severity.CRITICAL, Status.FINDING),
        ("c_series: {v_rated: 63 V}, x_peak: 3 mm", None, Status.OPEN),
        ("c_series: {c: 47 uF}", None, Status.MEETS),
    ],
)
def test_no_stated_excursion_stands_in_for_the_model(more, severity, status) -> None:
    found = answer("excursion-destructive", SUBWOOFER.replace("MORE", more))
    assert (found.severity, found.status) == (severity, status), found.message


CURRENT = """milestone: prototype
channels:
  main:
    rated_power: 500 W
    rated_load: 4 ohm
    loudspeaker: {z_rated: ZR, series: 1, parallel: PAR, c_series: {c: 2 mF, v_rated: 250 V MORE}}
"""


@pytest.mark.parametrize(
    ("z", "parallel", "more", "severity"),
    [
        ("4 ohm", 1, ", i_rated: 3 A", Severity.MAJOR),  # 500 W into 4 ohm: 11.18 A
        ("4 ohm", 1, ", i_rated: 11 A", Severity.MINOR),
        ("8 ohm", 2, ", i_rated: 5.5 A", Severity.MINOR),  # 5.59 A each
        ("8 ohm", 2, ", i_rated: 6 A", None),
        ("8 ohm", 1, ", i_rated: 6 A", None),  # rated for less than it is given: 44.7 V / 8 ohm
    ],
)
def test_current_of_the_capacitor_is_that_of_its_loudspeaker(z, parallel, more, severity) -> None:
    text = CURRENT.replace("ZR", z).replace("PAR", str(parallel)).replace("MORE", more)
    assert answer("series-capacitor-current", text).severity is severity


def test_silence_on_the_current_rating_is_open() -> None:
    text = CURRENT.replace("ZR", "4 ohm").replace("PAR", "1").replace(" MORE", "")
    found = answer("series-capacitor-current", text)
    assert found.status is Status.OPEN
    assert [x.path for x in found.advice.missing] == ["channels.main.loudspeaker.c_series.i_rated"]


ONE_RAIL = """milestone: prototype
supply: {source: dc-source, rails: single, v_rail: 36 V}
channels:
  main:
    output_stage: {topology: half-bridge}
    filter: {c_block: BLOCK}
    loudspeaker: {z_rated: 4 ohm, r_e: 3.2 ohm, c_series: SERIES}
"""


@pytest.mark.parametrize(
    ("block", "series", "heat", "volts"),
    [
        ("none", "none", 324 / 3.2, None),  # 18 V of rest in the coil
        ("none", "{c: 1 mF, v_rated: 50 V}", None, 36 / 50),  # its node at the rail: all of it
        ("{c: 1 mF, v_rated: 50 V}", "{c: 1 mF, v_rated: 50 V}", None, 18 / 50),
    ],
)
def test_any_capacitor_keeps_half_the_rail_from_the_coil(block, series, heat, volts) -> None:
    text = ONE_RAIL.replace("BLOCK", block).replace("SERIES", series)
    assert answer("blocking-capacitor-present", text).evidence.figure == pytest.approx(heat)
    assert answer("series-capacitor-voltage", text).evidence.figure == pytest.approx(volts)

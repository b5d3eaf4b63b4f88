"""A capacitor ahead of one loudspeaker: the cone behind it and the current through it."""

import numpy as np
import pytest

from ampreview.linter.finding import Severity, Status
from ampreview.rules.derived.excursion_capacitor import (
    behind_open,
    behind_radiator,
    behind_sealed,
    behind_vented,
)
from ampreview.rules.formulas.series_capacitor import shape_behind_capacitor, vented_load

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
            (V_B, F_B, vented_load(f, alpha, F_B, Q_L)),
        ):
            quality = Q_L if f_b else 1e15
            model = solve(d, V_RMS, f, v_b, f_b, quality, c).cone
            ours = x_free * shape_behind_capacitor(f, *driver, load, d.r_e, c)
            assert ours == pytest.approx(model, rel=1e-9)


def test_search_over_the_band_against_a_fine_one() -> None:
    """The peak behind 150 uF is that of the mechanical Q, and lies below the resonance."""
    d = Driver(q_ms=8.0)
    fine = np.geomspace(20.0, 200.0, 2001)
    first = (d.x_free(V_RMS), d.f_s, d.q_ms, d.q_es, d.r_e, 150e-6)
    band = (0.0, 1.0, 20.0, 5e3)
    for found, v_b, f_b in (
        (behind_open(*first, *band), np.inf, 0.0),
        (behind_sealed(*first, d.v_as, V_B, *band), V_B, 0.0),
        (behind_vented(*first, d.v_as, V_B, F_B, Q_L, *band), V_B, F_B),
    ):
        quality = Q_L if f_b else 1e15
        best = max(solve(d, V_RMS, f, v_b, f_b, quality, 150e-6).cone for f in fine)
        assert best * 0.99 < found <= best * (1 + 1e-4)
    # a radiator without stiffness of its own is a port
    port = behind_vented(*first, d.v_as, V_B, F_B, Q_L, *band)
    limp = behind_radiator(*first, d.v_as, V_B, F_B, Q_L, 1e9, *band)
    assert limp == pytest.approx(port, rel=1e-6)


def test_below_the_resonance_a_capacitor_makes_the_cone_move_more() -> None:
    """It resonates with the driver, an inductance there: half as much again at 22.5 Hz."""
    d = Driver()
    plain = behind_open(d.x_free(V_RMS), 45.0, 4.0, 0.45, 6.0, 1e9, 0.0, 1.0, 22.5, 22.6)
    found = behind_open(d.x_free(V_RMS), 45.0, 4.0, 0.45, 6.0, 1e-3, 0.0, 1.0, 22.5, 22.6)
    assert found == pytest.approx(1.5 * plain, rel=0.01)


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

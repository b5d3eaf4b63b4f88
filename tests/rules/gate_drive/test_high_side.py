"""The upper gate's supply and ratings, and dead time of which a row is missing."""

import math

import pytest

from ampreview.linter.evaluation.catalogue import load
from ampreview.linter.finding import Finding, Severity, Status

from ..whole import answer as answer_of

STAGE = """milestone: prototype
supply: {{source: dc-source, rails: split, v_rail: 60 V, sinks_current: yes}}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      device: {{{device}}}
    gate_drive: {{v_drv: 12 V, r_g_on: 10 ohm, r_g_off: 5 ohm, i_source: 2 A, i_sink: 4 A,
      delay_mismatch: 5 ns, dead_time: {dead}{gate}}}
"""
ROWS = {
    "t_d_on": "10 ns",
    "t_d_off": "25 ns",
    "t_f": "15 ns",
    "q_g": "30 nC",
    "q_gd": "8 nC",
    "v_gs_th": "{min: 2 V, typ: 3 V}",
    "r_g_int": "2 ohm",
}


def answer(check: str, gate: str = "", dead: str = "60 ns", without: str = "") -> Finding:
    """The answer of one check, with a row of the data sheet left out."""
    device = ", ".join(f"{name}: {value}" for name, value in ROWS.items() if name != without)
    return answer_of(check, STAGE.format(device=device, gate=gate, dead=dead))


@pytest.mark.parametrize(
    ("gate", "status", "severity"),
    [
        ("", Status.OPEN, None),
        (", bootstrap: none", Status.OPEN, None),
        (", bootstrap: none, floating_supply: none", Status.FINDING, Severity.CRITICAL),
        (", bootstrap: none, floating_supply: isolated", Status.MEETS, None),
        (", bootstrap: none, floating_supply: p-channel", Status.MEETS, None),
        (", bootstrap: {c: 220 nF}", Status.MEETS, None),
    ],
)
def test_something_supplies_the_upper_gate(
    gate: str, status: Status, severity: Severity | None
) -> None:
    found = answer("high-side-supply", gate)
    assert (found.status, found.severity) == (status, severity)


def test_floating_pin_and_diode_by_loops() -> None:
    """Upper switch on: node at +60 V, driver's ground at -60 V, the capacitor 12 V above."""
    node, ground = 60.0, -60.0
    floating = node + 12.0 - ground
    gate = ", v_floating: 150 V, bootstrap: {v_r: 200 V}"
    assert answer("high-side-voltage", gate).evidence.figure == pytest.approx(floating / 150)
    # the diode's anode stays at the gate supply, 12 V above the driver's ground
    reverse = (node + 12.0) - (ground + 12.0)
    weak = answer("high-side-voltage", ", v_floating: 600 V, bootstrap: {v_r: 100 V}")
    assert weak.evidence.figure == pytest.approx(reverse / 100)
    assert weak.severity is Severity.CRITICAL


def test_threshold_counts_hot() -> None:
    """By Euler steps: both gates with the threshold of 100 degC, 75 K of 12.8 mV/K below 2 V."""
    found = answer("dead-time-margin")
    tau_off, tau_on = (3 + 5 + 2) * 22e-9 / 12, (6 + 10 + 2) * 22e-9 / 12
    step, down, up = 1e-12, 12.0, 0.0
    t_off = t_on = 0.0
    while down > 2 - 0.96:
        down -= down / tau_off * step
        t_off += step
    while up < 2 - 0.96:
        up += (12 - up) / tau_on * step
        t_on += step
    assert t_off - t_on > 25e-9 + 15e-9 - 10e-9  # longer than printed
    assert found.evidence.figure == pytest.approx(60e-9 - (t_off - t_on) - 5e-9, abs=0.1e-9)


@pytest.mark.parametrize("row", sorted(ROWS))
def test_a_row_left_out_never_releases_a_dead_time(row: str) -> None:
    """Too short by the printed rows: with any of them left out it is not met either."""
    assert answer("dead-time-margin", dead="20 ns").severity is Severity.CRITICAL
    found = answer("dead-time-margin", dead="20 ns", without=row)
    assert found.status is not Status.MEETS
    assert found.severity is Severity.CRITICAL or found.advice.missing


def test_a_negative_margin_cannot_be_permitted() -> None:
    entry = load().entry("dead-time-margin")
    assert entry is not None
    assert not entry.check.permissible


def test_dead_times_overcharge_the_bootstrap_capacitor() -> None:
    """Step by step: 30 ns of dead time at -2.1 V and 1 us at ground, 2 ohm, 100 nF, no load."""
    gan = STAGE.replace("v_drv: 12 V", "v_drv: 5 V").replace("{{{device}}}", "{{{device}, GAN}}")
    gan = gan.replace("GAN", "v_gss: 6 V, v_sd: 2.1 V")
    rows = ", ".join(f"{name}: {value}" for name, value in ROWS.items())
    supply = ", bootstrap: {c: 100 nF, v_f: 0.4 V}"
    found = answer_of("bootstrap-overcharge", gan.format(device=rows, gate=supply, dead="30 ns"))
    charge = 0.0
    for _ in range(4000):
        for node, time in ((-2.1, 30e-9), (0.0, 1e-6)):
            drive = 5.0 - 0.4 - node
            if drive > charge:
                charge = drive - (drive - charge) * math.exp(-time / (2 * 100e-9))
    assert found.evidence.figure == pytest.approx(charge / 6, rel=1e-3)
    assert found.severity is Severity.MAJOR
    held = gan.format(device=rows, gate=supply.replace("V}", "V, v_clamp: 5.2 V}"), dead="30 ns")
    assert answer_of("bootstrap-overcharge", held).status is Status.MEETS

"""Lowest bootstrap voltage against the driver's lockout.

The driver watches its floating supply and turns the upper switch off when it falls below
the lockout threshold.  That saves the switch, but the output drops out in the loudest
passages, crackles, or stays off until the next reset.

The lowest voltage is the balance of charge and refill at the largest modulation depth, as
in bootstrap-under-voltage; the threshold counts with its upper end.  Where the driver has
no lockout of the floating supply, the switch is unprotected and the other check alone
decides.  First fixes: a higher gate supply, less resistance in the refill path, a limit of
the depth.  Half a volt is kept for ripple of the gate supply and for the diode when cold.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation


def figure(v_bootstrap_min: float, v_uvlo: float) -> float:
    """Lowest bootstrap voltage above the lockout threshold."""
    return v_bootstrap_min - v_uvlo


CHECK = Check(
    title="Lowest bootstrap voltage vs. driver lockout",
    figure=figure,
    unit="V",
    each="channel",
    stake="rating",
    formula="v_bootstrap_min - v_uvlo",
    sentence="Bootstrap supply falls to {v_bootstrap_min} at maximum duty cycle,"
    " {figure:+above|below} the driver lockout of {v_uvlo}.",
    inputs={
        "v_bootstrap_min": Input("v_bootstrap_min"),
        "v_uvlo": Input("gate_drive.bootstrap.v_uvlo"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtLeast(
        major="0 V",
        minor="0.5 V",
        basis={
            "major": derivation("the driver turns the upper switch off"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("gate_drive.v_drv", "0.5 V"),
        Lever("modulator.m_max", "1 %"),
        Lever("gate_drive.bootstrap.c", "E6"),
    ),
    sources=(derivation("exponential refill and equal charge in every period"),),
    cases=(
        Case(
            {"v_bootstrap_min": "10.36 V", "v_uvlo": "8.9 V"},
            "1.46 V",
            "computed: iteration of charge and refill, period by period: 10.36 V less 8.9 V",
        ),
        Case(
            {"v_bootstrap_min": "10.8 V", "v_uvlo": "8.9 V"},
            "1.9 V",
            "derived: 44 nC on 220 nF without resistance lose only 0.2 V of 11 V",
        ),
    ),
    topic=("gate_drive.bootstrap.v_uvlo",),
    asked_from="production",
    fails="""
channels:
  main:
    output_stage: {devices: discrete, device: {q_g: 60 nC}}
    gate_drive: {v_drv: 10 V, bootstrap: {c: 220 nF, r: 10 ohm, v_f: 1 V, i_q: 0.2 mA,
      v_uvlo: 8.4 V}}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 90 %}
""",
    passes="""
channels:
  main:
    output_stage: {devices: discrete, device: {q_g: 30 nC}}
    gate_drive: {v_drv: 12 V, bootstrap: {c: 220 nF, r: 2.2 ohm, v_f: 1 V, i_q: 0.2 mA,
      v_uvlo: 8.4 V}}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 85 %}
""",
)

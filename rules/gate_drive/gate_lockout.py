"""Lowest bootstrap voltage against the driver's lockout.

The driver watches its floating supply and turns the upper switch off when it falls below
the lockout threshold.  That saves the switch, but the output drops out in the loudest
passages, crackles, or stays off until the next reset.

The lowest voltage is the balance of charge and refill at the largest modulation depth, as
in bootstrap-under-voltage; the threshold counts with its upper end.  Where the driver has
no lockout of the floating supply, the switch is unprotected and the other check alone
decides.  First cures: a higher gate supply, less resistance in the refill path, a limit of
the depth.  Half a volt is kept for ripple of the gate supply and for the diode when cold.
"""

from typing import Any

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtLeast,
    Case,
    Check,
    Constant,
    Input,
    Lever,
    derivation,
)
from ..formulas.gate import bootstrap_charge, bootstrap_minimum, period_at
from ..formulas.maths import smaller


def figure(
    v_drv: Any,
    v_f: Any,
    q_g: Any,
    parallel: Any,
    i_q: Any,
    carrier: Any,
    c: Any,
    r: Any,
    m_max: Any,
    v_uvlo: Any,
    modulator: str,
    m_most: Any,
) -> Any:
    """Lowest bootstrap voltage above the lockout threshold."""
    depth = smaller(m_max, m_most)
    period = period_at(modulator, depth, carrier)
    charge = bootstrap_charge(parallel * q_g, i_q, 1 / period)
    t_refill = (1 - depth) / 2 * period
    return bootstrap_minimum(v_drv, v_f, charge, c, r, t_refill) - v_uvlo


CHECK = Check(
    title="Lowest bootstrap voltage above the driver's lockout",
    figure=figure,
    unit="V",
    each="channel",
    stake="rating",
    formula="v_drv - v_f - q / c / (1 - exp(-t / (r c))) - v_uvlo, "
    "q = parallel q_g + i_q / f, t = (1 - m) / (2 f), m = m_max but at most m_most, f = carrier, "
    "of a self-oscillating modulator carrier (1 - m^2)",
    sentence="At depth {m_max}, refilled through {r}, the bootstrap supply stays"
    " {figure:+above|below} the lockout of {v_uvlo}.",
    inputs={
        "v_drv": Input("gate_drive.v_drv", "V", "gate supply at the driver"),
        "v_f": Input("gate_drive.bootstrap.v_f", "V", "drop of the bootstrap diode"),
        "q_g": Input("output_stage.device.q_g", "nC", "total gate charge of one device"),
        "parallel": Input("output_stage.parallel", "1", "devices in parallel as one switch"),
        "i_q": Input(
            "gate_drive.bootstrap.i_q",
            "uA",
            "current drawn by the floating supply",
            default=Assumption("0 A", "favourable", derivation("gate charge alone counted")),
        ),
        "carrier": Input("modulator.carrier", "kHz", "switching frequency of a leg"),
        "c": Input("gate_drive.bootstrap.c", "nF", "bootstrap capacitor"),
        "r": Input("gate_drive.bootstrap.r", "ohm", "resistance of the refill path"),
        "m_max": Input("m_max", "1", "largest modulation depth"),
        "v_uvlo": Input("gate_drive.bootstrap.v_uvlo", "V", "lockout of the floating supply"),
        "modulator": Input("modulator.type", "word", "kind of modulator"),
        "m_most": Constant(
            "0.95", "depth that a balance is taken at, where nothing limits it", COMMON_PRACTICE
        ),
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
            {
                "v_drv": "12 V",
                "v_f": "1 V",
                "q_g": "30 nC",
                "parallel": 1.0,
                "i_q": "0.2 mA",
                "carrier": "400 kHz",
                "c": "220 nF",
                "r": "4.7 ohm",
                "m_max": 0.8,
                "modulator": "natural-sampling",
                "v_uvlo": "8.9 V",
            },
            "1.46 V",
            "computed: iteration of charge and refill, period by period: 10.36 V less 8.9 V",
            tolerance=0.01,
        ),
        Case(
            {
                "v_drv": "12 V",
                "v_f": "1 V",
                "q_g": "44 nC",
                "parallel": 1.0,
                "i_q": "0 A",
                "carrier": "400 kHz",
                "c": "220 nF",
                "r": "0 ohm",
                "m_max": 0.8,
                "modulator": "natural-sampling",
                "v_uvlo": "8.9 V",
            },
            "1.9 V",
            "derived: without resistance only 0.2 V are lost",
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

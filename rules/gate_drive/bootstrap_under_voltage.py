"""Lowest voltage of the bootstrap supply against the plateau of the gate.

At high modulation the lower switch is on only briefly, and the bootstrap capacitor has to
win back in that time what it gives away in the whole period.  The resistance of the refill
path sets a balance: the lowest voltage in steady state.  If it comes near the plateau of
the gate, the upper switch carries the load half on and burns; one builder saw the positive
swing stop at 10 V of 26 V while the device heated up.

The balance is taken at the largest modulation depth, at most 95 %, as if it lasted.  A large
capacitor rides through the crest of a high note, not of a low or clipped one.  Nearer to
full depth pulses come and go, and bootstrap-hold-at-clipping asks how long nothing refills.
First cures: less resistance or a faster diode in the refill path, a limit of the depth, a
higher gate supply.  A lockout in the driver turns this into a mute instead of a failure: see
gate-lockout.
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
    Source,
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
    v_plateau: Any,
    modulator: str,
    m_most: Any,
) -> Any:
    """Lowest bootstrap voltage above the plateau."""
    depth = smaller(m_max, m_most)
    period = period_at(modulator, depth, carrier)
    charge = bootstrap_charge(parallel * q_g, i_q, 1 / period)
    t_refill = (1 - depth) / 2 * period
    return bootstrap_minimum(v_drv, v_f, charge, c, r, t_refill) - v_plateau


CHECK = Check(
    title="Lowest bootstrap voltage above the plateau of the gate",
    figure=figure,
    unit="V",
    each="channel",
    stake="rating",
    formula="v_drv - v_f - q / c / (1 - exp(-t / (r c))) - v_plateau, "
    "q = parallel q_g + i_q / f, t = (1 - m) / (2 f), m = m_max but at most m_most, f = carrier, "
    "of a self-oscillating modulator carrier (1 - m^2)",
    sentence="At depth {m_max}, refilled through {r}, the bootstrap supply falls to"
    " {figure:+above|below} the plateau of {v_plateau}.",
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
        "v_plateau": Input("v_plateau", "V", "plateau of the gate"),
        "modulator": Input("modulator.type", "word", "kind of modulator"),
        "m_most": Constant(
            "0.95", "depth that a balance is taken at, where nothing limits it", COMMON_PRACTICE
        ),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtLeast(
        critical="0 V",
        major="1 V",
        minor="2 V",
        basis={
            "critical": derivation("below the plateau the upper switch is half on"),
            "major": COMMON_PRACTICE,
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("gate_drive.v_drv", "0.5 V"),
        Lever("modulator.m_max", "1 %"),
        Lever("gate_drive.bootstrap.c", "E6"),
    ),
    sources=(
        derivation("exponential refill and equal charge in every period"),
        Source("ST L6388E data sheet: drop of the refill path", "p. 9"),
        Source("NBitWonder notebook, entry 022: upper switch stops conducting at high duty"),
    ),
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
                "v_plateau": "0 V",
            },
            "10.36 V",
            "computed: iteration of charge and refill, period by period, duty 0.9",
            tolerance=2e-3,
        ),
        Case(
            {
                "v_drv": "12 V",
                "v_f": "0 V",
                "q_g": "30 nC",
                "parallel": 1.0,
                "i_q": "0 A",
                "carrier": "100 kHz",
                "c": "1 mF",
                "r": "125 ohm",
                "m_max": 0.0,
                "modulator": "natural-sampling",
                "v_plateau": "0 V",
            },
            "11.25 V",
            "published: ST L6388E data sheet p. 9, 30 nC through 125 ohm in 5 us drop 0.75 V "
            "(printed 0.8 V)",
            tolerance=2e-3,
        ),
    ),
    topic=("gate_drive.bootstrap",),
    fails="""
channels:
  main:
    output_stage: {devices: discrete, device: {q_g: 60 nC, v_gs_pl: 5 V}}
    gate_drive: {v_drv: 10 V, bootstrap: {c: 220 nF, r: 10 ohm, v_f: 1 V, i_q: 0.2 mA}}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
""",
    passes="""
channels:
  main:
    output_stage: {devices: discrete, device: {q_g: 30 nC, v_gs_pl: 4 V}}
    gate_drive: {v_drv: 12 V, bootstrap: {c: 220 nF, r: 2.2 ohm, v_f: 1 V, i_q: 0.2 mA}}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 90 %}
""",
)

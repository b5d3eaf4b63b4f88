"""Lowest voltage of the bootstrap supply against the plateau of the gate.

At high modulation the lower switch is on only briefly, and the bootstrap capacitor has to
win back in that time what it gives away in the whole period.  The resistance of the refill
path sets a balance: the lowest voltage in steady state.  If it comes near the plateau of
the gate, the upper switch carries the load half on and burns; one builder saw the positive
swing stop at 10 V of 26 V while the device heated up.

The balance is taken at the largest modulation depth, at most 95 %, as if it lasted.  A large
capacitor rides through the crest of a high note, not of a low or clipped one.  Nearer to
full depth pulses come and go, and bootstrap-hold-at-clipping asks how long nothing refills.
First fixes: less resistance or a faster diode in the refill path, a limit of the depth, a
higher gate supply.  A lockout in the driver turns this into a mute instead of a failure: see
gate-lockout.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source, derivation
from ..hazards import FIRST_POWER_UP


def figure(v_bootstrap_min: float, v_plateau: float) -> float:
    """Lowest bootstrap voltage above the plateau."""
    return v_bootstrap_min - v_plateau


CHECK = Check(
    title="Lowest bootstrap voltage vs. gate plateau",
    figure=figure,
    unit="V",
    each="channel",
    stake="rating",
    formula="v_bootstrap_min - v_plateau",
    sentence="Bootstrap supply falls to {v_bootstrap_min} at maximum duty cycle,"
    " {figure:+above|below} the {v_plateau} gate plateau.",
    inputs={
        "v_bootstrap_min": Input("v_bootstrap_min"),
        "v_plateau": Input("v_plateau"),
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
        Source("ST L6387 data sheet", "p. 5: drop of the refill path"),
        Source("NBitWonder notebook", "entry 022: upper switch stops conducting at high duty"),
    ),
    cautions=(FIRST_POWER_UP,),
    cases=(
        Case(
            {"v_bootstrap_min": "10.36 V", "v_plateau": "5 V"},
            "5.36 V",
            "computed: iteration of charge and refill, period by period, 400 kHz, duty 0.9",
        ),
        Case(
            {"v_bootstrap_min": "11.25 V", "v_plateau": "4.5 V"},
            "6.75 V",
            "computed: ST L6387 data sheet p. 5, 30 nC through 125 ohm in 5 us drop 0.75 V "
            "(printed 0.8 V); 12 V and the plateau assumed",
        ),
    ),
    topic=("gate_drive.bootstrap",),
    asked_from="prototype",
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

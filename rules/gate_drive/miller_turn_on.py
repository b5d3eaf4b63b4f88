"""False turn-on by the slope of the switch node.

When the node rises, the gate-drain charge of the lower, open switch flows out through its
gate loop and lifts its gate. If that bump passes the threshold, which falls as the device heats,
both switches conduct for a moment in every period: heat without signal, dips on the supply, and
sometimes a dead stage. A fall that is not stated is taken as the steepest that data sheets print.
The threshold of gallium nitride (a gate rated for less than 8 V) stays where it is.

The bump is that of a constant slope into gate-drain and gate-source capacitance, the former
taken as charge over swing (twelve times the small-signal value printed at high voltage, in
one data sheet). The printed charge belongs to a test at about half the voltage rating; at a
smaller swing it is scaled by the square-root law of a junction, or a 500 V device on 70 V
would be condemned that works without trouble. The driver counts with half of voltage over peak
current: a transistor that is pulled up by two or three volts is far from its peak current,
and by its square law at least twice as good a conductor as there. What is left still
overstates the bump: part of the printed gate-drain charge belongs to a gate that is already
on, and source inductance helps. The printed threshold is the gate voltage for a fraction of a
milliampere; by the square law between it and the plateau the first ampere flows about 15 %
higher. A published controller circuit (+-35 V, 10 ohm, driver of 1.2 A) comes out at 155 % for
the lowest threshold, hot (charges of its switch from memory), and works: major begins beyond,
and nothing is critical. First fixes: a diode across the turn-off resistor, a larger turn-on
resistor, a device with gate-charge-ratio below one, a negative gate supply.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    AtMost,
    Case,
    Check,
    Input,
    Lever,
    derivation,
    from_memory,
)
from ..derived.gate_charge import T_JUNCTION, THRESHOLD_FALL
from ..formulas.gate import IRFB4020, miller_bump, threshold_in_use


def figure(
    slew: float,
    v_swing: float,
    r_gate: float,
    q_gd: float,
    c_iss: float,
    v_gs_th: float,
    t_junction: float,
    t_cold: float,
    coefficient: float,
    v_least: float,
    v_gss: float,
    v_gss_gan: float,
) -> float:
    """Bump of the gate over the hot threshold."""
    bump = miller_bump(v_swing, slew, r_gate, q_gd / v_swing, c_iss)
    threshold = threshold_in_use(
        v_gs_th, t_junction, t_cold, coefficient, v_least, v_gss, v_gss_gan
    )
    return bump / threshold


CHECK = Check(
    title="False turn-on: induced gate voltage vs. hot threshold",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="r_gate c_gd slew (1 - exp(-v_swing / (slew r_gate (c_gd + c_iss)))) / "
    "(v_gs_th - coefficient (t_junction - t_cold)), c_gd = q_gd / v_swing, threshold at least "
    "v_least and not falling for v_gss below v_gss_gan",
    sentence="Induced gate voltage reaches {figure:% of} the threshold at {t_junction} ({slew}"
    " through {r_gate}).",
    inputs={
        "slew": Input("slew"),
        "v_swing": Input("v_swing"),
        "r_gate": Input("r_gate_hold"),
        "q_gd": Input("q_gd_swing"),
        "c_iss": Input("output_stage.device.c_iss", meaning="input capacitance, taken for c_gs"),
        "v_gs_th": Input("output_stage.device.v_gs_th"),
        "t_junction": T_JUNCTION,
        **THRESHOLD_FALL,
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtMost(
        major="160 %",
        minor="70 %",
        basis={
            "major": from_memory(
                "IRS2092 data sheet, typical application: works at 155 % of this figure"
            ),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(
        Lever("gate_drive.r_g_off", "E24", within=10.0),
        Lever("gate_drive.r_g_on", "E24", within=5.0),
    ),
    otherwise="a device with a higher threshold or less gate-drain charge, or a driver that holds"
    " the gate below ground",
    sources=(
        derivation("first-order circuit of gate loop and gate capacitances on a ramp"),
        IRFB4020,
        from_memory("TI SLUA618: slope below v_th / (r c_gd), the pessimistic form"),
    ),
    cases=(
        Case(
            {
                "slew": "10 V/ns",
                "v_swing": "100 V",
                "r_gate": "5 ohm",
                "q_gd": "5 nC",
                "c_iss": "1500 pF",
                "v_gs_th": "2.2 V",
                "t_junction": "125 degC",
                "coefficient": "7 mV/K",
                "v_gss": "20 V",
            },
            "120.8 %",
            "computed: differential equation of the gate solved, bump of 1.812 V against 1.5 V",
        ),
        Case(
            {
                "slew": "5 V/ns",
                "v_swing": "40 V",
                "r_gate": "5.6 ohm",
                "q_gd": "5.8 nC",
                "c_iss": "3048 pF",
                "v_gs_th": "2.2 V",
                "t_junction": "125 degC",
                "coefficient": "7 mV/K",
                "v_gss": "20 V",
            },
            "97.67 %",
            "computed: data of the CSD19501KCS data sheet, differential equation solved: 1.465 V",
        ),
    ),
    topic=("output_stage.device.v_gs_th",),
    asked_from="prototype",
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      t_edge: 8 ns
      device: {q_gd: 6 nC, c_iss: 900 pF, v_gs_th: {min: 2 V}}
    gate_drive: {r_g_off: 22 ohm, i_sink: 2 A}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    output_stage:
      topology: half-bridge
      devices: discrete
      t_edge: 30 ns
      device: {q_gd: 2 nC, c_iss: 3000 pF, v_gs_th: {min: 3 V}}
    gate_drive: {r_g_off: 1 ohm, i_sink: 4 A}
""",
)

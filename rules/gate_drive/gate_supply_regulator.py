"""Junction temperature of a linear regulator that makes the gate supply.

The gates take their charge from the gate supply in every period, and a linear regulator
between rail and gate supply burns the difference: four devices of 18 nC at 500 kHz draw
36 mA, which from 48 V is 1.3 W, far too much for a small package.

All switches that this channel's regulator feeds are counted, with its own and other loads
as stated; where several channels share one regulator, state the others under ``i_other``.
For a split supply the regulator is taken to hang on one rail.  Switching regulators and
separate supplies are not judged.  First fixes: a switching regulator, a series resistor that
takes part of the heat, a bigger package, a lower carrier.  The minor limit keeps 25 K
below the printed maximum.
"""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
)
from ..formulas.gate import gate_power
from ..hazards import STAGE_LOST


def figure(
    t_j_max: float,
    t_air: float,
    r_th_ja: float,
    v_rail: float,
    v_drv: float,
    n_legs: float,
    parallel: float,
    q_g: float,
    carrier: float,
    i_other: float,
) -> float:
    """Distance of the regulator's junction from its limit."""
    current = gate_power(2 * n_legs * parallel, q_g, v_drv, carrier) / v_drv + i_other
    return t_j_max - t_air - r_th_ja * (v_rail - v_drv) * current


CHECK = Check(
    title="Gate supply regulator: junction temperature vs. limit",
    figure=figure,
    unit="K",
    each="channel",
    stake="rating",
    formula="t_j_max - t_air - r_th_ja (v_rail - v_drv) (2 n_legs parallel q_g carrier + i_other)",
    sentence="Gate supply regulator ({v_rail} to {v_drv}, air {t_air}) runs {figure:+below|above}"
    " its junction limit of {t_j_max}.",
    inputs={
        "t_j_max": Input("gate_drive.regulator.t_j_max"),
        "t_air": Input("t_air_inside"),
        "r_th_ja": Input("gate_drive.regulator.r_th_ja"),
        "v_rail": Input("v_rail_high"),
        "v_drv": Input("gate_drive.v_drv"),
        "n_legs": Input("n_legs"),
        "parallel": Input("output_stage.parallel"),
        "q_g": Input("output_stage.device.q_g"),
        "carrier": Input("modulator.carrier"),
        "i_other": Input(
            "gate_drive.regulator.i_other",
            default=Assumption("0 A", "favourable", derivation("gates alone counted")),
        ),
    },
    applies={"output_stage.devices": "discrete", "gate_drive.regulator.type": "linear"},
    limits=AtLeast(
        critical="0 K",
        minor="25 K",
        basis={
            "critical": derivation("absolute maximum rating of the regulator"),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("gate_drive.regulator.r_th_ja", "5 K/W"), Lever("modulator.carrier", "10 kHz")),
    sources=(
        derivation("gate charge times carrier is a current; it drops rail to gate supply"),
        Source(
            "M. Wulf, 300 W Class D amplifier, documentation V. 1.0, 2019",
            "equation 1: 4 x 18 nC x 500 kHz = 36 mA",
        ),
    ),
    cautions=(STAGE_LOST,),
    cases=(
        Case(
            {
                "t_j_max": "125 degC",
                "t_air": "40 degC",
                "r_th_ja": "50 K/W",
                "v_rail": "48 V",
                "v_drv": "12 V",
                "n_legs": 2.0,
                "parallel": 1.0,
                "q_g": "18 nC",
                "carrier": "500 kHz",
                "i_other": "0 A",
            },
            "20.2 K",
            "published: M. Wulf, docu.pdf 2019, 36 mA of gate current, here through 36 V: 1.296 W;"
            " 50 K/W in air of 40 degC assumed",
        ),
        Case(
            {
                "t_j_max": "125 degC",
                "t_air": "25 degC",
                "r_th_ja": "62 K/W",
                "v_rail": "25.2 V",
                "v_drv": "11 V",
                "n_legs": 2.0,
                "parallel": 1.0,
                "q_g": "0 nC",
                "carrier": "400 kHz",
                "i_other": "15 mA",
            },
            "86.79 K",
            "derived: 15 mA through 14.2 V are 0.213 W",
        ),
        Case(
            {
                "t_j_max": "125 degC",
                "t_air": "40 degC",
                "r_th_ja": "20 K/W",
                "v_rail": "24 V",
                "v_drv": "12 V",
                "n_legs": 2.0,
                "parallel": 2.0,
                "q_g": "50 nC",
                "carrier": "400 kHz",
                "i_other": "20 mA",
            },
            gives="41.8 K",
            origin="derived: eight gates, 160 mA, and 20 mA through 12 V: 2.16 W, 43.2 K",
        ),
    ),
    topic=("gate_drive.regulator",),
    asked_from="production",
    fails="""
supply: {source: dc-source, rails: single, v_rail: 48 V}
channels:
  main:
    output_stage: {topology: full-bridge, devices: discrete, device: {q_g: 29 nC}}
    gate_drive: {v_drv: 12 V, regulator: {type: linear, i_other: 10 mA, r_th_ja: 62 K/W,
      t_j_max: 125 degC}}
    modulator: {carrier: 500 kHz}
thermal: {t_air_inside: 55 degC}
""",
    passes="""
supply: {source: dc-source, rails: single, v_rail: 25 V}
channels:
  main:
    output_stage: {topology: full-bridge, devices: discrete, device: {q_g: 14 nC}}
    gate_drive: {v_drv: 12 V, regulator: {type: linear, i_other: 10 mA, r_th_ja: 62 K/W,
      t_j_max: 125 degC}}
    modulator: {carrier: 384 kHz}
thermal: {t_air_inside: 55 degC}
""",
)

"""Driver current at the plateau against the edge that the spec states.

The edge of the switch node is made on the plateau of the gate, where the driver's current
moves the gate-drain charge.  A stated edge time is therefore a statement about gate
current.  If the driver cannot deliver it, the edge of the finished board will be slower
than the loss and emission figures assume.

The current at turn-on is what the gate loop lets through with gate supply less plateau; the
edge counts from 10 to 90 %, the charge for the whole swing.  A measured edge that is faster
than the gate explains is made by the load current; then nothing is wrong with the driver.
First fixes: a stronger driver, a smaller gate resistor, or an honest edge time.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, derivation


def figure(v_drv: float, v_plateau: float, r_gate_on: float, t_edge: float, q_gd: float) -> float:
    """Gate current on the plateau over the current that the stated edge needs."""
    return (v_drv - v_plateau) / r_gate_on * (t_edge / 0.8) / q_gd


PLATEAU = derivation("gate current times edge time is the gate-drain charge")

CHECK = Check(
    title="Gate current vs. current for the stated edge",
    figure=figure,
    unit="%",
    each="channel",
    stake="performance",
    formula="(v_drv - v_plateau) / r_gate_on t_edge / 0.8 / q_gd",
    sentence="Gate current through {r_gate_on} is {figure:% of} what a {t_edge} edge needs"
    " ({q_gd} gate-drain charge).",
    inputs={
        "v_drv": Input("gate_drive.v_drv"),
        "v_plateau": Input("v_plateau"),
        "r_gate_on": Input("r_gate_on"),
        "t_edge": Input("output_stage.t_edge"),
        "q_gd": Input("output_stage.device.q_gd"),
    },
    applies={"output_stage.devices": "discrete", "edge_stated": "yes"},
    limits=AtLeast(
        major="50 %", minor="80 %", basis={"major": COMMON_PRACTICE, "minor": COMMON_PRACTICE}
    ),
    levers=(Lever("gate_drive.r_g_on", "E24", within=5.0),),
    sources=(PLATEAU,),
    cases=(
        Case(
            {
                "v_drv": "12 V",
                "v_plateau": "3.125 V",
                "r_gate_on": "6 ohm",
                "t_edge": "3.2 ns",
                "q_gd": "6 nC",
            },
            "98.61 %",
            "computed: transistor-level differential equation, 4.079 ns for the whole swing",
            tolerance=0.01,
        ),
        Case(
            {
                "v_drv": "12 V",
                "v_plateau": "3.125 V",
                "r_gate_on": "29.58 ohm",
                "t_edge": "16 ns",
                "q_gd": "6 nC",
            },
            "100 %",
            "derived: 20 ns for the whole swing need 29.58 ohm",
        ),
    ),
    topic=("output_stage.t_edge",),
    fails="""
channels:
  main:
    output_stage: {devices: discrete, t_edge: 4 ns, device: {q_gd: 6 nC, v_gs_pl: 4.5 V}}
    gate_drive: {v_drv: 12 V, r_g_on: 22 ohm, i_source: 1 A}
""",
    passes="""
channels:
  main:
    output_stage: {devices: discrete, t_edge: 20 ns, device: {q_gd: 6 nC, v_gs_pl: 4.5 V}}
    gate_drive: {v_drv: 12 V, r_g_on: 10 ohm, i_source: 2 A}
""",
)

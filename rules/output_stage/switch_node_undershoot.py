"""How far the switch node dips below the driver's ground.

When the upper switch lets go, the load current moves to the lower diode through the
inductance of the loop.  The node dips below the driver's ground by the diode's drop and by
L di/dt.  Beyond the limit of the driver its level shifter latches or misses pulses, and
the upper switch stays on: a failure that shows at high current only.

The whole loop inductance is counted although only the part below the node acts, and the
current is taken to change within the edge: a cautious estimate, hence no critical limit.
Negative rail and driver ground are taken to be one node.  First fixes: a shorter lower
loop, a slower turn-off edge, a resistor in the driver's return to the node, a Schottky
diode from node to driver ground.  Some drivers print the limit as supply minus 15 V, so
10 V of gate supply leave 5 V.
"""

from ...linter.check import COMMON_PRACTICE, AtMost, Case, Check, Input, Lever, Source, derivation


def figure(
    v_sd: float, l_loop: float, i_leg_peak: float, t_edge: float, v_node_negative: float
) -> float:
    """Dip of the node over the driver's limit."""
    return (v_sd + l_loop * i_leg_peak / t_edge) / v_node_negative


CHECK = Check(
    title="Switch-node undershoot vs. driver rating",
    figure=figure,
    unit="%",
    each="channel",
    stake="rating",
    formula="(v_sd + l_loop i_leg_peak / t_edge) / v_node_negative",
    sentence="Switch node dips {v_node_negative:*figure} below ground ({i_leg_peak}, {l_loop},"
    " {t_edge}); driver rating {v_node_negative} ({figure:%}).",
    inputs={
        "v_sd": Input("output_stage.device.v_sd"),
        "l_loop": Input("output_stage.l_loop"),
        "i_leg_peak": Input("i_leg_peak"),
        "t_edge": Input("t_edge"),
        "v_node_negative": Input("gate_drive.v_node_negative"),
    },
    applies={"output_stage.devices": "discrete"},
    limits=AtMost(
        major="100 %",
        minor="80 %",
        basis={
            "major": Source(
                "LM5109B data sheet, Texas Instruments; IRS20124S data sheet "
                "PD60240, International Rectifier",
                "section 6.1, note 2: never below VDD - 15 V; p. 2: down to -4 V",
            ),
            "minor": COMMON_PRACTICE,
        },
    ),
    levers=(Lever("output_stage.l_loop", "0.5 nH"), Lever("gate_drive.r_g_on", "E24", within=5.0)),
    sources=(derivation("diode drop and L di/dt in series below ground"),),
    cases=(
        Case(
            {
                "v_sd": "1 V",
                "l_loop": "5 nH",
                "i_leg_peak": "5 A",
                "t_edge": "10 ns",
                "v_node_negative": "4 V",
            },
            "87.5 %",
            "published: IRS20124S data sheet, p. 2: down to -4 V; 1 V and 5 nH at 0.5 A/ns assumed",
        ),
        Case(
            {
                "v_sd": "1 V",
                "l_loop": "10 nH",
                "i_leg_peak": "10 A",
                "t_edge": "20 ns",
                "v_node_negative": "5 V",
            },
            "120 %",
            "derived: 1 V and 5 V in series against 5 V",
        ),
    ),
    topic=("gate_drive.v_node_negative",),
    asked_from="production",
    fails="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, devices: discrete, l_loop: 20 nH, t_edge: 15 ns}
    gate_drive: {v_node_negative: 4 V}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 0.47 uF}, c_ground: none}
    loudspeaker: {z_rated: 4 ohm, z_min: 3.4 ohm}
""",
    passes="""
supply: {source: dc-source, rails: split, v_rail: 50 V}
channels:
  main:
    rated_load: 4 ohm
    output_stage: {topology: half-bridge, devices: discrete, l_loop: 2 nH, t_edge: 20 ns}
    gate_drive: {v_node_negative: 4 V}
    modulator: {type: natural-sampling, carrier: 400 kHz, m_max: 95 %}
    filter: {type: lc, inductor: {l: 22 uH}, c_across: {c: 0.47 uF}, c_ground: none}
    loudspeaker: {z_rated: 4 ohm, z_min: 3.4 ohm}
""",
)

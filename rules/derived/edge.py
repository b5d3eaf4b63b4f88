"""The edge of the switch node: its time, and the slope that goes with it."""

from ...linter.check import Assumption, Derived, Input, Way, derivation
from ..formulas.switching import charge_time, drive_left, edge_time, scaled_time, slope
from .commutation import AS_PRINTED, R_LEAST, R_OFF, R_ON, R_TEST, SCALING
from .gate import DEVICE, DISCRETE, R_INT, V_DRV
from .gate_charge import Q_GD, V_SWING
from .ways import no

V_PL = Input("v_plateau")


def is_stated(t_edge: float) -> str:
    """An edge time is stated, whatever its value."""
    return "yes"


def edge_from_times(
    t_r: float,
    t_f: float,
    r_on: float,
    r_off: float,
    r_g_test: float,
    r_g_int: float,
    r_least: float,
) -> float:
    """Mean of the printed rise and fall time, both carried to the circuit's gate loop."""
    rise = scaled_time(t_r, r_on, r_g_test, r_g_int, r_least)
    fall = scaled_time(t_f, r_off, r_g_test, r_g_int, r_least)
    return (rise + fall) / 2


def edge_as_printed(t_r: float, t_f: float) -> float:
    """Mean of the printed rise and fall time."""
    return (t_r + t_f) / 2


def turn_on_slope(
    v_swing: float, q_gd: float, r_gate_on: float, v_drv: float, v_gs_pl: float
) -> float:
    """Slope of the node while the turn-on current moves the gate-drain charge."""
    return v_swing / charge_time(q_gd, r_gate_on, drive_left(v_drv, v_gs_pl))


Q_SW = Input(f"{DEVICE}.q_sw")
EDGE = "0.8 (q r_on / (v_drv - v_gs_pl) + q r_off / v_gs_pl) / 2"
T_R = Input(f"{DEVICE}.t_r")
T_F = Input(f"{DEVICE}.t_f")


DERIVED: tuple[Derived, ...] = (
    Derived(
        "edge_stated",
        "word",
        "channel",
        "whether the spec states an edge time",
        (
            Way(is_stated, {"t_edge": Input("output_stage.t_edge")}, "yes, since t_edge is stated"),
            Way(no, {}, "no"),
        ),
    ),
    Derived(
        "t_edge",
        "s",
        "channel",
        "edge of the switch node at rated current, 10 to 90 %",
        (
            Way(
                edge_time,
                {"q": Q_SW, "r_on": R_ON, "r_off": R_OFF, "v_drv": V_DRV, "v_gs_pl": V_PL},
                EDGE,
                when=DISCRETE,
            ),
            Way(
                edge_time,
                {"q": Q_GD, "r_on": R_ON, "r_off": R_OFF, "v_drv": V_DRV, "v_gs_pl": V_PL},
                EDGE,
                when=DISCRETE,
                assumes=Assumption(
                    None,
                    "favourable",
                    derivation("the gate-drain charge alone is the smaller charge"),
                ),
            ),
            Way(
                edge_from_times,
                {
                    "t_r": T_R,
                    "t_f": T_F,
                    "r_on": R_ON,
                    "r_off": R_OFF,
                    "r_g_test": R_TEST,
                    "r_g_int": R_INT,
                    "r_least": R_LEAST,
                },
                "(t_r r_on + t_f r_off) / (r_g_test + r_g_int) / 2, the sum at least r_least",
                when=DISCRETE,
            ),
            Way(
                edge_as_printed,
                {"t_r": T_R, "t_f": T_F},
                "(t_r + t_f) / 2",
                when=DISCRETE,
                assumes=AS_PRINTED,
            ),
        ),
        stated_at="output_stage.t_edge",
        agree=float("inf"),
        sources=(derivation("plateau charge over gate current"), SCALING),
    ),
    Derived(
        "slew",
        "V/ns",
        "channel",
        "fastest slope of the switch node",
        (
            Way(
                slope,
                {"v_swing": Input("v_swing"), "t_edge": Input("output_stage.t_edge")},
                "0.8 v_swing / t_edge",
            ),
            Way(
                turn_on_slope,
                {
                    "v_swing": V_SWING,
                    "q_gd": Input("q_gd_swing"),
                    "r_gate_on": R_ON,
                    "v_drv": V_DRV,
                    "v_gs_pl": V_PL,
                },
                "v_swing (v_drv - v_gs_pl) / (q_gd r_gate_on)",
                when=DISCRETE,
            ),
            Way(
                slope,
                {"v_swing": Input("v_swing"), "t_edge": Input("t_edge")},
                "0.8 v_swing / t_edge",
            ),
        ),
        sources=(derivation("gate-drain charge moved by the turn-on current of the gate"),),
    ),
)

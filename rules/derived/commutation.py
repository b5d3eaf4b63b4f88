"""How a leg commutates: switching times in the circuit, edge, slope, dead time left."""

from typing import Any

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Source,
    Way,
    derivation,
    from_memory,
)
from ..formulas.maths import larger, smaller
from ..formulas.switching import distorting_dead_time, gate_outlasts, late_beyond, scaled_time
from .gate import DEVICE, DISCRETE, R_INT, V_DRV, as_printed, share_of_supply

AS_PRINTED = Assumption(None, "favourable", derivation("gate resistance of the test not stated"))
R_TEST = Input(f"{DEVICE}.r_g_test", "ohm", "gate resistance of the printed test")
R_ON = Input("r_gate_on", "ohm", "gate loop at turn-on")
R_OFF = Input("r_gate_off", "ohm", "gate loop at turn-off")
DEAD_TIME = Input("gate_drive.dead_time", "s", "from off-command to the other's on-command")
T_ON = Input("t_on_circuit", "s", "turn-on delay in this circuit")
T_D_OFF = Input("t_d_off_circuit", "s", "turn-off delay in this circuit")


R_LEAST = Constant(
    "0.5 ohm", "least gate loop that a test set-up is credited with", COMMON_PRACTICE
)


SCALING = derivation("gate capacitance charged through a resistance: times go as that resistance")


def of_charge(q_g: Any, q_gd: Any, v_drv: Any) -> Any:
    """Capacitance of the gate from its charge without the plateau."""
    return (q_g - q_gd) / v_drv


def share_of_charge(q_g: Any, v_drv: Any, share: Any) -> Any:
    """The same where the plateau is not known."""
    return share * q_g / v_drv


def printed_difference(t_d_off: Any, t_f: Any, t_d_on: Any) -> Any:
    """Turn-off delay and fall time beyond the turn-on delay, as printed."""
    return t_d_off + t_f - t_d_on


def longer_of_both(
    c_gate: Any,
    r_on: Any,
    r_off: Any,
    v_drv: Any,
    v_gs_th: Any,
    t_d_off: Any,
    t_f: Any,
    t_d_on: Any,
) -> Any:
    """The printed times are the least, whatever the resistors; the gates' own way adds to it."""
    by_gates = gate_outlasts(c_gate, r_on, r_off, v_drv, v_gs_th)
    return larger(by_gates, printed_difference(t_d_off, t_f, t_d_on))


def distorting_by_gates(
    dead_time: Any, c_gate: Any, r_on: Any, r_off: Any, v_drv: Any, v_gs_pl: Any
) -> Any:
    """Dead time less what the gates take to their plateau, not below nothing."""
    time = dead_time - late_beyond(c_gate, r_on, r_off, v_drv, v_gs_pl)
    return larger(time, 0 * time)


def alike() -> Any:
    """Turn-off beyond turn-on where neither is known, in seconds."""
    return 0.0


def charge_at(q_gd: Any, v_swing: Any, v_dss: Any, share: Any) -> Any:
    """Gate-drain charge at a swing below that of its test, square-root law."""
    return q_gd * smaller(1.0, (v_swing / (share * v_dss)) ** 0.5)


def dead_time_only(dead_time: Any) -> Any:
    """Distorting dead time where the delays are not known."""
    return dead_time


def none_stated() -> Any:
    """Distorting dead time where nothing is known of it, in seconds."""
    return 0.0


def _circuit_time(name: str, leaf: str, loop: Input, meaning: str) -> Derived:
    """A printed switching time, carried to the gate loop of the circuit."""
    printed = Input(f"{DEVICE}.{leaf}", "s", f"{meaning}, as printed")
    return Derived(
        name,
        "s",
        "channel",
        f"{meaning} in this circuit",
        (
            Way(
                scaled_time,
                {
                    "t_printed": printed,
                    "r_circuit": loop,
                    "r_g_test": R_TEST,
                    "r_g_int": R_INT,
                    "r_least": R_LEAST,
                },
                "t_printed r_circuit / (r_g_test + r_g_int), the sum at least r_least",
                when=DISCRETE,
            ),
            Way(as_printed, {"t_printed": printed}, "t_printed", when=DISCRETE, assumes=AS_PRINTED),
        ),
        sources=(SCALING,),
    )


Q_G = Input(f"{DEVICE}.q_g", "C", "gate charge")
Q_GD = Input(f"{DEVICE}.q_gd", "C", "gate-drain charge")
V_PLATEAU = Input("v_plateau", "V", "plateau of the gate")
_LOOPS: dict[str, Input] = {
    "c_gate": Input("c_gate", "F", "capacitance of the gate"),
    "r_on": R_ON,
    "r_off": R_OFF,
    "v_drv": V_DRV,
}
GATE_PATH = {**_LOOPS, "v_gs_th": Input("v_threshold", "V", "threshold of the gate")}
PRINTED: dict[str, Input] = {
    "t_d_off": Input(f"{DEVICE}.t_d_off", "s", "turn-off delay, as printed"),
    "t_f": Input(f"{DEVICE}.t_f", "s", "fall time, as printed"),
    "t_d_on": Input(f"{DEVICE}.t_d_on", "s", "turn-on delay, as printed"),
}
NO_FASTER = derivation("no turn-off is over before the other switch's turn-on delay")
V_SWING = Input("v_swing", "V", "swing of the switch node")


DEAD_TIMES: tuple[Derived, ...] = (
    Derived(
        "t_dead_distortion",
        "s",
        "channel",
        "dead time that distorts the output voltage",
        (
            Way(
                distorting_by_gates,
                {"dead_time": DEAD_TIME, **_LOOPS, "v_gs_pl": V_PLATEAU},
                "dead_time - r_off c_gate ln(v_drv / v_gs_pl)"
                " + r_on c_gate ln(v_drv / (v_drv - v_gs_pl)), not below 0",
                when=DISCRETE,
            ),
            Way(
                distorting_dead_time,
                {"dead_time": DEAD_TIME, "t_on": T_ON, "t_d_off": T_D_OFF},
                "dead_time + t_on - t_d_off, not below 0",
                when=DISCRETE,
            ),
            Way(
                dead_time_only,
                {"dead_time": DEAD_TIME},
                "dead_time",
                assumes=Assumption(
                    None,
                    "adverse",
                    derivation("turn-off delay, longer than turn-on delay, not counted"),
                ),
            ),
            Way(
                none_stated,
                {},
                "0",
                assumes=Assumption(
                    None, "favourable", derivation("dead time not stated: nothing is lost to it")
                ),
            ),
        ),
        sources=(derivation("sequence of gate signals at high load current"),),
    ),
)


C_GATE = Derived(
    "c_gate",
    "F",
    "channel",
    "capacitance that the gate loop charges",
    (
        Way(
            of_charge,
            {"q_g": Q_G, "q_gd": Q_GD, "v_drv": V_DRV},
            "(q_g - q_gd) / v_drv",
            when=DISCRETE,
        ),
        Way(
            share_of_charge,
            {
                "q_g": Q_G,
                "v_drv": V_DRV,
                "share": Constant("70 %", "usual rest beside gate-drain charge", COMMON_PRACTICE),
            },
            "share q_g / v_drv",
            when=DISCRETE,
            assumes=Assumption(None, "neutral", COMMON_PRACTICE),
        ),
    ),
    stated_at=f"{DEVICE}.c_iss",
    agree=float("inf"),
    sources=(derivation("gate charge without the plateau over the gate supply"),),
)


THRESHOLD = Derived(
    "v_threshold",
    "V",
    "channel",
    "threshold of the gate at 25 degC",
    (
        Way(
            share_of_supply,
            {
                "v_drv": V_PLATEAU,
                "share": Constant("60 %", "usual threshold over plateau", COMMON_PRACTICE),
            },
            "share v_drv",
            when=DISCRETE,
            assumes=Assumption(None, "neutral", COMMON_PRACTICE),
        ),
    ),
    stated_at=f"{DEVICE}.v_gs_th",
    agree=float("inf"),
    sources=(COMMON_PRACTICE,),
)


OUTLASTS = Derived(
    "t_off_outlasts",
    "s",
    "channel",
    "how much longer a turn-off takes than the turn-on of the other switch",
    (
        Way(
            longer_of_both,
            {**GATE_PATH, **PRINTED},
            "the longer one of t_d_off + t_f - t_d_on as printed and the gates' own way by"
            " c_gate, r_on, r_off, v_drv, v_gs_th",
            when=DISCRETE,
        ),
        Way(
            gate_outlasts,
            GATE_PATH,
            "r_off c_gate ln(v_drv / v_gs_th) - r_on c_gate ln(v_drv / (v_drv - v_gs_th))",
            when=DISCRETE,
        ),
        Way(
            printed_difference,
            PRINTED,
            "t_d_off + t_f - t_d_on",
            when=DISCRETE,
            assumes=Assumption(
                None, "favourable", derivation("gate resistors as small as in the printed test")
            ),
        ),
        Way(
            as_printed,
            {"t_printed": PRINTED["t_f"]},
            "t_printed",
            when=DISCRETE,
            assumes=Assumption(None, "floor", NO_FASTER),
        ),
        Way(alike, {}, "0", when=DISCRETE, assumes=Assumption(None, "floor", NO_FASTER)),
    ),
    sources=(
        derivation("both counted from their command"),
        Source("M. Wulf, class-D documentation 2019", "IRFB4020: delays and fall time compared"),
    ),
)


CHARGE_AT_SWING = Derived(
    "q_gd_swing",
    "C",
    "channel",
    "gate-drain charge at the swing of the node",
    (
        Way(
            charge_at,
            {
                "q_gd": Q_GD,
                "v_swing": V_SWING,
                "v_dss": Input(f"{DEVICE}.v_dss", "V", "rating of the switch"),
                "share": Constant(
                    "50 %",
                    "drain voltage of the printed charge over the rating",
                    from_memory("usual test condition of data sheets: half the rating"),
                ),
            },
            "q_gd (v_swing / (share v_dss))^0.5, at most q_gd",
            when=DISCRETE,
        ),
        Way(as_printed, {"t_printed": Q_GD}, "t_printed", when=DISCRETE),
    ),
    sources=(
        derivation(
            "junction capacitance falls as the root of the voltage, so the charge grows as the root"
        ),
    ),
)


DERIVED: tuple[Derived, ...] = (
    _circuit_time("t_on_circuit", "t_d_on", R_ON, "turn-on delay"),
    _circuit_time("t_d_off_circuit", "t_d_off", R_OFF, "turn-off delay"),
    _circuit_time("t_f_circuit", "t_f", R_OFF, "fall time"),
    C_GATE,
    THRESHOLD,
    OUTLASTS,
    CHARGE_AT_SWING,
    *DEAD_TIMES,
)

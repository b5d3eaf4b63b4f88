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
from ..formulas.maths import smaller
from ..formulas.switching import dead_time_margin, distorting_dead_time, scaled_time
from .gate import DEVICE, DISCRETE, R_INT, as_printed

NO_MISMATCH = Assumption("0 s", "favourable", derivation("both paths of the driver alike"))
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


def later(t_d_off: Any, t_on: Any) -> Any:
    """How much later turn-off starts than turn-on, counted from the commands."""
    return t_d_off - t_on


def alike() -> Any:
    """Turn-off delay beyond turn-on delay where neither is known, in seconds."""
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


Q_GD = Input(f"{DEVICE}.q_gd", "C", "gate-drain charge")
V_SWING = Input("v_swing", "V", "swing of the switch node")


DEAD_TIMES: tuple[Derived, ...] = (
    Derived(
        "t_dead_margin",
        "s",
        "channel",
        "time in which neither switch conducts",
        (
            Way(
                dead_time_margin,
                {
                    "dead_time": DEAD_TIME,
                    "t_on": T_ON,
                    "t_d_off": T_D_OFF,
                    "t_f": Input("t_f_circuit", "s", "fall time in this circuit"),
                    "delay_mismatch": Input(
                        "gate_drive.delay_mismatch",
                        "s",
                        "difference of driver delays",
                        default=NO_MISMATCH,
                    ),
                },
                "dead_time + t_on - t_d_off - t_f - delay_mismatch",
                when=DISCRETE,
            ),
        ),
        sources=(Source("IRS20124S data sheet, International Rectifier", "p. 20"),),
    ),
    Derived(
        "t_dead_distortion",
        "s",
        "channel",
        "dead time that distorts the output voltage",
        (
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


LATE = Derived(
    "t_off_late",
    "s",
    "channel",
    "turn-off delay beyond the turn-on delay",
    (
        Way(later, {"t_d_off": T_D_OFF, "t_on": T_ON}, "t_d_off - t_on", when=DISCRETE),
        Way(
            alike,
            {},
            "0",
            when=DISCRETE,
            assumes=Assumption(
                None,
                "floor",
                derivation(
                    "a gate falls from the supply to its plateau no faster than it rises to its "
                    "threshold"
                ),
            ),
        ),
    ),
    sources=(derivation("both counted from their command"),),
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
    LATE,
    CHARGE_AT_SWING,
    *DEAD_TIMES,
)

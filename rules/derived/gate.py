"""Operating point of the gate drive: loops, switching times in the circuit, edge, slope."""

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
from ..formulas.switching import (
    charge_time,
    dead_time_margin,
    distorting_dead_time,
    edge_time,
    gate_loop,
    scaled_time,
    slope,
)

DISCRETE = {"output_stage.devices": "discrete"}
LINEAR = {"gate_drive.regulator.type": "linear"}
DEVICE = "output_stage.device"
STRONG = Assumption(float("inf"), "favourable", derivation("a driver without resistance"))
NO_MISMATCH = Assumption("0 s", "favourable", derivation("both paths of the driver alike"))
AS_PRINTED = Assumption(None, "favourable", derivation("gate resistance of the test not stated"))

V_DRV = Input("gate_drive.v_drv", "V", "gate supply")
V_RAIL = Input("v_rail_high", "V", "the rail that it hangs on")
V_PL = Input("v_plateau", "V", "plateau of the gate")
R_INT = Input(f"{DEVICE}.r_g_int", "ohm", "gate resistance inside the device")
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


def as_printed(t_printed: Any) -> Any:
    """A switching time as the data sheet prints it."""
    return t_printed


def later(t_d_off: Any, t_on: Any) -> Any:
    """How much later turn-off starts than turn-on, counted from the commands."""
    return t_d_off - t_on


def power_of(v: Any, i: Any) -> Any:
    """Voltage times current."""
    return v * i


def nothing() -> Any:
    """No power, in watt."""
    return 0.0


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


def edge_from_times(
    t_r: Any, t_f: Any, r_on: Any, r_off: Any, r_g_test: Any, r_g_int: Any, r_least: Any
) -> Any:
    """Mean of the printed rise and fall time, both carried to the circuit's gate loop."""
    rise = scaled_time(t_r, r_on, r_g_test, r_g_int, r_least)
    fall = scaled_time(t_f, r_off, r_g_test, r_g_int, r_least)
    return (rise + fall) / 2


def edge_as_printed(t_r: Any, t_f: Any) -> Any:
    """Mean of the printed rise and fall time."""
    return (t_r + t_f) / 2


def turn_on_slope(v_swing: Any, q_gd: Any, r_gate_on: Any, v_drv: Any, v_gs_pl: Any) -> Any:
    """Slope of the node while the turn-on current moves the gate-drain charge."""
    return v_swing / charge_time(q_gd, r_gate_on, v_drv - v_gs_pl)


def share_of_supply(v_drv: Any, share: Any) -> Any:
    """A voltage at the gate as a usual share of the gate supply."""
    return share * v_drv


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


def _loop(name: str, i_driver: str, r_g: str, meaning: str) -> Derived:
    """Resistance of the gate loop in one direction."""
    return Derived(
        name,
        "ohm",
        "channel",
        f"gate loop at {meaning}",
        (
            Way(
                gate_loop,
                {
                    "v_drv": V_DRV,
                    "i_driver": Input(
                        f"gate_drive.{i_driver}",
                        "A",
                        f"driver peak current at {meaning}",
                        default=STRONG,
                    ),
                    "parallel": Input(
                        "output_stage.parallel", "1", "devices that share the driver"
                    ),
                    "r_g": Input(
                        f"gate_drive.{r_g}", "ohm", f"external gate resistor at {meaning}"
                    ),
                    "r_g_int": R_INT,
                },
                "parallel v_drv / i_driver + r_g + r_g_int",
                when=DISCRETE,
            ),
        ),
        sources=(derivation("resistances of the gate loop in series"),),
    )


Q_SW = Input(f"{DEVICE}.q_sw", "C", "gate charge from threshold to end of plateau")
Q_GD = Input(f"{DEVICE}.q_gd", "C", "gate-drain charge")
V_SWING = Input("v_swing", "V", "swing of the switch node")
EDGE = "0.8 (q r_on / (v_drv - v_gs_pl) + q r_off / v_gs_pl) / 2"
T_R = Input(f"{DEVICE}.t_r", "s", "rise time as printed")
T_F = Input(f"{DEVICE}.t_f", "s", "fall time as printed")

EDGES: tuple[Derived, ...] = (
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
                {
                    "v_swing": Input("v_swing", "V", "swing of the switch node"),
                    "t_edge": Input("output_stage.t_edge", "s", "stated edge, 10 to 90 %"),
                },
                "0.8 v_swing / t_edge",
            ),
            Way(
                turn_on_slope,
                {
                    "v_swing": V_SWING,
                    "q_gd": Input("q_gd_swing", "C", "gate-drain charge"),
                    "r_gate_on": R_ON,
                    "v_drv": V_DRV,
                    "v_gs_pl": V_PL,
                },
                "v_swing (v_drv - v_gs_pl) / (q_gd r_gate_on)",
                when=DISCRETE,
            ),
            Way(
                slope,
                {
                    "v_swing": Input("v_swing", "V", "swing of the switch node"),
                    "t_edge": Input("t_edge", "s", "edge, 10 to 90 %"),
                },
                "0.8 v_swing / t_edge",
            ),
        ),
        sources=(derivation("gate-drain charge moved by the turn-on current of the gate"),),
    ),
)

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

V_GATE_PAID = Derived(
    "v_gate_paid",
    "V",
    "channel",
    "voltage from which the gate charge is drawn",
    (
        Way(as_printed, {"t_printed": V_RAIL}, "t_printed", when=LINEAR),
        Way(as_printed, {"t_printed": V_DRV}, "t_printed"),
    ),
    sources=(
        derivation("a linear regulator draws from the rail what it delivers"),
        Source(
            "IRAUDAMP7D reference design rev 2.9: idle +50 and -80 mA, the gate supply "
            "hangs on the negative rail"
        ),
    ),
)

P_GATE_OTHER = Derived(
    "p_gate_other",
    "W",
    "channel",
    "what else the gate drive's regulator draws from the rail",
    (
        Way(
            power_of,
            {"v": V_RAIL, "i": Input("gate_drive.regulator.i_other", "A", "other loads")},
            "v i",
            when=LINEAR,
        ),
        Way(nothing, {}, "0"),
    ),
    sources=(derivation("a linear regulator draws from the rail what it delivers"),),
)

PLATEAU = Derived(
    "v_plateau",
    "V",
    "channel",
    "plateau of the gate at working current",
    (
        Way(
            share_of_supply,
            {
                "v_drv": V_DRV,
                "share": Constant("40 %", "usual plateau over gate supply", COMMON_PRACTICE),
            },
            "share v_drv",
            when=DISCRETE,
            assumes=Assumption(None, "neutral", COMMON_PRACTICE),
        ),
    ),
    stated_at="output_stage.device.v_gs_pl",
    agree=float("inf"),
    sources=(COMMON_PRACTICE,),
)

RINGING = Derived(
    "v_gate_ringing",
    "V",
    "channel",
    "ringing on the gate above the gate supply, peak",
    (
        Way(
            share_of_supply,
            {
                "v_drv": V_DRV,
                "share": Constant("10 %", "usual ringing over gate supply", COMMON_PRACTICE),
            },
            "share v_drv",
            when=DISCRETE,
            assumes=Assumption(None, "neutral", COMMON_PRACTICE, placeholder=True),
        ),
    ),
    stated_at="gate_drive.v_gs_ringing",
    agree=float("inf"),
    sources=(COMMON_PRACTICE,),
)

DERIVED: tuple[Derived, ...] = (
    RINGING,
    PLATEAU,
    _loop("r_gate_on", "i_source", "r_g_on", "turn-on"),
    _loop("r_gate_off", "i_sink", "r_g_off", "turn-off"),
    _circuit_time("t_on_circuit", "t_d_on", R_ON, "turn-on delay"),
    _circuit_time("t_d_off_circuit", "t_d_off", R_OFF, "turn-off delay"),
    _circuit_time("t_f_circuit", "t_f", R_OFF, "fall time"),
    LATE,
    CHARGE_AT_SWING,
    V_GATE_PAID,
    P_GATE_OTHER,
    *EDGES,
    *DEAD_TIMES,
)

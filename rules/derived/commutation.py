"""How a leg commutates: switching times in the circuit, dead time that is left."""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Source,
    Way,
    derivation,
)
from ..formulas.maths import larger
from ..formulas.switching import distorting_dead_time, gate_outlasts, late_beyond, scaled_time
from .gate import DEVICE, DISCRETE, R_INT, V_DRV
from .gate_charge import V_PLATEAU
from .ways import as_stated, no, yes

AS_PRINTED = Assumption(None, "favourable", derivation("gate resistance of the test not stated"))
R_TEST = Input(f"{DEVICE}.r_g_test")
R_ON = Input("r_gate_on")
R_OFF = Input("r_gate_off")
DEAD_TIME = Input("gate_drive.dead_time")
T_ON = Input("t_on_circuit")
T_D_OFF = Input("t_d_off_circuit")


R_LEAST = Constant(
    "0.5 ohm", "least gate loop that a test set-up is credited with", COMMON_PRACTICE
)


SCALING = derivation("gate capacitance charged through a resistance: times go as that resistance")


def printed_difference(t_d_off: float, t_f: float, t_d_on: float) -> float:
    """Turn-off delay and fall time beyond the turn-on delay, as printed."""
    return t_d_off + t_f - t_d_on


def longer_of_both(
    c_gate: float,
    r_on: float,
    r_off: float,
    v_drv: float,
    v_gs_th: float,
    t_d_off: float,
    t_f: float,
    t_d_on: float,
) -> float:
    """The printed times are the least, whatever the resistors; the gates' own way adds to it."""
    by_gates = gate_outlasts(c_gate, r_on, r_off, v_drv, v_gs_th)
    return larger(by_gates, printed_difference(t_d_off, t_f, t_d_on))


def distorting_by_gates(
    dead_time: float, c_gate: float, r_on: float, r_off: float, v_drv: float, v_gs_pl: float
) -> float:
    """Dead time less what the gates take to their plateau, not below nothing."""
    time = dead_time - late_beyond(c_gate, r_on, r_off, v_drv, v_gs_pl)
    return larger(time, 0 * time)


def alike() -> float:
    """Turn-off beyond turn-on where neither is known, in seconds."""
    return 0.0


def yes_stated(dead_time: float) -> str:
    """A dead time is stated, whatever its value."""
    return "yes"


def dead_time_only(dead_time: float) -> float:
    """Distorting dead time where the delays are not known."""
    return dead_time


def none_stated() -> float:
    """Distorting dead time where nothing is known of it, in seconds."""
    return 0.0


def _circuit_time(name: str, leaf: str, loop: Input, meaning: str) -> Derived:
    """A printed switching time, carried to the gate loop of the circuit."""
    printed = Input(f"{DEVICE}.{leaf}")
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
            Way(as_stated, {"value": printed}, "value", when=DISCRETE, assumes=AS_PRINTED),
        ),
        sources=(SCALING,),
    )


_LOOPS: dict[str, Input] = {
    "c_gate": Input("c_gate"),
    "r_on": R_ON,
    "r_off": R_OFF,
    "v_drv": V_DRV,
}
GATE_PATH = {**_LOOPS, "v_gs_th": Input("v_threshold_hot")}
PRINTED: dict[str, Input] = {
    "t_d_off": Input(f"{DEVICE}.t_d_off"),
    "t_f": Input(f"{DEVICE}.t_f"),
    "t_d_on": Input(f"{DEVICE}.t_d_on"),
}
GATES_LEAST = derivation("least time of any turn-off: the gate alone, no delay of its channel")
NO_FASTER = derivation("no turn-off is over before the other switch's turn-on delay")
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
            assumes=Assumption(None, "floor", GATES_LEAST),
        ),
        Way(
            printed_difference,
            PRINTED,
            "t_d_off + t_f - t_d_on",
            when=DISCRETE,
            assumes=Assumption(
                None, "floor", derivation("gate resistors as small as in the printed test")
            ),
        ),
        Way(
            as_stated,
            {"value": PRINTED["t_f"]},
            "value",
            when=DISCRETE,
            assumes=Assumption(None, "floor", NO_FASTER),
        ),
        Way(alike, {}, "0", when=DISCRETE, assumes=Assumption(None, "floor", NO_FASTER)),
    ),
    sources=(
        derivation("both counted from their command"),
        Source(
            "M. Wulf, 300 W Class D amplifier, documentation V. 1.0, 2019",
            "section 1.4: dead time of one gate delay, 9 ns; section 1.5: IRFB4020",
        ),
    ),
)

DEAD_TIME_STATED = Derived(
    "dead_time_stated",
    "word",
    "channel",
    "whether the spec states a dead time; few integrated parts print one",
    (
        Way(yes_stated, {"dead_time": DEAD_TIME}, "yes where dead_time is stated"),
        Way(no, {}, "no"),
    ),
)


DEAD_TIME_JUDGED = Derived(
    "dead_time_judged",
    "word",
    "channel",
    "whether a dead time is to be judged: of discrete switches, or where the spec states one",
    (
        Way(yes, {}, "yes", when=DISCRETE),
        Way(
            as_stated,
            {"value": Input("dead_time_stated")},
            "value",
        ),
    ),
)


DERIVED: tuple[Derived, ...] = (
    _circuit_time("t_on_circuit", "t_d_on", R_ON, "turn-on delay"),
    _circuit_time("t_d_off_circuit", "t_d_off", R_OFF, "turn-off delay"),
    OUTLASTS,
    DEAD_TIME_STATED,
    DEAD_TIME_JUDGED,
    *DEAD_TIMES,
)

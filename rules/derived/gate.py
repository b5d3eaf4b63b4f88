"""Operating point of the gate drive: loops, switching times in the circuit, edge, slope."""

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
from ..formulas.switching import gate_loop
from .ways import as_stated

DISCRETE = {"output_stage.devices": "discrete"}
LINEAR = {"gate_drive.regulator.type": "linear"}
DEVICE = "output_stage.device"
STRONG = Assumption(float("inf"), "favourable", derivation("a driver without resistance"))
V_DRV = Input("gate_drive.v_drv")
V_RAIL = Input("v_rail_high", meaning="rail that feeds the gate supply")
R_INT = Input(f"{DEVICE}.r_g_int")


def power_of(v: float, i: float) -> float:
    """Voltage times current."""
    return v * i


def nothing() -> float:
    """No power, in watt."""
    return 0.0


def share_of_supply(v_drv: float, share: float) -> float:
    """A voltage at the gate as a usual share of the gate supply."""
    return share * v_drv


def held_off(r_gate_off: float, v_drv: float, i_sink: float, parallel: float) -> float:
    """The loop of a gate near zero, where the driver's transistor is far from its peak current."""
    return r_gate_off - parallel * v_drv / (2 * i_sink)


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
                    "i_driver": Input(f"gate_drive.{i_driver}", default=STRONG),
                    "parallel": Input(
                        "output_stage.parallel", meaning="devices that share the driver"
                    ),
                    "r_g": Input(f"gate_drive.{r_g}"),
                    "r_g_int": R_INT,
                },
                "parallel v_drv / i_driver + r_g + r_g_int",
                when=DISCRETE,
            ),
        ),
        sources=(derivation("resistances of the gate loop in series"),),
    )


HOLD = Derived(
    "r_gate_hold",
    "ohm",
    "channel",
    "gate loop that holds a switch off",
    (
        Way(
            held_off,
            {
                "r_gate_off": Input("r_gate_off"),
                "v_drv": V_DRV,
                "i_sink": Input("gate_drive.i_sink", default=STRONG),
                "parallel": Input("output_stage.parallel", meaning="devices that share the driver"),
            },
            "r_gate_off - parallel v_drv / (2 i_sink)",
            when=DISCRETE,
        ),
    ),
    sources=(
        derivation(
            "square law of the driver's transistor: its resistance near zero is at most half"
            " of full voltage over peak current"
        ),
    ),
)


V_GATE_PAID = Derived(
    "v_gate_paid",
    "V",
    "channel",
    "voltage from which the gate charge is drawn",
    (
        Way(as_stated, {"value": V_RAIL}, "value", when=LINEAR),
        Way(as_stated, {"value": V_DRV}, "value"),
    ),
    sources=(
        derivation("a linear regulator draws from the rail what it delivers"),
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 4: idle +50 and -80 mA; p. 26: the gate supply hangs on the negative rail",
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
            {"v": V_RAIL, "i": Input("gate_drive.regulator.i_other")},
            "v i",
            when=LINEAR,
        ),
        Way(
            power_of,
            {"v": V_DRV, "i": Input("gate_drive.regulator.i_other")},
            "v i",
            when={"gate_drive.regulator.type": "switching"},
        ),
        Way(nothing, {}, "0"),
    ),
    sources=(
        derivation("a linear regulator draws its output current from the rail"),
        derivation("a switching one draws its output power, and its own losses beside it"),
    ),
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
            assumes=Assumption(None, "neutral", COMMON_PRACTICE, placeholder=True),
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
    HOLD,
    V_GATE_PAID,
    P_GATE_OTHER,
)

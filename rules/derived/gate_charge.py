"""Charge of the gate: capacitance, threshold, gate-drain charge at the swing of the node."""

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
from ..formulas.constants import PRINTED_AT
from ..formulas.gate import GAN_GATES, IRFB4020, threshold_in_use
from ..formulas.maths import smaller
from .gate import DEVICE, DISCRETE, V_DRV
from .ways import as_stated

Q_G = Input(f"{DEVICE}.q_g")
Q_GD = Input(f"{DEVICE}.q_gd")
V_PLATEAU = Input("v_plateau")
V_SWING = Input("v_swing")


BELOW_PLATEAU = derivation(
    "no channel carries the working current below its threshold: the plateau at best"
)
T_JUNCTION = Input("t_junction_alive", default=Assumption("100 degC", "neutral", COMMON_PRACTICE))
THRESHOLD_FALL: dict[str, Input | Constant] = {
    "t_cold": PRINTED_AT,
    "coefficient": Input("v_threshold_fall"),
    "v_least": Constant("0.1 V", "least threshold that is counted with", COMMON_PRACTICE),
    "v_gss": Input(
        f"{DEVICE}.v_gss",
        meaning="gate rating, which tells gallium nitride from silicon",
        default=Assumption("20 V", "neutral", derivation("silicon, which falls")),
    ),
    "v_gss_gan": Constant("8 V", "gate rating below which it is gallium nitride", GAN_GATES),
}


def of_charge(q_g: float, q_gd: float, v_drv: float) -> float:
    """Capacitance of the gate from its charge without the plateau."""
    return (q_g - q_gd) / v_drv


def share_of_charge(q_g: float, v_drv: float, share: float) -> float:
    """The same where the plateau is not known."""
    return share * q_g / v_drv


def share_of_threshold(v_gs_th: float, share: float) -> float:
    """Fall of a threshold per kelvin, as a share of it."""
    return share * v_gs_th


def steepest_fall(v_gs_th: float, share: float, most: float) -> float:
    """The steepest fall per kelvin that goes with a threshold, over all that is printed."""
    return smaller(share_of_threshold(v_gs_th, share), most)


def charge_at(q_gd: float, v_swing: float, v_dss: float, share: float) -> float:
    """Gate-drain charge at a swing below that of its test, square-root law."""
    return q_gd * smaller(1.0, (v_swing / (share * v_dss)) ** 0.5)


def gate_kind(v_gss: float, v_gss_gan: float) -> str:
    """What a switch is made of, told by the rating of its gate."""
    return "gallium-nitride" if v_gss < v_gss_gan else "silicon"


GATE_RATING = Input(
    f"{DEVICE}.v_gss",
    default=Assumption(float("inf"), "absent", derivation("silicon where nothing else is stated")),
)
GATE_KIND = Derived(
    "gate_kind",
    "word",
    "channel",
    "what the switches are made of, as their gate rating tells; silicon where it is not stated",
    (
        Way(
            gate_kind,
            {"v_gss": GATE_RATING, "v_gss_gan": THRESHOLD_FALL["v_gss_gan"]},
            "gallium-nitride for v_gss below v_gss_gan",
        ),
    ),
    sources=(GAN_GATES,),
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
            assumes=Assumption(None, "neutral", COMMON_PRACTICE, placeholder=True),
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
            as_stated,
            {"value": V_PLATEAU},
            "value",
            when=DISCRETE,
            assumes=Assumption(None, "floor", BELOW_PLATEAU),
        ),
    ),
    stated_at=f"{DEVICE}.v_gs_th",
    agree=float("inf"),
    sources=(BELOW_PLATEAU,),
)


STEEPEST = Source(
    "IRFB4020PbF data sheet PD-97195, International Rectifier; IRF6645 data sheet PD-97006;"
    " NVMTS4D3N15MC data sheet, onsemi; FDMS86101DC data sheet, Fairchild; IRLR8726PbF data sheet,"
    " International Rectifier; NTMFS4926N data sheet, onsemi",
    "no page given: least threshold and its coefficient: 3.0 V and 13 mV/K, 3.0 and 12, 2.5 and"
    " 9.93, 2 and 10, 1.35 and 8.6, 1.32 and 3.8",
)
SLOWEST = Source(
    "NTMFS4926N data sheet, onsemi",
    "no page given: typical threshold of 1.6 V, coefficient 3.8 mV/degC",
)
THRESHOLD_FALLS = Derived(
    "v_threshold_fall",
    "V/K",
    "channel",
    "fall of the gate threshold per kelvin",
    (
        Way(
            steepest_fall,
            {
                "v_gs_th": Input("v_threshold"),
                "share": Constant("0.0064 1/K", "steepest fall of a threshold, of it", STEEPEST),
                "most": Constant("13 mV/K", "steepest fall of a threshold", STEEPEST),
            },
            "share v_gs_th, at most most",
            when=DISCRETE,
            assumes=Assumption(None, "adverse", STEEPEST),
        ),
        Way(
            share_of_threshold,
            {
                "v_gs_th": Input("v_threshold"),
                "share": Constant("0.0024 1/K", "slowest fall of a threshold, of it", SLOWEST),
            },
            "share v_gs_th",
            when=DISCRETE,
            assumes=Assumption(None, "favourable", SLOWEST),
        ),
    ),
    stated_at=f"{DEVICE}.v_gs_th_fall",
    agree=float("inf"),
    sources=(STEEPEST, SLOWEST),
)


JUNCTION_ALIVE = Derived(
    "t_junction_alive",
    "degC",
    "channel",
    "junction at rated power, no hotter than its absolute limit: that it gets there is told apart",
    (
        Way(
            smaller,
            {"a": Input("t_junction_rated"), "b": Input(f"{DEVICE}.t_j_max")},
            "smaller of a and b",
        ),
        Way(as_stated, {"value": Input("t_junction_rated")}, "value"),
    ),
)
THRESHOLD_HOT = Derived(
    "v_threshold_hot",
    "V",
    "channel",
    "threshold of the gate with the junction at rated power",
    (
        Way(
            threshold_in_use,
            {
                "v_gs_th": Input("v_threshold"),
                "t": T_JUNCTION,
                **THRESHOLD_FALL,
            },
            "v_gs_th - coefficient (t - t_cold), at least v_least;"
            " v_gs_th where v_gss is below v_gss_gan",
            when=DISCRETE,
        ),
    ),
    sources=(IRFB4020,),
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
                "v_dss": Input(f"{DEVICE}.v_dss"),
                "share": Constant(
                    "50 %",
                    "drain voltage of the printed charge over the rating",
                    from_memory("usual test condition of data sheets: half the rating"),
                ),
            },
            "q_gd (v_swing / (share v_dss))^0.5, at most q_gd",
            when=DISCRETE,
        ),
        Way(as_stated, {"value": Q_GD}, "value", when=DISCRETE),
    ),
    sources=(
        derivation(
            "junction capacitance falls as the root of the voltage, so the charge grows as the root"
        ),
    ),
)


DERIVED: tuple[Derived, ...] = (
    GATE_KIND,
    C_GATE,
    THRESHOLD,
    THRESHOLD_FALLS,
    JUNCTION_ALIVE,
    THRESHOLD_HOT,
    CHARGE_AT_SWING,
)

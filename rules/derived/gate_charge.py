"""Charge of the gate: capacitance, threshold, gate-drain charge at the swing of the node."""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Way,
    derivation,
    from_memory,
)
from ..formulas.maths import smaller
from .gate import DEVICE, DISCRETE, V_DRV, share_of_supply
from .ways import as_stated

Q_G = Input(f"{DEVICE}.q_g")
Q_GD = Input(f"{DEVICE}.q_gd")
V_PLATEAU = Input("v_plateau")
V_SWING = Input("v_swing")


def of_charge(q_g: float, q_gd: float, v_drv: float) -> float:
    """Capacitance of the gate from its charge without the plateau."""
    return (q_g - q_gd) / v_drv


def share_of_charge(q_g: float, v_drv: float, share: float) -> float:
    """The same where the plateau is not known."""
    return share * q_g / v_drv


def charge_at(q_gd: float, v_swing: float, v_dss: float, share: float) -> float:
    """Gate-drain charge at a swing below that of its test, square-root law."""
    return q_gd * smaller(1.0, (v_swing / (share * v_dss)) ** 0.5)


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


DERIVED: tuple[Derived, ...] = (C_GATE, THRESHOLD, CHARGE_AT_SWING)

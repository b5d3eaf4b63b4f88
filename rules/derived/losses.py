"""Losses of a channel that do not depend on junction temperature: idle and switching."""

from ...linter.check import (
    Assumption,
    Derived,
    Input,
    Source,
    Way,
    derivation,
    from_memory,
)
from ..formulas.losses import (
    dead_time_loss,
    hard_charge,
    idle_loss,
    mean_carrier_share,
    overlap_loss,
)
from ..formulas.maths import larger
from .ways import left_out

DEVICE = "output_stage.device"


NO_CORE_LOSS = left_out("0 W", "core loss")


def ripple_of_leg(ripple: float, levels: str, c_ground: str) -> float:
    """Ripple that can turn a node over at idle.

    Both legs of a three-level bridge switch together at idle; with its capacitor only
    across the load no ripple flows.
    """
    still = levels == "three-level" and c_ground == "none"
    return 0 * ripple if still else ripple


def idle(
    n_legs: float,
    v_swing: float,
    carrier: float,
    parallel: float,
    q_oss: float,
    q_g: float,
    v_drv: float,
    dead_time: float,
    ripple: float,
    r_ds_on: float,
    dcr: float,
    p_core: float,
    levels: str,
    c_ground: str,
    p_other: float = 0.0,
) -> float:
    """Idle loss: output charge of two edges unless the ripple moves it, gates, ripple, core.

    v_drv is the voltage from which the gate charge is drawn: the rail where a linear
    regulator makes the gate supply; p_other is what else that regulator draws.
    """
    leg_ripple = ripple_of_leg(ripple, levels, c_ground)
    hard = 2 * hard_charge(leg_ripple, dead_time, parallel * q_oss)
    gates = 2 * parallel * q_g * v_drv
    path = r_ds_on / parallel + dcr
    energy = hard * v_swing
    return idle_loss(n_legs, carrier, energy, gates, leg_ripple, path, p_core + p_other)


def with_load(
    n_legs: float,
    v_swing: float,
    i_rated_peak: float,
    depth: float,
    t_edge: float,
    carrier: float,
    parallel: float,
    q_rr: float,
    v_sd: float,
    dead_time: float,
    modulator: str,
    q_oss: float,
    ripple: float,
    levels: str,
    c_ground: str,
) -> float:
    """Overlap, recovery, dead-time diode and output charge beyond idle, all legs.

    With load one edge of a period switches the output charge hard, also where the ripple
    makes idle edges soft; what the idle loss holds of it already is taken off.  Recovery
    charge is counted as printed, beside the output charge, although many prints contain
    the latter: loss sums of this kind come out low.
    """
    mean = carrier * mean_carrier_share(modulator, depth)
    overlap = overlap_loss(v_swing, i_rated_peak, t_edge, mean)
    charge = parallel * q_oss
    at_idle = 2 * hard_charge(ripple_of_leg(ripple, levels, c_ground), dead_time, charge)
    added = larger(charge - at_idle, 0.0 * charge)
    charges = (parallel * q_rr + added) * v_swing * mean
    return n_legs * (overlap + charges + dead_time_loss(v_sd, i_rated_peak, dead_time, mean))


N_LEGS = Input("n_legs")
V_SWING = Input("v_swing")
CARRIER = Input("modulator.carrier")
PARALLEL = Input("output_stage.parallel")
Q_OSS = Input("q_oss_swing", default=left_out("0 C", "output charge"))
RIPPLE = Input("ripple_idle", default=left_out("0 A", "ripple"))
LEVELS = Input("levels")
C_GROUND = Input(
    "filter.c_ground",
    default=Assumption(
        "none", "adverse", derivation("without them a three-level bridge switches hard")
    ),
)

IDLE_SUM = Way(
    idle,
    {
        "n_legs": N_LEGS,
        "v_swing": V_SWING,
        "carrier": CARRIER,
        "parallel": PARALLEL,
        "q_oss": Q_OSS,
        "q_g": Input(f"{DEVICE}.q_g", default=left_out("0 C", "gate charge")),
        "v_drv": Input("v_gate_paid"),
        "dead_time": Input(
            "gate_drive.dead_time",
            default=Assumption("0 s", "adverse", derivation("without dead time no edge is soft")),
        ),
        "ripple": RIPPLE,
        "r_ds_on": Input(f"{DEVICE}.r_ds_on", default=left_out("0 ohm", "ripple in the switches")),
        "dcr": Input("filter.inductor.dcr", default=left_out("0 ohm", "ripple in the copper")),
        "p_core": Input("p_core", default=NO_CORE_LOSS),
        "levels": LEVELS,
        "c_ground": C_GROUND,
        "p_other": Input("p_gate_other"),
    },
    "n_legs (carrier (hard v_swing + 2 parallel q_g v_drv) + "
    "ripple^2 / 12 (r_ds_on / parallel + dcr)) + p_core + p_other, "
    "hard = 2 (parallel q_oss - ripple dead_time / 4), not below 0; no ripple where "
    "levels are three and c_ground is none",
    when={"output_stage.devices": "discrete"},
)

DERIVED: tuple[Derived, ...] = (
    Derived(
        "p_idle",
        "W",
        "channel",
        "loss of the channel without signal",
        (IDLE_SUM,),
        stated_at="output_stage.p_idle",
        agree=float("inf"),
        sources=(derivation("energy per period times carrier; mean square of a triangle"),),
    ),
    Derived(
        "p_switching",
        "W",
        "channel",
        "loss in switching that grows with load, rated power",
        (
            Way(
                with_load,
                {
                    "n_legs": N_LEGS,
                    "v_swing": V_SWING,
                    "i_rated_peak": Input("i_rated_peak"),
                    "depth": Input("depth_rated"),
                    "t_edge": Input("t_edge", default=left_out("0 s", "overlap")),
                    "carrier": CARRIER,
                    "parallel": PARALLEL,
                    "q_rr": Input(f"{DEVICE}.q_rr", default=left_out("0 C", "recovery")),
                    "v_sd": Input(f"{DEVICE}.v_sd"),
                    "dead_time": Input(
                        "gate_drive.dead_time", default=left_out("0 s", "diode conduction")
                    ),
                    "modulator": Input("modulator.type"),
                    "q_oss": Q_OSS,
                    "ripple": RIPPLE,
                    "levels": LEVELS,
                    "c_ground": C_GROUND,
                },
                "n_legs carrier (2.5 v_swing i_rated_peak t_edge / pi + "
                "(parallel q_rr + added) v_swing + 4 v_sd i_rated_peak dead_time / pi), "
                "added = parallel q_oss less what p_idle counts, hard with ripple, levels and "
                "c_ground, not below 0; self-oscillating modulator: times 1 - depth^2 / 2",
            ),
        ),
        sources=(
            derivation("charge and overlap per edge, averaged over a sine"),
            Source(
                "TI TPS40055 data sheet: diodes conduct in both dead intervals", "no page given"
            ),
            from_memory("printed recovery charge often contains output charge"),
        ),
    ),
)

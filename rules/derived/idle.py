"""Idle loss of a channel: from the charges of its switches, or from the current of a part."""

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
from ..formulas.dissipation import efficiency_loss
from ..formulas.inductor import core_share_of_sine
from ..formulas.losses import (
    charge_left,
    charge_moved,
    edge_energy,
    idle_diode_energy,
    idle_loss,
)
from ..formulas.maths import choose, larger
from .ways import as_stated, left_out, no

DEVICE = "output_stage.device"


def printed(i_q: float) -> str:
    """A quiescent current is printed, whatever its value."""
    return "yes"


def is_still(levels: str, c_ground: str) -> bool:
    """Whether no ripple flows at idle.

    Both legs of a three-level bridge switch together then; a capacitor that lies only
    across the load sees nothing of it.
    """
    return levels == "three-level" and c_ground == "none"


def held(p_idle: float) -> float:
    """A stated idle loss has the core in it."""
    return 0 * p_idle


def core_of_loss(part: float, rated_power: float, efficiency: float, depth: float) -> float:
    """What the cores lose at idle, if a part of the loss at rated power is theirs."""
    return part * efficiency_loss(rated_power, efficiency) / core_share_of_sine(depth)


def charge_of_node(
    parallel: float, q_oss: float, c_snubber: float, v_swing: float, q_least: float
) -> float:
    """Charge that moves the node of a leg over its swing: both switches and the snubber."""
    return larger(2 * parallel * q_oss + c_snubber * v_swing, q_least)


def idle_energies(
    ripple: float,
    dead_time: float,
    carrier: float,
    parallel: float,
    q_oss: float,
    c_snubber: float,
    v_swing: float,
    v_sd: float,
    q_least: float,
) -> tuple[float, float]:
    """Energy of a leg's edges and of its diodes per period at idle.

    While the output charge is not known nobody can say what the diodes carry: nothing is
    counted, so that the sum stays a lower bound.
    """
    charge = charge_of_node(parallel, q_oss, c_snubber, v_swing, q_least)
    moved = charge_moved(ripple, dead_time, carrier)
    edges = 2 * edge_energy(parallel * q_oss, c_snubber, v_swing, charge_left(moved, charge))
    diodes = idle_diode_energy(moved, charge, v_sd)
    return edges, choose(q_oss > 0 * q_oss, diodes, 0 * diodes)


def idle(
    n_legs: float,
    v_swing: float,
    carrier: float,
    parallel: float,
    q_oss: float,
    q_g: float,
    v_drv: float,
    dead_time: float,
    v_sd: float,
    ripple: float,
    r_ds_on: float,
    r_winding: float,
    p_core: float,
    levels: str,
    c_ground: str,
    c_snubber: float,
    q_least: float,
    p_auxiliary: float,
    p_other: float = 0.0,
) -> float:
    """Idle loss: what the ripple leaves of the edges, gates, ripple, core, auxiliary supply.

    v_drv is the voltage from which the gate charge is drawn: the rail where a linear
    regulator makes the gate supply; p_other is what else that regulator draws.
    """
    flows = 0.0 if is_still(levels, c_ground) else 1.0
    edges, diodes = idle_energies(
        flows * ripple, dead_time, carrier, parallel, q_oss, c_snubber, v_swing, v_sd, q_least
    )
    energy = edges + diodes + 2 * parallel * q_g * v_drv
    path = r_ds_on / parallel + r_winding
    rest = flows * p_core + p_other + p_auxiliary
    return idle_loss(n_legs, carrier, energy, flows * ripple, path, rest)


def idle_of_part(
    n_legs: float,
    v_swing: float,
    i_q: float,
    carrier: float,
    parallel: float,
    ripple: float,
    r_ds_on: float,
    r_winding: float,
    p_core: float,
    levels: str,
    c_ground: str,
    c_snubber: float,
    p_auxiliary: float,
) -> float:
    """Idle loss of an integrated part from the current printed without filter and load.

    Controller, gates and output charge are in that current.  The filter adds its ripple and
    its core, a snubber its capacitor at instant edges.  What the ripple saves of the output
    charge is not taken off: nobody prints that charge.
    """
    flows = 0.0 if is_still(levels, c_ground) else 1.0
    path = r_ds_on / parallel + r_winding
    rest = i_q * v_swing + flows * p_core + p_auxiliary
    return idle_loss(n_legs, carrier, c_snubber * v_swing**2, flows * ripple, path, rest)


NLEGS = Input("n_legs")
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
C_SNUBBER = Input("output_stage.snubber.c", default=left_out("0 F", "snubber"))
V_SD = Input(f"{DEVICE}.v_sd")
Q_LEAST = Constant("10 pC", "least charge of a switch node", COMMON_PRACTICE)
CORE = Input("p_core", default=left_out("0 W", "core loss"))
WITHIN_LOSS = Assumption(
    None,
    "floor",
    derivation("the loss at rated power holds that of the core: from next to nothing to all of it"),
    within="1 .. 1000000",
)
OWN_SUPPLY = Assumption(
    "0 W", "absent", derivation("a part without a second supply makes its own from the rail")
)

_FILTER = {
    "ripple": RIPPLE,
    "r_ds_on": Input(f"{DEVICE}.r_ds_on", default=left_out("0 ohm", "ripple in the switches")),
    "r_winding": Input("r_winding", default=left_out("0 ohm", "ripple in the copper")),
    "p_core": Input("p_core_idle"),
    "levels": LEVELS,
    "c_ground": C_GROUND,
    "c_snubber": C_SNUBBER,
}
LEG = {"n_legs": NLEGS, "v_swing": V_SWING, "carrier": CARRIER, "parallel": PARALLEL}
_NO_STILL_RIPPLE = "no ripple and no p_core where levels are three and c_ground is none"

OF_PART = Way(
    idle_of_part,
    {
        **LEG,
        "i_q": Input("output_stage.i_q"),
        **_FILTER,
        "p_auxiliary": Input("output_stage.p_auxiliary", default=OWN_SUPPLY),
    },
    "i_q v_swing + n_legs (carrier c_snubber v_swing^2 + ripple^2 / 12 (r_ds_on / parallel +"
    f" r_winding)) + p_core + p_auxiliary; {_NO_STILL_RIPPLE}",
    when={"output_stage.devices": "integrated", "i_q_stated": "yes"},
)

OF_SWITCHES = Way(
    idle,
    {
        **LEG,
        "q_oss": Q_OSS,
        "q_g": Input(f"{DEVICE}.q_g", default=left_out("0 C", "gate charge")),
        "v_drv": Input("v_gate_paid"),
        "dead_time": Input(
            "gate_drive.dead_time",
            default=Assumption("0 s", "adverse", derivation("without dead time no edge is soft")),
        ),
        "v_sd": V_SD,
        **_FILTER,
        "q_least": Q_LEAST,
        "p_auxiliary": Input(
            "output_stage.p_auxiliary",
            default=left_out("0 W", "supply of modulator and drivers"),
        ),
        "p_other": Input("p_gate_other"),
    },
    "n_legs (carrier (edges + diodes + 2 parallel q_g v_drv) + ripple^2 / 12 (r_ds_on / parallel"
    " + r_winding)) + p_core + p_other + p_auxiliary; edges: two, of the share of 2 parallel"
    " q_oss + c_snubber v_swing (at least q_least) that ripple / 2 in dead_time, less 2 dead_time"
    " carrier of it, leaves over;"
    f" diodes: v_sd on what it moves beyond; {_NO_STILL_RIPPLE}",
    when={"output_stage.devices": "discrete"},
)

DERIVED: tuple[Derived, ...] = (
    Derived(
        "p_core_of_loss",
        "W",
        "channel",
        "core loss of all inductors at idle, as far as the stated efficiency leaves any",
        (
            Way(held, {"p_idle": Input("output_stage.p_idle")}, "0: p_idle holds it"),
            Way(
                core_of_loss,
                {
                    "part": Constant("1e-6", "least part of the loss", COMMON_PRACTICE),
                    "rated_power": Input("rated_power"),
                    "efficiency": Input("output_stage.efficiency"),
                    "depth": Input("depth_rated"),
                },
                "part rated_power (1/efficiency - 1) over the mean of (1 - depth^2 sin^2)^3",
                assumes=WITHIN_LOSS,
            ),
        ),
        sources=(derivation("energy; ripple falls with the depth, the loss with its cube"),),
    ),
    Derived(
        "p_core_idle",
        "W",
        "channel",
        "core loss of all inductors at idle, from their cores or bounded by the efficiency",
        (
            Way(as_stated, {"value": Input("p_core")}, "value"),
            Way(as_stated, {"value": Input("p_core_of_loss")}, "value"),
            Way(as_stated, {"value": CORE}, "value"),
        ),
    ),
    Derived(
        "i_q_stated",
        "word",
        "channel",
        "whether a quiescent current is printed; without one the idle loss itself is needed",
        (
            Way(printed, {"i_q": Input("output_stage.i_q")}, "yes where i_q is stated"),
            Way(no, {}, "no"),
        ),
    ),
    Derived(
        "p_idle",
        "W",
        "channel",
        "loss of the channel without signal",
        (OF_PART, OF_SWITCHES),
        stated_at="output_stage.p_idle",
        agree=float("inf"),
        sources=(
            derivation("energy per period times carrier; mean square of a triangle"),
            Source(
                "TDA8950 preliminary data sheet rev. 01, 9 September 2008",
                "table 7, p. 13: quiescent current without load, filter and snubber",
            ),
        ),
    ),
)

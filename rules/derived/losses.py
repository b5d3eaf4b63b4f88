"""Losses of a channel that do not depend on junction temperature: idle and switching."""

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
from ..formulas.losses import (
    charge_left,
    charge_moved,
    dead_time_loss,
    edge_energy,
    idle_diode_energy,
    idle_loss,
    loaded_share,
    mean_carrier_share,
    overlap_loss,
)
from ..formulas.maths import choose, larger
from .ways import left_out, no

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
    c_snubber: float,
    q_least: float,
    p_core: float,
    part: float = 1.0,
) -> float:
    """Overlap, recovery, dead-time diode and output charge beyond idle, all legs.

    part: share of the rated power.  Overlap, diode and recovery go with the current.
    Whenever that exceeds half the ripple, one edge of a period switches the output charge
    hard, also where the ripple makes idle edges soft; what the idle loss holds of it already
    is taken off.  Recovery charge is counted as printed, beside the output charge, although
    many prints contain the latter: loss sums of this kind come out low.
    """
    still = is_still(levels, c_ground)
    at_idle = 0.0 * ripple if still else ripple
    current, m = part**0.5 * i_rated_peak, part**0.5 * depth
    mean = carrier * mean_carrier_share(modulator, m)
    edges, diodes = idle_energies(
        at_idle, dead_time, carrier, parallel, q_oss, c_snubber, v_swing, v_sd, q_least
    )
    hard = edge_energy(parallel * q_oss, c_snubber, v_swing, 1.0)
    added = loaded_share(at_idle, current) * larger(hard - edges, 0.0 * hard)
    in_diodes = dead_time_loss(v_sd, current, dead_time, mean) - diodes * mean
    in_charges = (part**0.5 * parallel * q_rr * v_swing + added) * mean
    leg = overlap_loss(v_swing, current, t_edge, mean) + in_charges
    return n_legs * (leg + larger(in_diodes, 0.0 * in_diodes)) + (p_core if still else 0 * p_core)


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
C_SNUBBER = Input("output_stage.snubber.c", default=left_out("0 F", "snubber"))
V_SD = Input(f"{DEVICE}.v_sd")
Q_LEAST = Constant("10 pC", "least charge of a switch node", COMMON_PRACTICE)
CORE = Input("p_core", default=left_out("0 W", "core loss"))
OWN_SUPPLY = Assumption(
    "0 W", "absent", derivation("a part without a second supply makes its own from the rail")
)

_FILTER = {
    "ripple": RIPPLE,
    "r_ds_on": Input(f"{DEVICE}.r_ds_on", default=left_out("0 ohm", "ripple in the switches")),
    "r_winding": Input("r_winding", default=left_out("0 ohm", "ripple in the copper")),
    "p_core": CORE,
    "levels": LEVELS,
    "c_ground": C_GROUND,
    "c_snubber": C_SNUBBER,
}
_LEG = {"n_legs": N_LEGS, "v_swing": V_SWING, "carrier": CARRIER, "parallel": PARALLEL}
_NO_STILL_RIPPLE = "no ripple and no p_core where levels are three and c_ground is none"

OF_PART = Way(
    idle_of_part,
    {
        **_LEG,
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
        **_LEG,
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

_LOADED: dict[str, Input | Constant] = {
    **_LEG,
    "i_rated_peak": Input("i_rated_peak"),
    "depth": Input("depth_rated"),
    "t_edge": Input("t_edge", default=left_out("0 s", "overlap")),
    "q_rr": Input(f"{DEVICE}.q_rr", default=left_out("0 C", "recovery")),
    "v_sd": V_SD,
    "dead_time": Input("gate_drive.dead_time", default=left_out("0 s", "diode conduction")),
    "modulator": Input("modulator.type"),
    "q_oss": Q_OSS,
    "ripple": RIPPLE,
    "levels": LEVELS,
    "c_ground": C_GROUND,
    "c_snubber": C_SNUBBER,
    "q_least": Q_LEAST,
    "p_core": CORE,
}
_GROWS = (
    "n_legs carrier (2.5 v_swing i t_edge / pi + sqrt(part) parallel q_rr v_swing +"
    " added + 4 v_sd i dead_time / pi), i = sqrt(part) i_rated_peak; added = parallel q_oss"
    " v_swing + c_snubber v_swing^2 / 2 less what p_idle counts (q_least, ripple, levels,"
    " c_ground), not below 0, while i exceeds ripple / 2; p_core where idle has none;"
    " self-oscillating modulator: times 1 - part depth^2 / 2"
)


def _switching(name: str, part: dict[str, Input], meaning: str) -> Derived:
    """What switching loses beyond idle at a part of the rated power."""
    return Derived(
        name,
        "W",
        "channel",
        f"loss in switching that grows with load, {meaning}",
        (Way(with_load, {**_LOADED, **part}, _GROWS),),
        sources=(
            derivation("charge and overlap per edge, averaged over a sine"),
            Source(
                "TI TPS40055 data sheet: diodes conduct in both dead intervals", "no page given"
            ),
            from_memory("printed recovery charge often contains output charge"),
        ),
    )


DERIVED: tuple[Derived, ...] = (
    Derived(
        "i_q_stated",
        "word",
        "channel",
        "whether a quiescent current is printed; without one the idle loss itself is asked for",
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
                "TDA8950 data sheet rev. 01, 9 September 2008",
                "table 7, p. 13: quiescent current without load, filter and snubber",
            ),
        ),
    ),
    _switching("p_switching", {}, "rated power"),
    _switching(
        "p_switching_programme", {"part": Input("part_programme")}, "while the programme plays"
    ),
    _switching(
        "p_switching_tested", {"part": Input("part_tested")}, "at the programme of the test of heat"
    ),
)

"""Losses of a channel in switching that grow with its load."""

from ...linter.check import Constant, Derived, Input, Source, Way, derivation, from_memory
from ..formulas.losses import (
    dead_time_loss,
    edge_energy,
    loaded_share,
    mean_carrier_share,
    overlap_loss,
)
from ..formulas.maths import larger
from .idle import (
    C_GROUND,
    C_SNUBBER,
    CORE,
    DEVICE,
    LEG,
    LEVELS,
    Q_LEAST,
    Q_OSS,
    RIPPLE,
    V_SD,
    idle_energies,
    is_still,
)
from .ways import left_out


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


LOADED: dict[str, Input | Constant] = {
    **LEG,
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
        (Way(with_load, {**LOADED, **part}, _GROWS),),
        sources=(
            derivation("charge and overlap per edge, averaged over a sine"),
            Source(
                "TI TPS40055 data sheet", "section 8.1.6: the diode conducts twice in each cycle"
            ),
            from_memory("printed recovery charge often contains output charge"),
        ),
    )


DERIVED: tuple[Derived, ...] = (
    _switching("p_switching", {}, "rated power"),
    _switching(
        "p_switching_programme", {"part": Input("part_programme")}, "while the programme plays"
    ),
    _switching(
        "p_switching_tested", {"part": Input("part_tested")}, "at the programme of the test of heat"
    ),
)

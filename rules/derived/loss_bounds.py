"""What a stage loses at least: bounds on statements that stand in place of the sum of losses.

A stated idle loss or efficiency replaces the loss model, so each is held against what the terms
that are known add up to.  The sum is good to a factor of two (the measured losses of published
stages lie above it), so half of it is what no stage falls below.
"""

from ...linter.check import COMMON_PRACTICE, Constant, Derived, Input, Way, derivation
from .heat import CORE, DEVICE
from .idle import OF_PART, OF_SWITCHES
from .ways import left_out

DISCRETE = {"output_stage.devices": "discrete"}
HALF = Constant("0.5", "least part of the sum of losses", COMMON_PRACTICE)
SUMMED = derivation("the terms of the loss that are known, and half of them as the least")


def part_of(share: float, loss: float) -> float:
    """A share of a loss."""
    return share * loss


def efficiency_of_part(
    rated_power: float,
    share: float,
    idle: float,
    switching: float,
    n_legs: float,
    r_ds_on: float,
    parallel: float,
    i_rated_peak: float,
    p_inductor: float,
    p_core: float,
) -> float:
    """Efficiency with all of the cold conduction, which is certain, and a share of the rest."""
    conduction = n_legs * r_ds_on / parallel * i_rated_peak**2 / 2
    rest = idle + switching + p_inductor + p_core
    return rated_power / (rated_power + conduction + share * rest)


def warmed(
    t_ambient: float,
    r_th_sa: float,
    count: float,
    share: float,
    programme: float,
    idle: tuple[float, ...],
    n_legs: tuple[float, ...],
    r_ds_on: tuple[float, ...],
    parallel: tuple[float, ...],
    i_peak: tuple[float, ...],
) -> float:
    """Heatsink over the hottest ambient with a share of the idle loss and a little conduction."""
    heat = 0.0 * idle[0]
    for number, loss in enumerate(idle):
        path = n_legs[number] * r_ds_on[number] / parallel[number]
        heat = heat + share * loss + programme * path * i_peak[number] ** 2 / 2
    return t_ambient + r_th_sa / count * heat


_WARMED: dict[str, Input | Constant] = {
    "t_ambient": Input("environment.ambient:high"),
    "count": Input("thermal.heatsink.count"),
    "share": HALF,
    "programme": Constant("0.0625", "least share of a rated sine in programme", COMMON_PRACTICE),
    "idle": Input("all p_idle_summed", default=left_out("0 W", "idle loss")),
    "n_legs": Input("all n_legs"),
    "r_ds_on": Input(f"all {DEVICE}.r_ds_on", default=left_out("0 ohm", "conduction")),
    "parallel": Input("all output_stage.parallel"),
    "i_peak": Input("all i_rated_peak"),
}
_RISES = (
    "t_ambient + r_th_sa / count sum of (share idle + programme n_legs r_ds_on / parallel"
    " i_peak^2 / 2)"
)

DERIVED: tuple[Derived, ...] = (
    Derived(
        "t_heatsink_least",
        "degC",
        "product",
        "what the heatsink reaches in the hottest ambient with half of the least heat",
        (
            Way(
                warmed,
                {"r_th_sa": Input("thermal.heatsink.fan.r_th_sa"), **_WARMED},
                _RISES,
                when={"thermal.heatsink.fan": "fitted"},
            ),
            Way(
                warmed,
                {"r_th_sa": Input("thermal.heatsink.r_th_sa"), **_WARMED},
                _RISES,
                when={"thermal.heatsink.fan": "none"},
            ),
        ),
        bounds_from_below=("thermal.heatsink.t",),
        bounds_by="practice",
        sources=(SUMMED,),
    ),
    Derived(
        "p_idle_summed",
        "W",
        "channel",
        "loss without signal as charges and ripple give it",
        (OF_PART, OF_SWITCHES),
        sources=(SUMMED,),
    ),
    Derived(
        "p_idle_least",
        "W",
        "channel",
        "half of what charges and ripple lose without signal",
        (Way(part_of, {"share": HALF, "loss": Input("p_idle_summed")}, "share loss"),),
        bounds_from_below=("output_stage.p_idle",),
        sources=(SUMMED,),
    ),
    Derived(
        "efficiency_of_losses",
        "1",
        "channel",
        "the efficiency with cold conduction and half of the other known losses",
        (
            Way(
                efficiency_of_part,
                {
                    "rated_power": Input("rated_power"),
                    "share": HALF,
                    "idle": Input("p_idle_summed", default=left_out("0 W", "idle loss")),
                    "switching": Input("p_switching", default=left_out("0 W", "switching loss")),
                    "n_legs": Input("n_legs"),
                    "r_ds_on": Input(f"{DEVICE}.r_ds_on", default=left_out("0 ohm", "conduction")),
                    "parallel": Input("output_stage.parallel"),
                    "i_rated_peak": Input("i_rated_peak"),
                    "p_inductor": Input("p_inductor", default=left_out("0 W", "copper")),
                    "p_core": CORE,
                },
                "rated_power / (rated_power + n_legs r_ds_on / parallel i_rated_peak^2 / 2"
                " + share (idle + switching + p_inductor + p_core))",
                when=DISCRETE,
            ),
        ),
        bounds_from_above=("output_stage.efficiency",),
        bounds_always=True,
        sources=(SUMMED,),
    ),
)

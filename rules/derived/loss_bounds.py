"""What a stage loses at least: bounds on statements that stand in place of the sum of losses.

A stated idle loss or efficiency replaces the loss model, so each is held against what the terms
that are known add up to.  The sum is good to a factor of two (the measured losses of published
stages lie above it), so half of it is what no stage falls below.
"""

from dataclasses import replace

from ...linter.check import (
    COMMON_PRACTICE,
    Arguments,
    Constant,
    Derived,
    Input,
    Source,
    Way,
    derivation,
)
from ..formulas.heat import ChannelHeat, switch_heat
from .heat import DEVICE
from .idle import OF_PART, OF_SWITCHES
from .temperature import HEAT_TESTED, T_END, T_PROGRAMME
from .ways import as_stated, left_out

DISCRETE = {"output_stage.devices": "discrete"}
SUMMED = derivation("the terms of the loss that are known, and half of them as the least")
NO_CORE = Constant("0 W", "core, of which the exponents are mostly assumed", SUMMED)
HALF = Constant("0.5", "least part of the sum of losses", COMMON_PRACTICE)


def part_of(share: float, loss: float) -> float:
    """A share of a loss."""
    return share * loss


def drawn(share: float, i_q: float, v_swing: float) -> float:
    """A share of what a quiescent current draws from its rail."""
    return share * i_q * v_swing


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


def warmed_at_programme(
    t_ambient: float, r_sink: float, share: float, heat: tuple[float, ...]
) -> float:
    """Heatsink over the hottest ambient with a share of the heat of its switches."""
    return t_ambient + r_sink * share * sum(heat)


def of_switches(heat: ChannelHeat, t_junction: float, t_end: float) -> float:
    """Heat of all switches of a channel."""
    return switch_heat(heat, t_junction, t_end)[0]


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


def _drawn(name: str, meaning: str, current: Arguments, why: Source) -> Derived:
    """What an integrated stage draws at least while it switches."""
    return Derived(
        name,
        "W",
        "channel",
        meaning,
        (
            Way(
                drawn,
                {**current, "v_swing": Input("v_swing")},
                "share i_q v_swing",
                when={"output_stage.devices": "integrated"},
            ),
        ),
        bounds_from_below=("output_stage.p_idle",),
        bounds_by="practice",
        sources=(why,),
    )


DERIVED: tuple[Derived, ...] = (
    Derived(
        "p_switches_programme",
        "W",
        "channel",
        "heat of the switches while the programme plays",
        (
            Way(
                of_switches,
                {"heat": HEAT_TESTED, "t_junction": T_PROGRAMME, "t_end": T_END},
                "heat at t_junction, at most t_end",
            ),
        ),
    ),
    Derived(
        "t_heatsink_warmed",
        "degC",
        "product",
        "what the heatsink reaches in the hottest ambient with half of the heat of its switches",
        (
            Way(
                warmed_at_programme,
                {
                    "t_ambient": Input("environment.ambient:high"),
                    "r_sink": Input("r_sink"),
                    "share": HALF,
                    "heat": Input("all p_switches_programme"),
                },
                "t_ambient + r_sink share sum of heat",
            ),
        ),
        bounds_from_below=("thermal.heatsink.t",),
        bounds_by="practice",
        bounds_neutral=True,
        sources=(SUMMED,),
    ),
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
        "loss without signal as charges and ripple give it, the core left out",
        tuple(
            replace(way, inputs={**way.inputs, "p_core": NO_CORE}) for way in (OF_PART, OF_SWITCHES)
        ),
        sources=(SUMMED,),
    ),
    Derived(
        "p_idle_known",
        "W",
        "channel",
        "loss without signal, as stated, else as summed",
        (
            Way(as_stated, {"value": Input("output_stage.p_idle")}, "value"),
            Way(as_stated, {"value": Input("p_idle_summed")}, "value"),
        ),
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
    _drawn(
        "p_idle_of_current",
        "half of what the quiescent current draws from its rail",
        {"share": HALF, "i_q": Input("output_stage.i_q")},
        SUMMED,
    ),
    _drawn(
        "p_idle_of_any",
        "what the thriftiest integrated stages draw while they switch, 0.3 mA from the rail",
        {
            "share": Constant("1", "all of it", SUMMED),
            "i_q": Constant("0.3 mA", "thriftiest integrated stages", COMMON_PRACTICE),
        },
        COMMON_PRACTICE,
    ),
)

"""Efficiency of a channel over its output power.

By the points of a stated curve, by the law that stands in for one, or by the sum of the
losses: the same formulas as in the heat of the channel, at a part x / rated_power of it.
"""

from ...linter.check import Arguments, Input
from ...linter.picture import Amount, Axis, Curve, Curves, Mark, Spot
from ..derived.losses import LOADED, with_load
from ..derived.part_load import EFFICIENCIES, EFFICIENCY, EXPONENT, IDLE, POWER, POWERS
from ..derived.ways import left_out
from ..formulas.dissipation import efficiency_loss
from ..formulas.efficiency import knots_of, loss_above_idle
from ..formulas.maths import larger
from .losses import DISCRETE, conduction
from .parts import nothing, of, share, times, whole


def on_curve(
    x: float,
    rated_power: float,
    efficiency: float,
    p_idle: float,
    powers: tuple[float, ...],
    efficiencies: tuple[float, ...],
) -> float:
    """By the points of the curve and the rated one."""
    knots = knots_of((*powers, rated_power), (*efficiencies, efficiency), p_idle)
    return x / (x + p_idle + loss_above_idle(x, knots))


def by_law(
    x: float, rated_power: float, efficiency: float, p_idle: float, exponent: float
) -> float:
    """From the rated point alone."""
    above = efficiency_loss(rated_power, efficiency) - p_idle
    return x / (x + p_idle + larger(above, 0.0 * above) * (x / rated_power) ** exponent)


def by_sum(
    x: float,
    rated_power: float,
    p_idle: float,
    p_inductor: float,
    r_ds_on: float,
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
) -> float:
    """From the sum of the losses, the switches as hot as at rated power."""
    part = x / rated_power
    hot = conduction(n_legs, parallel, i_rated_peak, r_ds_on)
    beyond_idle = with_load(
        n_legs, v_swing, i_rated_peak, depth, t_edge, carrier, parallel, q_rr, v_sd, dead_time,
        modulator, q_oss, ripple, levels, c_ground, c_snubber, q_least, p_core, part,
    )  # fmt: skip
    return x / (x + p_idle + part * (p_inductor + hot) + beyond_idle)


def with_loss(read: float, rated_power: float) -> float:
    """At rated power, from the loss that was read."""
    return rated_power / (rated_power + read)


STATED: Arguments = {"rated_power": POWER, "efficiency": EFFICIENCY, "p_idle": IDLE}
PICTURE = Curves(
    title="How efficient is a channel at each output power?",
    each="channel",
    x=Axis("output power", "W", times("rated_power", 0.01), of("rated_power"), logarithmic=True),
    y=Axis("efficiency", "%", Amount({}, nothing), Amount({}, whole)),
    curves=(
        Curve(
            "efficiency",
            (
                Amount(
                    {**STATED, "powers": Input(POWERS), "efficiencies": Input(EFFICIENCIES)},
                    on_curve,
                    note="By the stated curve and the efficiency at rated power.",
                ),
                Amount(
                    {
                        **STATED,
                        "exponent": EXPONENT,
                    },
                    by_law,
                    note="From the efficiency at rated power alone: the shape is that of two"
                    " published amplifiers.",
                ),
                Amount(
                    {
                        **LOADED,
                        "rated_power": POWER,
                        "p_idle": IDLE,
                        "p_inductor": Input(
                            "p_inductor", default=left_out("0 W", "inductor copper")
                        ),
                        "r_ds_on": Input("r_ds_on_hot"),
                    },
                    by_sum,
                    DISCRETE,
                    note="Sum of the known losses, the switches as hot as at rated power: the real"
                    " efficiency is lower by what is not known.",
                ),
            ),
        ),
    ),
    marks=(
        Mark("programme", "x", (
            Amount({"value": POWER, "part": Input("part_programme")}, share),), "second"),
        Mark("claimed", "y", (of("claims.efficiency"),)),
    ),
    spots=(
        Spot("", of("rated_power"), Amount({"rated_power": POWER}, with_loss),
             measures="p_loss_rated"),
    ),
    checks=("efficiency-beyond-resistance", "efficiency-of-class-d", "efficiency-plausibility",
            "efficiency-curve"),
)  # fmt: skip

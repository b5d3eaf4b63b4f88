"""Core loss of the inductors; what of it is possible where nothing is known of the core."""

from ...linter.check import Assumption, Constant, Derived, Input, Source, Way, derivation
from ..formulas.inductor import core_loss, flux_swing
from .inductor import CARRIER, N_LEGS, NO_FILTER, RIPPLE, L

# inductor-core-loss asks for the data of the core; what else hangs on them is judged over that
TOO_HOT = derivation(
    "between nothing and the loss that heats the part by 60 K, by the heat of its rated current:"
    " one that loses more fails inductor-core-loss"
)


def all_cores(
    n_legs: float,
    l_leg: float,
    ripple_idle: float,
    turns: float,
    a_e: float,
    carrier: float,
    v_e: float,
    p_v: float,
    exponent_f: float,
    exponent_b: float,
    f_reference: float,
    b_reference: float,
) -> float:
    """Core loss of all inductors of the channel."""
    flux = flux_swing(l_leg, ripple_idle, turns, a_e)
    return n_legs * core_loss(
        flux, carrier, v_e, p_v, exponent_f, exponent_b, f_reference, b_reference
    )


def no_core() -> float:
    """An air coil has no core loss."""
    return 0.0


def next_to_nothing(
    n_legs: float, rise: float, rise_rated: float, i_rms: float, dcr: float
) -> float:
    """A hundredth of the core loss by which the inductors of the channel get too hot."""
    return n_legs * rise / rise_rated * i_rms**2 * dcr / 100


DERIVED: tuple[Derived, ...] = (
    Derived(
        "p_core",
        "W",
        "channel",
        "core loss of all inductors of the channel at the largest ripple",
        ways=(
            Way(no_core, {}, "0: no inductor", when={"filter_kind": NO_FILTER}),
            Way(no_core, {}, "0", when={"filter.inductor.core": "air"}),
            Way(
                all_cores,
                {
                    "n_legs": N_LEGS,
                    "l_leg": L,
                    "ripple_idle": RIPPLE,
                    "turns": Input("filter.inductor.turns"),
                    "a_e": Input("filter.inductor.a_e"),
                    "carrier": CARRIER,
                    "v_e": Input("filter.inductor.v_e"),
                    "p_v": Input("filter.inductor.p_v"),
                    "exponent_f": Input("filter.inductor.exponent_f"),
                    "exponent_b": Input("filter.inductor.exponent_b"),
                    "f_reference": Constant(
                        "100 kHz", "frequency behind p_v", derivation("convention of the field")
                    ),
                    "b_reference": Constant(
                        "200 mT", "flux behind p_v", derivation("convention of the field")
                    ),
                },
                "n_legs v_e p_v (carrier/f_reference)^exponent_f"
                " (l_leg ripple_idle/(2 turns a_e b_reference))^exponent_b",
            ),
            Way(
                next_to_nothing,
                {
                    "n_legs": N_LEGS,
                    "rise": Constant(
                        "60 K", "rise beyond which inductor-core-loss objects", TOO_HOT
                    ),
                    "rise_rated": Input("filter.inductor.rise_rated"),
                    "i_rms": Input("filter.inductor.i_rms"),
                    "dcr": Input("dcr_stated"),
                },
                "n_legs (rise / rise_rated) i_rms^2 dcr / 100",
                assumes=Assumption(None, "floor", TOO_HOT, within="0 .. 100"),
            ),
        ),
        sources=(
            Source(
                "P. Szczerba and C. Worek, Electronics 2025, 14(14), 2883", "equation 1: power law"
            ),
        ),
    ),
)

"""What the carrier does to the damper."""

from ...linter.check import Derived, Input, Way, derivation
from ..formulas.capacitor import series_rc_power
from ..formulas.modulation import carrier_fundamental
from .response import CONNECTION, N_LEGS, in_series


def carrier_heat(
    v_swing: float,
    n_legs: float,
    levels: str,
    carrier_gain: float,
    f: float,
    r: float,
    c: float,
    connection: str,
) -> float:
    """Heat in one resistor from the carrier that the filter leaves, at its largest."""
    residual = carrier_fundamental(v_swing, n_legs, levels) * carrier_gain
    return series_rc_power(residual / in_series(connection, n_legs), f, r, c)


DERIVED: tuple[Derived, ...] = (
    Derived(
        "p_damper_carrier",
        "W",
        "channel",
        "heat in one damper resistor from the carrier left at the output",
        (
            Way(
                carrier_heat,
                {
                    "v_swing": Input("v_swing"),
                    "n_legs": N_LEGS,
                    "levels": Input("levels"),
                    "carrier_gain": Input("carrier_gain"),
                    "f": Input("f_carrier_effective"),
                    "r": Input("filter.damper.r"),
                    "c": Input("filter.damper.c"),
                    "connection": CONNECTION,
                },
                "(v x)^2 r / (1 + (x r)^2), x = 2 pi f c, v = sqrt(2)/pi v_swing carrier_gain,"
                " times n_legs for levels two-level; connection each-terminal: v over n_legs",
                when={"filter_kind": "lc"},
            ),
        ),
        sources=(derivation("fundamental of the pulses through the ladder into a series R-C"),),
    ),
)

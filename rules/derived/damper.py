"""What the carrier does to the damper."""

from ...linter.check import Derived, Input, Way, derivation
from ..formulas.capacitor import series_rc_power
from ..formulas.modulation import carrier_fundamental
from .response import CONNECTION, N_LEGS, in_series
from .ways import as_stated


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


_SWING = Way(as_stated, {"value": Input("v_swing")}, "value")


def unlimited() -> float:
    """A capacitor that is not there cannot be overloaded, in volt."""
    return float("inf")


def _rating(section: str) -> Derived:
    """Rated voltage of the capacitor of a section that may be left out."""
    name = section.rpartition(".")[2]
    leaf = Input(f"{section}.v_rated")
    return Derived(
        f"{name}_rating",
        "V",
        "channel",
        f"rated voltage of the capacitor of the {name}",
        (
            Way(unlimited, {}, "no limit where none is fitted", when={section: "none"}),
            Way(as_stated, {"value": leaf}, "value"),
        ),
    )


DERIVED: tuple[Derived, ...] = (
    _rating("output_stage.snubber"),
    _rating("filter.damper"),
    Derived(
        "v_damper",
        "V",
        "channel",
        "highest voltage across the capacitor of a damper, ringing left out",
        (
            Way(
                as_stated,
                {"value": Input("v_ideal")},
                "value",
                when={"output_stage.topology": "half-bridge", "supply.rails": "split"},
            ),
            _SWING,
        ),
        sources=(derivation("on one rail each terminal is at half of it at rest"),),
    ),
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

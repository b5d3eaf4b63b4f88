"""Excursion of the cone in a box with a passive radiator."""

from math import inf

from ...linter.check import Assumption, Input, derivation
from ..formulas.driver import largest_in_bass, radiator_shape, sealed_shape
from ..formulas.maths import smaller

RADIATOR = Input("loudspeaker.enclosure.v_ap")
# without the spring of the radiator the cone moves between what a port and a wall would let it
NO_SPRING = Input(
    RADIATOR.path,
    default=Assumption(
        inf, "floor", derivation("bound: the load of a radiator lies between port and wall")
    ),
)


def excursion_radiator(
    x_free: float,
    f_s: float,
    q_ts: float,
    v_as: float,
    v_b: float,
    f_b: float,
    v_ap: float,
    q_l: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    """Largest peak excursion [m] over the band in a box with passive radiator."""
    alpha = v_as / v_b

    def shape(f: float) -> float:
        return radiator_shape(f, f_s, q_ts, alpha, f_b, v_b / v_ap, q_l)

    return x_free * largest_in_bass(shape, f_s, alpha, f_high_pass, order, band_low, band_high)


def excursion_radiator_least(
    x_free: float,
    f_s: float,
    q_ts: float,
    v_as: float,
    v_b: float,
    f_b: float,
    v_ap: float,
    q_l: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    """The same [m], not more than with the stiffest radiator, which is a wall."""
    alpha = v_as / v_b

    def shape(f: float) -> float:
        walled = sealed_shape(f, f_s, q_ts, alpha)
        return smaller(walled, radiator_shape(f, f_s, q_ts, alpha, f_b, v_b / v_ap, q_l))

    return x_free * largest_in_bass(shape, f_s, alpha, f_high_pass, order, band_low, band_high)

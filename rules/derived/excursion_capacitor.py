"""Excursion of a cone whose driver has a capacitor of its own in series."""

from collections.abc import Callable

from ...linter.check import Arguments, Assumption, Input, Way, derivation
from ..formulas.driver import largest_in_bass
from ..formulas.series_capacitor import (
    STEPS,
    radiator_load,
    shape_behind_capacitor,
    vented_load,
)
from .ways import as_stated

BEHIND: Arguments = {
    "x_free": Input("x_free"),
    "f_s": Input("loudspeaker.f_s"),
    "q_ms": Input("loudspeaker.q_ms"),
    "q_es": Input("loudspeaker.q_es"),
    "r_e": Input("r_e"),
    "c_series": Input("loudspeaker.c_series.c"),
}
# nothing but the model says that the reading was taken at the worst frequency
AT_LEAST_MEASURED = Way(
    as_stated,
    {"value": Input("loudspeaker.x_peak")},
    "value",
    when={"loudspeaker.c_series": "fitted"},
    assumes=Assumption(None, "floor", derivation("bound: the cone moves as far as was read")),
)


def _largest(
    box: Callable[[float], complex],
    alpha: float,
    f_s: float,
    q_ms: float,
    q_es: float,
    r_e: float,
    c_series: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    """Largest shape over the band, whatever loads the cone."""

    def shape(f: float) -> float:
        return shape_behind_capacitor(f, f_s, q_ms, q_es, box(f), r_e, c_series)

    return largest_in_bass(shape, f_s, alpha, f_high_pass, order, band_low, band_high, steps=STEPS)


def behind_open(
    x_free: float,
    f_s: float,
    q_ms: float,
    q_es: float,
    r_e: float,
    c_series: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    """Largest peak excursion [m] over the band without a box."""
    driver = (f_s, q_ms, q_es, r_e, c_series, f_high_pass, order, band_low, band_high)
    return x_free * _largest(lambda f: 0.0, 0.0, *driver)


def behind_sealed(
    x_free: float,
    f_s: float,
    q_ms: float,
    q_es: float,
    r_e: float,
    c_series: float,
    v_as: float,
    v_b: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    """The same in a sealed box [m]."""
    alpha = v_as / v_b
    driver = (f_s, q_ms, q_es, r_e, c_series, f_high_pass, order, band_low, band_high)
    return x_free * _largest(lambda f: alpha, alpha, *driver)


def behind_vented(
    x_free: float,
    f_s: float,
    q_ms: float,
    q_es: float,
    r_e: float,
    c_series: float,
    v_as: float,
    v_b: float,
    f_b: float,
    q_l: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    """The same in a vented box [m]."""
    alpha = v_as / v_b
    driver = (f_s, q_ms, q_es, r_e, c_series, f_high_pass, order, band_low, band_high)
    return x_free * _largest(lambda f: vented_load(f, alpha, f_b, q_l), alpha, *driver)


def behind_radiator(
    x_free: float,
    f_s: float,
    q_ms: float,
    q_es: float,
    r_e: float,
    c_series: float,
    v_as: float,
    v_b: float,
    f_b: float,
    q_l: float,
    v_ap: float,
    f_high_pass: float,
    order: float,
    band_low: float,
    band_high: float,
) -> float:
    """The same in a box with passive radiator [m]."""
    alpha, beta = v_as / v_b, v_b / v_ap
    driver = (f_s, q_ms, q_es, r_e, c_series, f_high_pass, order, band_low, band_high)
    return x_free * _largest(lambda f: radiator_load(f, alpha, f_b, beta, q_l), alpha, *driver)

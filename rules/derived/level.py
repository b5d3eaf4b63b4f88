"""The largest sine at the load: onset of clipping, rails, limiter, or the rated power."""

from ...linter.check import Assumption, Derived, Input, Way, derivation
from ..formulas.maths import smaller
from ..formulas.modulation import clipped_power_ratio
from .output import M_MAX, Z_LOAD
from .rated import THD

NO_LIMIT = Assumption(float("inf"), "absent", derivation("no limiter, no limit"))


def limited_voltage(p_out_max: float, z_load: float, v_rms: float) -> float:
    """Clip onset or the limiter, whichever comes first."""
    return smaller((p_out_max * z_load) ** 0.5, v_rms)


def rated_sine(rated_power: float, rated_thd: float, z_load: float, v_rail_sine: float) -> float:
    """Clean sine behind the rated power, but never more than the rails can give."""
    clean = rated_power / clipped_power_ratio(rated_thd)
    return smaller((clean * z_load) ** 0.5, v_rail_sine)


def rated_level(
    rated_power: float, rated_thd: float, z_load: float, v_rail_sine: float, v_rms: float
) -> float:
    """Rated power, rails or limiter, whichever comes first."""
    return smaller(rated_sine(rated_power, rated_thd, z_load, v_rail_sine), v_rms)


def lossless_sine(m_max: float, v_ideal: float) -> float:
    """Rms voltage of the sine that reaches the rails."""
    return m_max * v_ideal / 2**0.5


def limited_sine(v_rail_sine: float, v_rms: float) -> float:
    """Rails or limiter, whichever comes first."""
    return smaller(v_rail_sine, v_rms)


def stated_level(rated_voltage: float) -> float:
    """Output at rated power where the rail is not known."""
    return rated_voltage


V_RAIL_SINE = Derived(
    "v_rail_sine",
    "V",
    "channel",
    "sine that reaches the rails without any loss, rms: no clean sine is larger",
    ways=(
        Way(
            lossless_sine,
            {"m_max": M_MAX, "v_ideal": Input("v_ideal")},
            "m_max v_ideal / sqrt(2)",
        ),
    ),
    sources=(derivation("losses only take away from the peak that the rails allow"),),
)

RATED_SINE = {
    "rated_power": Input("rated_power"),
    "rated_thd": THD,
    "z_load": Z_LOAD,
    "v_rail_sine": Input(
        "v_rail_sine",
        default=Assumption(
            float("inf"), "neutral", derivation("rail open: the rating is believed")
        ),
    ),
}
RATED_STANDS_IN = Assumption(
    None,
    "floor",
    derivation(
        "clip onset is open: a stage gives at least its rated power, or what the rails allow of it"
    ),
)

V_LOAD_RMS = Derived(
    "v_load_rms",
    "V",
    "channel",
    "largest sine at the load, rms",
    ways=(
        Way(
            limited_voltage,
            {
                "p_out_max": Input("p_out_max"),
                "z_load": Z_LOAD,
                "v_rms": Input("limiter.v_rms", default=NO_LIMIT),
            },
            "smaller of sqrt(p_out_max z_load) and v_rms",
        ),
        Way(
            rated_level,
            {
                **RATED_SINE,
                "v_rms": Input("limiter.v_rms", default=NO_LIMIT),
            },
            "smallest of sqrt(rated_power/k z_load), v_rail_sine and v_rms,"
            " k = 1 + 0.048 (rated_thd/1 %)^0.778",
            assumes=RATED_STANDS_IN,
        ),
    ),
)

V_SINE_MAX = Derived(
    "v_sine_max",
    "V",
    "channel",
    "largest sine of a lossless stage, rms: an upper bound",
    ways=(
        Way(
            limited_sine,
            {
                "v_rail_sine": Input("v_rail_sine"),
                "v_rms": Input("limiter.v_rms", default=NO_LIMIT),
            },
            "smaller of v_rail_sine and v_rms",
        ),
        Way(
            stated_level,
            {"rated_voltage": Input("rated_voltage")},
            "rated_voltage",
            assumes=Assumption(
                None, "favourable", derivation("the rail is open: it may allow more than rated")
            ),
        ),
    ),
)

DERIVED = (V_RAIL_SINE, V_SINE_MAX, V_LOAD_RMS)

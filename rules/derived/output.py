"""What reaches the load: resistance in its path, peak voltage, largest power."""

from ...linter.check import Assumption, Constant, Derived, Input, Source, Way, derivation
from ..formulas.maths import PI, smaller
from ..formulas.modulation import clipped_power_ratio
from .rated import THD

N_LEGS = Input("n_legs")
Z_LOAD = Input("z_load")
R_PATH = Input("r_path")
M_MAX = Input("m_max")
V_LOADED = Input("v_ideal_loaded")
CLOCKED = {"modulator.type": ("natural-sampling", "uniform-sampling")}
NO_LIMIT = Assumption(float("inf"), "absent", derivation("no limiter, no limit"))


def path_resistance(
    n_legs: float, r_ds_on_hot: float, parallel: float, dcr: float, r_series: float, r_lead: float
) -> float:
    """Switch and inductor of each leg, board and lead."""
    return n_legs * (r_ds_on_hot / parallel + dcr) + r_series + r_lead


def half_of_single(n_legs: float, v_rail_loaded: float) -> float:
    """A leg swings half of one rail to either side."""
    return n_legs * v_rail_loaded / 2


def whole_of_split(n_legs: float, v_rail_loaded: float) -> float:
    """A leg swings one rail to either side."""
    return n_legs * v_rail_loaded


def power_at_depth(depth: float, v_ideal_loaded: float, z_load: float, r_path: float) -> float:
    """Power of the largest unclipped sine behind the resistance of the path."""
    peak = depth * v_ideal_loaded * z_load / (z_load + r_path)
    return peak**2 / (2 * z_load)


def power_with_dead_time(
    m_max: float,
    t_dead_distortion: float,
    carrier: float,
    v_ideal_loaded: float,
    z_load: float,
    r_path: float,
) -> float:
    """Dead time takes 8/pi of its share of the period from the fundamental."""
    depth = m_max - 8 / PI * t_dead_distortion * carrier
    return power_at_depth(depth, v_ideal_loaded, z_load, r_path)


def power_in_loop(
    m_max: float,
    t_dead_distortion: float,
    carrier: float,
    v_ideal_loaded: float,
    z_load: float,
    r_path: float,
) -> float:
    """A loop keeps the sine; only at its crest the dead time takes twice its share."""
    depth = m_max - 2 * t_dead_distortion * carrier
    return power_at_depth(depth, v_ideal_loaded, z_load, r_path)


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


NO_INDUCTOR = Constant(
    "0 ohm", "no inductor", derivation("a bead is a few milliohms, a bare stage has nothing")
)
PATH = {
    "n_legs": N_LEGS,
    "r_ds_on_hot": Input("r_ds_on_hot"),
    "parallel": Input("output_stage.parallel"),
    "r_series": Input("output_stage.r_series"),
    "r_lead": Input("r_lead"),
}

R_PATH_ = Derived(
    "r_path",
    "ohm",
    "channel",
    "all resistance in line with the load",
    ways=(
        Way(
            path_resistance,
            {**PATH, "dcr": NO_INDUCTOR},
            "n_legs (r_ds_on_hot/parallel + dcr) + r_series + r_lead",
            when={"filter_kind": ("bead", "filterless")},
        ),
        Way(
            path_resistance,
            {**PATH, "dcr": Input("filter.inductor.dcr")},
            "n_legs (r_ds_on_hot/parallel + dcr) + r_series + r_lead",
        ),
    ),
    sources=(derivation("one switch of each leg carries the load current at any time"),),
)

_LOADED = {
    "n_legs": N_LEGS,
    "v_rail_loaded": Input("v_rail_loaded"),
}

V_IDEAL_LOADED = Derived(
    "v_ideal_loaded",
    "V",
    "channel",
    "load peak that the loaded rail allows",
    ways=(
        Way(half_of_single, _LOADED, "n_legs v_rail_loaded / 2", when={"supply.rails": "single"}),
        Way(whole_of_split, _LOADED, "n_legs v_rail_loaded", when={"supply.rails": "split"}),
    ),
)

_AT_ONCE = Assumption("0 s", "favourable", derivation("no loss by dead time"))
_T_DEAD = Input("t_dead_distortion", default=_AT_ONCE)
# 40 ns at 400 kHz take 8 % in an open loop (common practice, no source)
_NONE_LOST = derivation("dead time not stated: none is lost")
_NO_DEAD_TIME = Assumption(None, "neutral", _NONE_LOST, within="0.9 .. 1")
_CARRIER_OPEN = Assumption(None, "favourable", derivation("carrier open: no loss by dead time"))
_FORMULA = "(depth v_ideal_loaded z_load/(z_load + r_path))^2 / (2 z_load)"


def clip_onset(m_max: Input, r_path: Input, v_loaded: Input = V_LOADED) -> tuple[Way, ...]:
    """The ways to the clip onset, behind a largest depth and a resistance of the path."""
    still = {"depth": m_max, "v_ideal_loaded": v_loaded, "z_load": Z_LOAD, "r_path": r_path}
    edges = {
        "m_max": m_max,
        "t_dead_distortion": _T_DEAD,
        "carrier": Input("modulator.carrier"),
        "v_ideal_loaded": v_loaded,
        "z_load": Z_LOAD,
        "r_path": r_path,
    }
    return (
        Way(power_at_depth, still, _FORMULA, when={"modulator.type": "self-oscillating"}),
        # a part that does not print its dead time: a loop makes no difference then
        Way(
            power_at_depth,
            still,
            _FORMULA,
            when={"dead_time_stated": "no"},
            assumes=_NO_DEAD_TIME,
        ),
        Way(
            power_in_loop,
            edges,
            "((m_max - 2 t_dead_distortion carrier) v_ideal_loaded"
            " z_load/(z_load + r_path))^2 / (2 z_load)",
            when={"modulator.feedback": ("before-filter", "after-filter"), **CLOCKED},
        ),
        Way(
            power_with_dead_time,
            edges,
            "((m_max - 8/pi t_dead_distortion carrier) v_ideal_loaded"
            " z_load/(z_load + r_path))^2 / (2 z_load)",
            when=CLOCKED,
        ),
        Way(
            power_at_depth,
            still,
            _FORMULA,
            assumes=_CARRIER_OPEN,
        ),
    )


P_OUT_MAX = Derived(
    "p_out_max",
    "W",
    "channel",
    "sine power into the load at the onset of clipping, where what is not given takes nothing",
    ways=clip_onset(M_MAX, R_PATH),
    sources=(
        derivation("divider of load and path; dead time as a square wave against the current"),
        Source("TAS6424-Q1 data sheet", "27 W into 4 ohm at 10 %, 14.4 V bridge; no page given"),
    ),
)

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

DERIVED = (V_RAIL_SINE, V_SINE_MAX, R_PATH_, V_IDEAL_LOADED, P_OUT_MAX, V_LOAD_RMS)

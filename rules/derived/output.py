"""What reaches the load: resistance in its path, peak voltage, largest power."""

from ...linter.check import Assumption, Constant, Derived, Input, Source, Way, derivation
from ..formulas.maths import PI

N_LEGS = Input("n_legs")
Z_LOAD = Input("z_load")
R_PATH = Input("r_path")
M_MAX = Input("m_max")
V_LOADED = Input("v_ideal_loaded")
CLOCKED = {"modulator.type": ("natural-sampling", "uniform-sampling")}


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
        Source("TAS6424-Q1 data sheet", "section 3: 27 W into 4 ohm at 10 % from 14.4 V"),
    ),
)

DERIVED = (R_PATH_, V_IDEAL_LOADED, P_OUT_MAX)

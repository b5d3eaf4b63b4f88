"""Output inductor hot and at its crest: temperature, saturation, largest current."""

from ...linter.check import (
    Assumption,
    Constant,
    Derived,
    Input,
    Source,
    Way,
    derivation,
    from_memory,
)
from ..formulas.constants import PRINTED_AT
from ..formulas.inductor import hot_saturation
from ..formulas.maths import smaller
from .current import crest_with_ripple
from .load import lowest_load
from .ways import as_stated

RIPPLE = Input(
    "ripple_idle", default=Assumption("0 A", "floor", derivation("current without its ripple"))
)


def warmed(t_air_inside: float, rise_rated: float, i_inductor_rms: float, i_rms: float) -> float:
    """Rise goes with the square of the current."""
    return t_air_inside + rise_rated * (i_inductor_rms / i_rms) ** 2


def saturation_at_hot(i_sat: float, factor: float) -> float:
    """Saturation current at 100 degC."""
    return i_sat * factor


def unchanged() -> float:
    """Saturation that does not fall."""
    return 1.0


def four_fifths() -> float:
    """Saturation of power ferrite."""
    return 0.8


def cold_path(n_legs: float, r_ds_on: float, parallel: float, dcr: float, r_series: float) -> float:
    """Resistance that limits the current while everything is cold."""
    return n_legs * (r_ds_on / parallel + dcr) + r_series


def stated_crest(
    m_max: float,
    v_ideal: float,
    v_peak: float,
    z_load_stated: float,
    r_path_cold: float,
    ripple_idle: float,
    modulator: str,
) -> float:
    """Crest of load current and ripple, clipped into load and cold path."""
    loop = z_load_stated + r_path_cold
    peak = smaller(m_max * v_ideal, v_peak) / loop
    return crest_with_ripple(peak, v_ideal, loop, ripple_idle, modulator)


T_INDUCTOR = Derived(
    "t_inductor",
    "degC",
    "channel",
    "inductor at rated power, copper loss only",
    ways=(
        Way(
            warmed,
            {
                "t_air_inside": Input("t_air_inside"),
                "rise_rated": Input("filter.inductor.rise_rated"),
                "i_inductor_rms": Input("i_inductor_rms"),
                "i_rms": Input("filter.inductor.i_rms"),
            },
            "t_air_inside + rise_rated (i_inductor_rms / i_rms)^2",
        ),
    ),
    sources=(
        Source("Murata, tutorial on rated currents of inductors", "rise of 40 K; no page given"),
    ),
)

# the usual range of the field, 0.5 .. 1.05, over the 0.8 of ferrite
HOT_SPREAD = "0.62 .. 1.31"

I_SAT_FACTOR = Derived(
    "i_sat_factor",
    "1",
    "channel",
    "saturation current at 100 degC over that at 25 degC",
    ways=(
        Way(
            as_stated,
            {"value": Input("filter.inductor.i_sat_hot_factor")},
            "value",
        ),
        Way(
            unchanged,
            {},
            "1",
            when={"filter.inductor.core": ("powder", "air")},
            assumes=Assumption(
                None, "neutral", from_memory("powder cores saturate softly"), within=HOT_SPREAD
            ),
        ),
        Way(
            four_fifths,
            {},
            "0.8",
            assumes=Assumption(
                None,
                "neutral",
                from_memory("ferrite N87: 490 mT at 25 degC, 390 mT at 100 degC"),
                within=HOT_SPREAD,
            ),
        ),
    ),
)

_SATURATION = {
    "i_sat": Input("filter.inductor.i_sat"),
    "factor": Input("i_sat_factor"),
}

I_SAT_HOT = Derived(
    "i_sat_hot",
    "A",
    "channel",
    "saturation current of one inductor, hot",
    ways=(
        Way(
            hot_saturation,
            {
                **_SATURATION,
                "t_inductor": Input("t_inductor"),
                "t_cold": PRINTED_AT,
                "t_hot": Constant("373.15 K", "100 degC", derivation("convention of the field")),
            },
            "i_sat (1 - (1 - factor) (t_inductor - t_cold)/(t_hot - t_cold))",
        ),
        Way(
            saturation_at_hot,
            _SATURATION,
            "i_sat factor",
            assumes=Assumption(
                None, "adverse", derivation("core taken at 100 degC while its heat is open")
            ),
        ),
    ),
    sources=(from_memory("saturation flux of power ferrite against temperature"),),
)

_PEAK = {
    "m_max": Input("m_max", unit="%"),
    "v_ideal": Input("v_ideal"),
    "v_peak": Input(
        "limiter.v_peak",
        default=Assumption(float("inf"), "absent", derivation("no limiter, no limit")),
    ),
    "z_load_stated": Input("z_load_stated"),
    "r_path_cold": Input("r_path_cold"),
    "ripple_idle": RIPPLE,
    "modulator": Input("modulator.type"),
}
_MORE_CURRENT = derivation("less resistance lets more current through")
_LESS = Assumption("0 ohm", "adverse", _MORE_CURRENT)
_NO_SWITCH = Assumption("0 ohm", "adverse", _MORE_CURRENT, placeholder=True)  # none has so little

R_PATH_COLD = Derived(
    "r_path_cold",
    "ohm",
    "channel",
    "resistance in line with the load, cold",
    ways=(
        Way(
            cold_path,
            {
                "n_legs": Input("n_legs"),
                "r_ds_on": Input("output_stage.device.r_ds_on", default=_NO_SWITCH),
                "parallel": Input("output_stage.parallel"),
                "dcr": Input("filter.inductor.dcr", default=_LESS),
                "r_series": Input("output_stage.r_series", default=_LESS),
            },
            "n_legs (r_ds_on/parallel + dcr) + r_series",
        ),
    ),
    sources=(derivation("one switch of each leg carries the load current at any time"),),
)

Z_LOAD_STATED = Derived(
    "z_load_stated",
    "ohm",
    "channel",
    "lowest load that the spec itself states",
    ways=(
        Way(
            as_stated,
            {"value": Input("z_piezo")},
            "value",
            when={"loudspeaker.piezo": "fitted"},
        ),
        Way(
            lowest_load,
            {
                "z_min": Input("loudspeaker.z_min"),
                "series": Input("loudspeaker.series"),
                "parallel": Input("loudspeaker.parallel"),
                "z_driver": Input("z_driver"),
                "load_low": Input("load_low"),
            },
            "z_min series/parallel, times load_low parallel/(z_driver series) below 1",
        ),
        Way(as_stated, {"value": Input("load_low")}, "value"),
    ),
)

I_INDUCTOR_CREST = Derived(
    "i_inductor_crest",
    "A",
    "channel",
    "largest current of one inductor, clipped into the lowest load that is stated",
    ways=(
        Way(
            stated_crest,
            _PEAK,
            "largest of m v_ideal/(z_load_stated + r_path_cold) + ripple_idle/2 (1 - m^2) up to"
            " m v_ideal = smaller of m_max v_ideal and v_peak; self-oscillating modulator: the"
            " full ripple at the end",
        ),
    ),
    sources=(derivation("ripple of a clocked stage goes with 1 - M^2, of a hysteretic one not"),),
)

DERIVED = (I_SAT_FACTOR, R_PATH_COLD, Z_LOAD_STATED, I_INDUCTOR_CREST, T_INDUCTOR, I_SAT_HOT)

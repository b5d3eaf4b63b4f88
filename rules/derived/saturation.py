"""Output inductor hot and at its crest: temperature, saturation, largest current."""

from typing import Any

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
from ..formulas.inductor import hot_saturation
from ..formulas.maths import smaller
from .load import lowest_load

RIPPLE = Input("ripple_idle", "A", "largest ripple, peak to peak")
_CLOCKED = ("natural-sampling", "uniform-sampling")


def warmed(t_air_inside: Any, rise_rated: Any, i_inductor_rms: Any, i_rms: Any) -> Any:
    """Rise goes with the square of the current."""
    return t_air_inside + rise_rated * (i_inductor_rms / i_rms) ** 2


def saturation_at_hot(i_sat: Any, factor: Any) -> Any:
    """Saturation current at 100 degC."""
    return i_sat * factor


def as_stated(value: Any) -> Any:
    """The value itself."""
    return value


def unchanged() -> Any:
    """Saturation that does not fall."""
    return 1.0


def four_fifths() -> Any:
    """Saturation of power ferrite."""
    return 0.8


def crest_clocked(
    m_max: Any, v_ideal: Any, v_peak: Any, z_load_stated: Any, ripple_idle: Any
) -> Any:
    """Audio crest and half of the ripple that is left there."""
    depth = smaller(m_max, v_peak / v_ideal)
    return depth * v_ideal / z_load_stated + ripple_idle / 2 * (1 - depth**2)


def crest_constant_ripple(
    m_max: Any, v_ideal: Any, v_peak: Any, z_load_stated: Any, ripple_idle: Any
) -> Any:
    """The same where the ripple does not shrink."""
    return smaller(m_max * v_ideal, v_peak) / z_load_stated + ripple_idle / 2


T_INDUCTOR = Derived(
    "t_inductor", "degC", "channel", "inductor at rated power, copper loss only",
    ways=(
        Way(
            warmed,
            {
                "t_air_inside": Input("t_air_inside", "degC", "air round the parts"),
                "rise_rated": Input("filter.inductor.rise_rated", "K", "rise at i_rms"),
                "i_inductor_rms": Input("i_inductor_rms", "A", "rms current at rated power"),
                "i_rms": Input("filter.inductor.i_rms", "A", "heating current"),
            },
            "t_air_inside + rise_rated (i_inductor_rms / i_rms)^2",
        ),
    ),
    sources=(Source("Murata, tutorial on rated currents of inductors", "rise of 40 K"),),
)

I_SAT_FACTOR = Derived(
    "i_sat_factor", "1", "channel", "saturation current at 100 degC over that at 25 degC",
    ways=(
        Way(
            as_stated,
            {"value": Input("filter.inductor.i_sat_hot_factor", "1", "100 over 25 degC")},
            "value",
        ),
        Way(
            unchanged, {}, "1", when={"filter.inductor.core": ("powder", "air")},
            assumes=Assumption(None, "neutral", from_memory("powder cores saturate softly")),
        ),
        Way(
            four_fifths, {}, "0.8",
            assumes=Assumption(
                None, "neutral",
                from_memory("ferrite N87: 490 mT at 25 degC, 390 mT at 100 degC"),
            ),
        ),
    ),
)

_SATURATION = {
    "i_sat": Input("filter.inductor.i_sat", "A", "saturation current at 25 degC"),
    "factor": Input("i_sat_factor", "1", "saturation, 100 over 25 degC"),
}

I_SAT_HOT = Derived(
    "i_sat_hot", "A", "channel", "saturation current of one inductor, hot",
    ways=(
        Way(
            hot_saturation,
            {
                **_SATURATION,
                "t_inductor": Input("t_inductor", "degC", "inductor at rated power"),
                "t_cold": Constant("298.15 K", "25 degC", derivation("convention of the field")),
                "t_hot": Constant("373.15 K", "100 degC", derivation("convention of the field")),
            },
            "i_sat (1 - (1 - factor) (t_inductor - t_cold)/(t_hot - t_cold))",
        ),
        Way(
            saturation_at_hot, _SATURATION, "i_sat factor",
            assumes=Assumption(
                None, "adverse", derivation("core taken at 100 degC while its heat is open")
            ),
        ),
    ),
    sources=(from_memory("saturation flux of power ferrite against temperature"),),
)

_PEAK = {
    "m_max": Input("m_max", "%", "largest modulation depth"),
    "v_ideal": Input("v_ideal", "V", "largest peak that the rails allow"),
    "v_peak": Input(
        "limiter.v_peak", "V", "fast level limiter",
        Assumption(float("inf"), "absent", derivation("no limiter, no limit")),
    ),
    "z_load_stated": Input("z_load_stated", "ohm", "lowest load that the spec states"),
    "ripple_idle": RIPPLE,
}


Z_LOAD_STATED = Derived(
    "z_load_stated", "ohm", "channel", "lowest load that the spec itself states",
    ways=(
        Way(
            lowest_load,
            {
                "z_min": Input("loudspeaker.z_min", "ohm", "lowest modulus of one loudspeaker"),
                "series": Input("loudspeaker.series", "1", "loudspeakers in series"),
                "parallel": Input("loudspeaker.parallel", "1", "loudspeakers in parallel"),
                "z_driver": Input("z_driver", "ohm", "rated impedance of one loudspeaker"),
                "load_low": Input("load_low", "ohm", "lowest rated load"),
            },
            "z_min series/parallel, times load_low parallel/(z_driver series) below 1",
        ),
        Way(as_stated, {"value": Input("load_low", "ohm", "lowest rated load")}, "value"),
    ),
)

I_INDUCTOR_CREST = Derived(
    "i_inductor_crest", "A", "channel",
    "largest current of one inductor, clipped into the lowest load that is stated",
    ways=(
        Way(
            crest_constant_ripple, _PEAK,
            "smaller of m_max v_ideal and v_peak / z_load_stated + ripple_idle/2",
            when={"modulator.type": "self-oscillating"},
        ),
        Way(
            crest_clocked, _PEAK,
            "M v_ideal / z_load_stated + ripple_idle/2 (1 - M^2),"
            " M smaller of m_max and v_peak / v_ideal",
            when={"modulator.type": _CLOCKED},
        ),
    ),
    sources=(derivation("ripple of a clocked stage goes with 1 - M^2, of a hysteretic one not"),),
)

DERIVED = (I_SAT_FACTOR, Z_LOAD_STATED, I_INDUCTOR_CREST, T_INDUCTOR, I_SAT_HOT)

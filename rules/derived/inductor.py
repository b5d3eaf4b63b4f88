"""Output inductor at work: ripple, rms current, losses."""

from ...linter.check import (
    Assumption,
    Constant,
    Derived,
    Input,
    Way,
    derivation,
    from_memory,
)
from ..formulas.constants import COPPER_COEFFICIENT
from ..formulas.inductor import (
    hot_resistance,
    mean_square_three_level,
    mean_square_two_level,
    ripple_three_level,
    ripple_to_ground,
    ripple_two_level,
)
from .ways import as_stated, left_out

V_SWING = Input("v_swing")
N_LEGS = Input("n_legs")
CARRIER = Input("modulator.carrier")
L = Input("filter.inductor.l")
DCR = Input("filter.inductor.dcr")
RIPPLE = Input("ripple_idle")
RATED_PEAK = Input("i_rated_peak")
NO_FILTER = ("bead", "filterless")
SKIN = derivation("no winding has less resistance at the carrier than to direct current")
VOLT_SECONDS = derivation("volt-seconds across the inductance in one switching period")


def coil_inductance(l_e: float, series: float, parallel: float) -> float:
    """Inductance of all loudspeakers of the channel."""
    return l_e * series / parallel


def ripple_in_coil(
    n_legs: float, v_swing: float, l_e: float, series: float, parallel: float, carrier: float
) -> float:
    """Two-level drive straight into the voice coil."""
    return ripple_two_level(n_legs * v_swing, coil_inductance(l_e, series, parallel), carrier)


def ripple_in_coil_three_level(
    v_swing: float, l_e: float, series: float, parallel: float, carrier: float
) -> float:
    """Three-level drive straight into the voice coil; half of it stands for one leg."""
    return ripple_three_level(v_swing, coil_inductance(l_e, series, parallel) / 2, carrier)


def rms_two_level(i_rated_peak: float, ripple_idle: float, depth_rated: float) -> float:
    """Audio and ripple current of one inductor."""
    ripple = ripple_idle**2 / 12 * mean_square_two_level(depth_rated)
    return (i_rated_peak**2 / 2 + ripple) ** 0.5


def rms_three_level(i_rated_peak: float, ripple_idle: float, depth_rated: float) -> float:
    """The same for a three-level bridge without capacitors to ground."""
    ripple = ripple_idle**2 / 12 * mean_square_three_level(depth_rated)
    return (i_rated_peak**2 / 2 + ripple) ** 0.5


def rms_constant_ripple(i_rated_peak: float, ripple_idle: float) -> float:
    """The same where the ripple does not shrink with modulation."""
    return (i_rated_peak**2 / 2 + ripple_idle**2 / 12) ** 0.5


def no_copper() -> float:
    """A bead, or nothing at all, has no copper to speak of."""
    return 0.0


def copper_heat(
    n_legs: float, dcr: float, rise: float, copper: float, i_rated_peak: float
) -> float:
    """Heat of the audio current in the winding."""
    return n_legs * hot_resistance(dcr, rise, copper) * i_rated_peak**2 / 2


_COIL = {
    "l_e": Input("loudspeaker.l_e"),
    "series": Input("loudspeaker.series"),
    "parallel": Input("loudspeaker.parallel"),
    "carrier": CARRIER,
}
_IN_LEG = {"v_swing": V_SWING, "l_leg": L, "carrier": CARRIER}
_THREE = {"filter_kind": "lc", "levels": "three-level"}

RIPPLE_IDLE = Derived(
    "ripple_idle",
    "A",
    "channel",
    "largest ripple of one inductor, peak to peak; of the voice coil where there is none",
    ways=(
        Way(
            ripple_two_level,
            _IN_LEG,
            "v_swing / (4 l_leg carrier)",
            when={"filter_kind": "lc", "levels": "two-level"},
        ),
        Way(
            ripple_to_ground,
            {**_IN_LEG, "c_ground": Input("c_ground_working")},
            "v_swing / (4 l_leg carrier), times (2 pi carrier)^2 l_leg c_ground where below 1;"
            " at least v_swing / (16 l_leg carrier)",
            when={**_THREE, "filter.c_ground": "fitted"},
        ),
        Way(
            ripple_three_level,
            _IN_LEG,
            "v_swing / (16 l_leg carrier)",
            when={**_THREE, "filter.c_ground": "none"},
        ),
        Way(
            ripple_in_coil,
            {"n_legs": N_LEGS, "v_swing": V_SWING, **_COIL},
            "n_legs v_swing / (4 l_e series/parallel carrier)",
            when={"filter_kind": NO_FILTER, "levels": "two-level"},
        ),
        Way(
            ripple_in_coil_three_level,
            {"v_swing": V_SWING, **_COIL},
            "v_swing / (8 l_e series/parallel carrier)",
            when={"filter_kind": NO_FILTER, "levels": "three-level"},
        ),
    ),
    sources=(VOLT_SECONDS,),
)

_RMS = {"i_rated_peak": RATED_PEAK, "ripple_idle": RIPPLE}
_DEPTH = {"depth_rated": Input("depth_rated")}
_SHRINKS = "ripple_idle^2/12 (1 - M^2 + 3 M^4/8)), M = depth_rated"
_CLOCKED = ("natural-sampling", "uniform-sampling")

I_INDUCTOR_RMS = Derived(
    "i_inductor_rms",
    "A",
    "channel",
    "rms current of one inductor, sine at rated power",
    ways=(
        Way(
            rms_constant_ripple,
            _RMS,
            "sqrt(i_rated_peak^2/2 + ripple_idle^2/12)",
            when={"modulator.type": "self-oscillating"},
        ),
        Way(
            rms_three_level,
            {**_RMS, **_DEPTH},
            "sqrt(i_rated_peak^2/2 + 4 ripple_idle^2/3 (M^2/2 - 8 M^3/(3 pi) + 3 M^4/8)),"
            " M = depth_rated",
            when={"modulator.type": _CLOCKED, "levels": "three-level", "filter.c_ground": "none"},
        ),
        Way(
            rms_two_level,
            {**_RMS, **_DEPTH},
            f"sqrt(i_rated_peak^2/2 + {_SHRINKS}",
            when={"modulator.type": _CLOCKED},
        ),
    ),
    sources=(derivation("mean squares of sine and triangular ripple add"),),
)

P_INDUCTOR = Derived(
    "p_inductor",
    "W",
    "channel",
    "heat of the audio current in all inductors, at 100 degC",
    ways=(
        Way(no_copper, {}, "0: no inductor", when={"filter_kind": NO_FILTER}),
        Way(
            copper_heat,
            {
                "n_legs": N_LEGS,
                "dcr": DCR,
                "rise": Constant("80 K", "winding at 100 degC", derivation("100 - 20 degC")),
                "copper": COPPER_COEFFICIENT,
                "i_rated_peak": RATED_PEAK,
            },
            "n_legs dcr (1 + copper rise) i_rated_peak^2/2",
        ),
    ),
    sources=(from_memory("IEC 60028, resistance of copper"),),
)

DCR_STATED = Derived(
    "dcr_stated",
    "mohm",
    "channel",
    "resistance of one inductor where it is stated, for what cannot do with an assumed one",
    ways=(),
    stated_at="filter.inductor.dcr",
)

R_WINDING = Derived(
    "r_winding",
    "mohm",
    "channel",
    "resistance of the winding of one inductor at the carrier",
    ways=(
        Way(no_copper, {}, "0: no inductor", when={"filter_kind": NO_FILTER}),
        Way(
            as_stated,
            {
                "value": Input(
                    "filter.inductor.dcr", default=left_out("0 ohm", "ripple in the copper")
                )
            },
            "value",
            assumes=Assumption(None, "favourable", SKIN),
        ),
    ),
    stated_at="filter.inductor.r_ac",
    agree=float("inf"),
    sources=(SKIN,),
)

DERIVED = (DCR_STATED, R_WINDING, RIPPLE_IDLE, I_INDUCTOR_RMS, P_INDUCTOR)

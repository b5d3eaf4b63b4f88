"""How long the rated power lasts, and how warm heatsink and junction get by then.

The heatsink, or the board of a stage without one, takes minutes; the package is through in
a second.  So the junction follows its heatsink with the rise of its own heat on top, and the
heatsink comes from the programme to the lasting sine with one time constant.
"""

from ...linter.check import COMMON_PRACTICE, Assumption, Constant, Derived, Input, Way, derivation
from ..formulas.heat import ChannelHeat, Solution, junction_after, switch_heat
from ..formulas.maths import settled
from .cooling import over_case
from .temperature import (
    DEVICE,
    HEAT_RATED,
    HEAT_TESTED,
    NUMBER,
    PROGRAMME,
    RATED,
    T_END,
    heatsink_of,
    junction_of,
)
from .ways import as_stated

CIRCUIT = derivation("one heat capacity behind one thermal resistance; the package is faster")
_JC = Input(
    f"{DEVICE}.r_th_jc",
    default=Assumption("0 K/W", "favourable", derivation("a package that adds nothing")),
)


def limited(duration: float) -> str:
    """The rating says how long it lasts."""
    return "limited"


def lasting() -> str:
    """A rating without a duration lasts."""
    return "lasting"


def heat_capacity_time(r_sink: float, mass: float, count: float, capacity: float) -> float:
    """All heatsinks together, seconds to 63 % of the rise."""
    return r_sink * mass * count * capacity


def at_once(t: float) -> float:
    """A heatsink of known temperature has nothing to wait for."""
    return 1.0 + 0.0 * t


def share_reached(duration: float, time_constant: float) -> float:
    """Part of the way from the programme to the lasting sine."""
    return settled(duration / time_constant)


def reached(r_th: float, r_fast: float, share: float) -> float:
    """Thermal resistance that a rise has come through by then."""
    return share * r_th + (1 - share) * r_fast


def junction_by_then(
    rated: Solution,
    programme: Solution,
    number: float,
    heat_known: str,
    heat_rated: ChannelHeat,
    heat_programme: ChannelHeat,
    r_fast: float,
    t_end: float,
    share: float,
) -> float:
    """Hottest junction of a channel at the end of the rated time."""
    t_lasting, t_before = rated.t_junction[int(number)], programme.t_junction[int(number)]
    more = switch_heat(heat_rated, t_lasting, t_end)[0]
    more = more - switch_heat(heat_programme, t_before, t_end)[0]
    return junction_after(share, t_before, t_lasting, r_fast * more)


SHARE = Input("share_reached")
_BOTH = {"rated": RATED, "programme": PROGRAMME}
_KNOWN = {"number": NUMBER, "heat_known": Input("heat_known")}
LIMITED = {"rating_lasts": "limited"}
LASTING = {"rating_lasts": "lasting"}

DERIVED: tuple[Derived, ...] = (
    Derived(
        "rating_lasts",
        "word",
        "channel",
        "whether the rated power is given for a time or lasts",
        (
            Way(limited, {"duration": Input("rated_duration")}, "limited where duration is stated"),
            Way(lasting, {}, "lasting"),
        ),
    ),
    Derived(
        "heat_time",
        "s",
        "product",
        "heatsink, or board of a stage without one: to 63 % of its rise",
        (
            Way(
                heat_capacity_time,
                {
                    "r_sink": Input("r_sink"),
                    "mass": Input("thermal.heatsink.mass"),
                    "count": Input("thermal.heatsink.count"),
                    "capacity": Constant("900 J/kg/K", "of aluminium", COMMON_PRACTICE),
                },
                "r_sink mass count capacity",
                when={"heatsink": "fitted"},
            ),
        ),
        stated_at="thermal.time_constant",
        agree=0.5,
        sources=(CIRCUIT,),
    ),
    Derived(
        "share_reached",
        "1",
        "channel",
        "part of the way from the programme to the lasting sine at the end of the rated time",
        (
            Way(at_once, {"t": Input("thermal.heatsink.t")}, "1, since t is known"),
            Way(
                share_reached,
                {"duration": Input("rated_duration"), "time_constant": Input("heat_time")},
                "1 - exp(-duration / time_constant)",
            ),
        ),
        sources=(CIRCUIT,),
    ),
    Derived(
        "r_th_fast",
        "K/W",
        "channel",
        "junction over what is slow to heat, for one watt in the channel's switches",
        (
            Way(
                as_stated,
                {"value": Input("r_th_own")},
                "value",
                when={"heatsink": "fitted"},
            ),
            Way(
                over_case,
                {"share": Input("package_share"), "r_th_jc": _JC},
                "share r_th_jc",
                when={"heatsink": ("none", "not given")},
            ),
        ),
    ),
    Derived(
        "r_th_loop",
        "K/W",
        "channel",
        "junction for one watt more in the channel's switches, within the rated time",
        (
            Way(
                reached,
                {"r_th": Input("r_th_own"), "r_fast": Input("r_th_fast"), "share": SHARE},
                "share r_th + (1 - share) r_fast",
                when=LIMITED,
            ),
            Way(as_stated, {"value": Input("r_th_own")}, "value", when=LASTING),
        ),
    ),
    Derived(
        "r_th_loop_shared",
        "K/W",
        "channel",
        "heatsink and inside air for one watt more, within the rated time",
        (
            Way(
                reached,
                {
                    "r_th": Input("r_th_shared"),
                    "r_fast": Constant("0 K/W", "of what is slow to heat, at once", CIRCUIT),
                    "share": SHARE,
                },
                "share r_th + (1 - share) r_fast",
                when=LIMITED,
            ),
            Way(as_stated, {"value": Input("r_th_shared")}, "value", when=LASTING),
        ),
    ),
    Derived(
        "t_junction_rated",
        "degC",
        "channel",
        "hottest junction, sine at rated power, at the end of its time",
        (
            Way(
                junction_by_then,
                {
                    **_BOTH,
                    **_KNOWN,
                    "heat_rated": HEAT_RATED,
                    "heat_programme": HEAT_TESTED,
                    "r_fast": Input("r_th_fast"),
                    "t_end": T_END,
                    "share": SHARE,
                },
                "share t_junction(rated) + (1 - share) (t_junction(programme) + r_fast (heat_rated"
                " - heat_programme)) of number with heat_known, heat at most that of t_end",
                when=LIMITED,
            ),
            Way(
                junction_of,
                {"solution": RATED, **_KNOWN},
                "solution at number, with heat_known",
                when=LASTING,
            ),
        ),
        sources=(CIRCUIT,),
    ),
    Derived(
        "t_heatsink_rated",
        "degC",
        "product",
        "heatsink, sine at rated power",
        (Way(heatsink_of, {"solution": RATED}, "solution", when={"heatsink": "fitted"}),),
        stated_at="thermal.heatsink.t",
        agree=0.0,
    ),
)

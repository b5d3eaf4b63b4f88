"""What the solved temperatures are needed for: trips, touch, bursts, runaway, statements."""

from ...linter.check import (
    Assumption,
    Derived,
    Input,
    Source,
    Way,
)
from ..formulas.constants import T_ROOM
from ..formulas.dissipation import hot_resistance
from ..formulas.enclosure import wall_rise, walls
from ..formulas.heat import ChannelHeat, Solution, switch_heat
from ..formulas.maths import smaller
from .cooling import SILENT, fitted
from .temperature import (
    DEVICE,
    FACTOR,
    HEAT_RATED,
    HEAT_TESTED,
    PROGRAMME,
    R_COLD,
    T_END,
    T_PROGRAMME,
    T_RATED,
)
from .ways import as_stated

MEASURED_IN_ROOM = Source(
    "common practice: a heatsink temperature without ambient was measured in a room",
    kind="common practice",
)
NO_CLAIM = Source(
    "common practice: nobody claims a lasting sine without saying so", kind="common practice"
)
AUXILIARY = Input("supply.p_auxiliary")


def above(t: float, t_ambient: float) -> float:
    """One temperature over another."""
    return t - t_ambient


def total(losses: tuple[float, ...], p_auxiliary: float) -> float:
    """Heat of all channels and of the other loads."""
    return sum(losses, p_auxiliary)


def one_package(heat: ChannelHeat, t_junction: float, t_end: float, share: float) -> float:
    """Heat of one package."""
    return share * switch_heat(heat, t_junction, t_end)[0]


def one_switch(
    heat: ChannelHeat, t_junction: float, t_end: float, n_legs: float, parallel: float
) -> float:
    """Heat of one switch."""
    return switch_heat(heat, t_junction, t_end)[0] / (2 * n_legs * parallel)


def case(t_junction: float, p_package: float, r_th_jc: float) -> float:
    """Case below the junction."""
    return t_junction - p_package * r_th_jc


def conduction_slope(
    n_legs: float,
    parallel: float,
    i_rated_peak: float,
    r_ds_on: float,
    factor: float,
    t_junction: float,
    t_end: float,
) -> float:
    """How the conduction loss of a channel rises with its junction temperature.

    Where the heat would take the junction further than the part goes, as it rises there.
    Written with the resistance one kelvin apart, so that no exponent shows.
    """
    square, t = i_rated_peak**2 / 2, smaller(t_junction, t_end)
    warmer = hot_resistance(r_ds_on, factor, t + 0.5)
    colder = hot_resistance(r_ds_on, factor, t - 0.5)
    return n_legs / parallel * square * (warmer - colder)


def enclosure_rise(
    solution: Solution, width: float, height: float, depth: float, emissivity: float, t_room: float
) -> float:
    """Wall over room, in a room at sea level without sun, as surfaces are judged."""
    box = walls(width, height, depth, emissivity, "sealed", 0.0, 0.0)
    return wall_rise(solution.heat_in_box, t_room, box)


DERIVED: tuple[Derived, ...] = (
    Derived(
        "heatsink_to_touch",
        "word",
        "product",
        "whether a heatsink is asked about: with neither box nor heatsink given the box is",
        (
            Way(as_stated, {"value": Input("thermal.heatsink")}, "value"),
            Way(
                fitted,
                {},
                "fitted: nothing is said against it beside a box that is described, or none",
                when={"thermal.enclosure": ("fitted", "none")},
            ),
            Way(as_stated, {"value": Input("thermal.heatsink", default=SILENT)}, "value"),
        ),
    ),
    Derived(
        "heat_basis",
        "word",
        "product",
        "signal for which the cooling was sized",
        (
            Way(
                as_stated,
                {
                    "value": Input(
                        "thermal.basis", default=Assumption("one-eighth", "absent", NO_CLAIM)
                    )
                },
                "value",
            ),
        ),
    ),
    Derived(
        "p_package_programme",
        "W",
        "channel",
        "heat of one package at programme",
        (
            Way(
                one_package,
                {
                    "heat": HEAT_TESTED,
                    "t_junction": T_PROGRAMME,
                    "t_end": T_END,
                    "share": Input("package_share"),
                },
                "share heat at t_junction, at most t_end",
            ),
        ),
    ),
    Derived(
        "p_switch_rated",
        "W",
        "channel",
        "heat of one switch at rated power",
        (
            Way(
                one_switch,
                {
                    "heat": HEAT_RATED,
                    "t_junction": T_RATED,
                    "t_end": T_END,
                    "n_legs": Input("n_legs"),
                    "parallel": Input("output_stage.parallel"),
                },
                "heat at t_junction, at most t_end / (2 n_legs parallel)",
            ),
        ),
    ),
    Derived(
        "t_case_programme",
        "degC",
        "channel",
        "case of the package at programme",
        (
            Way(
                case,
                {
                    "t_junction": T_PROGRAMME,
                    "p_package": Input("p_package_programme"),
                    "r_th_jc": Input(f"{DEVICE}.r_th_jc"),
                },
                "t_junction - p_package r_th_jc",
            ),
        ),
    ),
    Derived(
        "p_slope",
        "W/K",
        "channel",
        "conduction loss for one kelvin more, rated power",
        (
            Way(
                conduction_slope,
                {
                    "n_legs": Input("n_legs"),
                    "parallel": Input("output_stage.parallel"),
                    "i_rated_peak": Input("i_rated_peak"),
                    "r_ds_on": R_COLD,
                    "factor": FACTOR,
                    "t_junction": T_RATED,
                    "t_end": T_END,
                },
                "n_legs i_rated_peak^2 / (2 parallel) dr/dT of r_ds_on, factor at t_junction,"
                " at most t_end",
            ),
        ),
    ),
    Derived(
        "heatsink_rise",
        "K",
        "product",
        "heatsink over the ambient at programme",
        (
            Way(
                above,
                {"t": Input("thermal.heatsink.t"), "t_ambient": T_ROOM},
                "t - t_ambient",
                assumes=Assumption(None, "neutral", MEASURED_IN_ROOM),
            ),
            Way(
                above,
                {"t": Input("t_heatsink"), "t_ambient": Input("environment.ambient")},
                "t - t_ambient",
            ),
        ),
    ),
    Derived(
        "p_heat_basis",
        "W",
        "product",
        "heat of the product at the signal of its statement",
        (
            Way(
                total,
                {"losses": Input("all p_loss_programme"), "p_auxiliary": AUXILIARY},
                "sum of losses + p_auxiliary",
                when={"thermal.basis": "one-eighth"},
            ),
            Way(
                total,
                {"losses": Input("all p_loss_rated"), "p_auxiliary": AUXILIARY},
                "sum of losses + p_auxiliary",
                when={"thermal.basis": "full-sine"},
            ),
        ),
    ),
    Derived(
        "enclosure_rise",
        "K",
        "product",
        "wall over a room of 25 degC at programme",
        (
            Way(
                enclosure_rise,
                {
                    "solution": PROGRAMME,
                    "width": Input("thermal.enclosure.width"),
                    "height": Input("thermal.enclosure.height"),
                    "depth": Input("thermal.enclosure.depth"),
                    "emissivity": Input("thermal.enclosure.emissivity"),
                    "t_room": T_ROOM,
                },
                "wall of width, height, depth, emissivity at t_room, heat of solution",
            ),
        ),
    ),
)

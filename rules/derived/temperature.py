"""The operating temperatures: one heat balance at rated power, one at programme."""

from typing import Any

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Source,
    Way,
    derivation,
)
from ..formulas.dissipation import hot_resistance
from ..formulas.enclosure import wall_rise, walls
from ..formulas.heat import (
    ChannelHeat,
    Solution,
    junction_over,
    solve,
    switch_heat,
)

DEVICE = "output_stage.device"
RATED = Input("thermal_rated", "set", "heat balance at rated power")
PROGRAMME = Input("thermal_programme", "set", "heat balance at programme")
NUMBER = Input("channel_index", "1", "number of the channel")
T_RATED = Input("t_junction_rated", "degC", "junction, sine at rated power")
T_PROGRAMME = Input("t_junction_programme", "degC", "junction at programme")
HEAT_RATED = Input("heat_rated", "set", "heat of the channel at rated power")
HEAT_PROGRAMME = Input("heat_programme", "set", "heat of the channel at programme")
R_OWN = Input("r_th_own", "K/W", "junction over heatsink for one watt in the channel")
R_COLD = Input(f"{DEVICE}.r_ds_on", "mohm", "one switch at 25 degC")
FACTOR = Input(f"{DEVICE}.r_ds_on_hot_factor", "1", "at 150 degC over 25 degC")
T_USUAL = Constant("100 degC", "junction while the heat path is open", COMMON_PRACTICE)
AT_100 = Assumption(None, "neutral", COMMON_PRACTICE)
OWN_TRIP = Source(
    "common practice: integrated stages shut down near their junction limit",
    kind="common practice",
)
AT_SINK = {"protection.over_temperature.at": "heatsink"}
AT_JUNCTION = {"protection.over_temperature.at": "junction"}
LASTING_SINE = {"thermal.basis": "full-sine"}
T_ROOM = Constant("25 degC", "room in which surfaces are judged", COMMON_PRACTICE)


def same(value: Any) -> Any:
    """The value itself."""
    return value


def balance(
    air: Any, sink: Any, heats: tuple[ChannelHeat, ...], r_own: tuple[Any, ...], p_other: Any,
    converter_share: Any,
) -> Solution:
    """Heat balance of the whole product."""
    return solve(air, sink, heats, r_own, p_other, converter_share)


def air_of(solution: Solution) -> Any:
    """Inside air."""
    return solution.t_air_inside


def heatsink_of(solution: Solution) -> Any:
    """Heatsink."""
    return solution.t_reference


def junction_of(solution: Solution, number: Any) -> Any:
    """Hottest junction of a channel."""
    return solution.t_junction[int(number)]


def shared_of(solution: Solution) -> Any:
    """Heatsink and air over ambient for one watt more."""
    return solution.r_shared


def channel_loss(heat: ChannelHeat, t_junction: Any) -> Any:
    """All heat of a channel at a junction temperature."""
    return switch_heat(heat, t_junction)[0] + heat.elsewhere


def one_package(heat: ChannelHeat, t_junction: Any, share: Any) -> Any:
    """Heat of one package."""
    return share * switch_heat(heat, t_junction)[0]


def one_switch(heat: ChannelHeat, t_junction: Any, n_legs: Any, parallel: Any) -> Any:
    """Heat of one switch."""
    return switch_heat(heat, t_junction)[0] / (2 * n_legs * parallel)


def case(t_junction: Any, p_package: Any, r_th_jc: Any) -> Any:
    """Case below the junction."""
    return t_junction - p_package * r_th_jc


def conduction_slope(
    n_legs: Any, parallel: Any, i_rated_peak: Any, r_ds_on: Any, factor: Any, t_junction: Any
) -> Any:
    """How the conduction loss of a channel rises with its junction temperature.

    Written with the resistance one kelvin apart, so that no exponent shows.
    """
    square = i_rated_peak**2 / 2
    warmer = hot_resistance(r_ds_on, factor, t_junction + 0.5)
    colder = hot_resistance(r_ds_on, factor, t_junction - 0.5)
    return n_legs / parallel * square * (warmer - colder)


def enclosure_rise(
    solution: Solution, width: Any, height: Any, depth: Any, emissivity: Any, t_room: Any
) -> Any:
    """Wall over room, in a room at sea level without sun, as surfaces are judged."""
    box = walls(width, height, depth, emissivity, "sealed", 0.0, 0.0)
    return wall_rise(solution.heat_in_box, t_room, box)


def _balance_inputs(heat: str) -> dict[str, Input]:
    return {
        "air": Input("air_path", "set", "the air of the parts"),
        "sink": Input("sink_path", "set", "where the packages give their heat"),
        "heats": Input(f"all {heat}", "set", "heat of the channels"),
        "r_own": Input("all r_th_own", "K/W", "junction over heatsink, by channel"),
        "p_other": Input("supply.p_auxiliary", "W", "other heat in the box"),
        "converter_share": Input("converter_share", "1", "heat of the converter over output"),
    }


def _balance(name: str, heat: str, meaning: str) -> Derived:
    way = Way(balance, _balance_inputs(heat),
              "balance of air, sink, heats, r_own, p_other, converter_share")
    source = derivation("what flows into a node of the thermal network flows out of it")
    return Derived(name, "set", "product", meaning, (way,), sources=(source,))


def _read(name: str, unit: str, figure: Any, meaning: str, solution: Input) -> Derived:
    way = Way(figure, {"solution": solution}, "solution")
    return Derived(name, unit, "product", meaning, (way,))


def _junction(name: str, solution: Input, meaning: str) -> Derived:
    way = Way(junction_of, {"solution": solution, "number": NUMBER}, "solution at number")
    return Derived(name, "degC", "channel", meaning, (way,))


def _loss(name: str, heat: Input, t_junction: Input, meaning: str) -> Derived:
    return Derived(
        name, "W", "channel", meaning,
        (
            Way(channel_loss, {"heat": heat, "t_junction": t_junction}, "heat at t_junction"),
            Way(channel_loss, {"heat": heat, "t_junction": T_USUAL}, "heat at t_junction",
                assumes=AT_100),
        ),
    )  # fmt: skip


DERIVED: tuple[Derived, ...] = (
    _balance("thermal_rated", "heat_rated", "temperatures, sine at rated power"),
    _balance("thermal_programme", "heat_programme", "temperatures while the programme plays"),
    Derived(
        "t_air_inside", "degC", "product", "air round the parts while the programme plays",
        (
            Way(air_of, {"solution": PROGRAMME}, "solution",
                when={"thermal.enclosure": "fitted"}),
            Way(same, {"value": Input("t_air_open", "degC", "inside air")}, "value",
                when={"enclosure": ("none", "silent")}),
        ),
        stated_at="thermal.t_air_inside", agree=0.0,
    ),
    Derived(
        "enclosure", "word", "product", "whether an enclosure is described",
        (Way(same, {"value": Input("thermal.enclosure", "word", "enclosure",
                                   Assumption("silent", "absent", COMMON_PRACTICE))}, "value"),),
    ),
    Derived(
        "t_heatsink", "degC", "product", "heatsink while the programme plays",
        (Way(heatsink_of, {"solution": PROGRAMME}, "solution", when={"heatsink": "fitted"}),),
        stated_at="thermal.heatsink.t", agree=0.0,
    ),
    Derived(
        "t_heatsink_rated", "degC", "product", "heatsink, sine at rated power",
        (Way(heatsink_of, {"solution": RATED}, "solution", when={"heatsink": "fitted"}),),
        stated_at="thermal.heatsink.t", agree=0.0,
    ),
    _junction("t_junction_rated", RATED, "hottest junction, sine at rated power"),
    _junction("t_junction_programme", PROGRAMME, "hottest junction while the programme plays"),
    _read("r_th_shared", "K/W", shared_of, "heatsink and inside air for one watt more", RATED),
    Derived(
        "t_junction_trip", "degC", "channel", "junction at rated power when the trip acts",
        (
            Way(junction_over,
                {"t_reference": Input("protection.over_temperature.t_trip", "degC", "trip"),
                 "heat": HEAT_RATED, "r_own": R_OWN},
                "t_reference + r_own heat at t_junction_trip",
                when={"protection.over_temperature.at": "heatsink"}),
            Way(same, {"value": Input("protection.over_temperature.t_trip", "degC", "trip")},
                "value", when={"protection.over_temperature.at": "junction"}),
            Way(same, {"value": Input(f"{DEVICE}.t_j_max", "degC", "junction limit")}, "value",
                when={"output_stage.devices": "integrated", "over_temperature": "silent"},
                assumes=Assumption(None, "neutral", OWN_TRIP)),
        ),
    ),
    Derived(
        "t_sensed", "degC", "channel", "where the trip is sensed, in stated use",
        (
            Way(same, {"value": Input("t_heatsink_rated", "degC", "heatsink")}, "value",
                when=AT_SINK | LASTING_SINE),
            Way(same, {"value": Input("t_heatsink", "degC", "heatsink")}, "value", when=AT_SINK),
            Way(same, {"value": T_RATED}, "value", when=AT_JUNCTION | LASTING_SINE),
            Way(same, {"value": T_PROGRAMME}, "value", when=AT_JUNCTION),
        ),
    ),
    Derived(
        "r_ds_on_hot", "mohm", "channel", "on-resistance of one switch, hot",
        (
            Way(hot_resistance, {"r_cold": R_COLD, "hot_factor": FACTOR, "t_junction": T_RATED},
                "r_cold (t_junction / 298 K)^n, n through hot_factor at 150 degC"),
            Way(hot_resistance, {"r_cold": R_COLD, "hot_factor": FACTOR, "t_junction": T_USUAL},
                "r_cold (t_junction / 298 K)^n, n through hot_factor at 150 degC",
                assumes=AT_100),
        ),
        sources=(derivation("power law in absolute temperature through two printed points"),),
    ),
    _loss("p_loss_rated", HEAT_RATED, T_RATED, "heat of the channel at rated power"),
    _loss("p_loss_programme", HEAT_PROGRAMME, T_PROGRAMME, "heat of the channel at programme"),
    Derived(
        "p_package_programme", "W", "channel", "heat of one package at programme",
        (Way(one_package, {"heat": HEAT_PROGRAMME, "t_junction": T_PROGRAMME, "share": Input(
            "package_share", "1", "part of the heat in one package")},
            "share heat at t_junction"),),
    ),
    Derived(
        "p_switch_rated", "W", "channel", "heat of one switch at rated power",
        (Way(one_switch,
             {"heat": HEAT_RATED, "t_junction": T_RATED,
              "n_legs": Input("n_legs", "1", "legs of the channel"),
              "parallel": Input("output_stage.parallel", "1", "devices in parallel")},
             "heat at t_junction / (2 n_legs parallel)"),),
    ),
    Derived(
        "t_case_programme", "degC", "channel", "case of the package at programme",
        (Way(case, {"t_junction": T_PROGRAMME,
                    "p_package": Input("p_package_programme", "W", "heat of one package"),
                    "r_th_jc": Input(f"{DEVICE}.r_th_jc", "K/W", "junction to case")},
             "t_junction - p_package r_th_jc"),),
    ),
    Derived(
        "p_slope", "W/K", "channel", "conduction loss for one kelvin more, rated power",
        (Way(conduction_slope,
             {"n_legs": Input("n_legs", "1", "legs of the channel"),
              "parallel": Input("output_stage.parallel", "1", "devices in parallel"),
              "i_rated_peak": Input("i_rated_peak", "A", "peak current at rated power"),
              "r_ds_on": R_COLD, "factor": FACTOR, "t_junction": T_RATED},
             "n_legs i_rated_peak^2 / (2 parallel) dr/dT of r_ds_on, factor at t_junction"),),
    ),
    Derived(
        "enclosure_rise", "K", "product", "wall over a room of 25 degC at programme",
        (Way(enclosure_rise,
             {"solution": PROGRAMME,
              "width": Input("thermal.enclosure.width", "mm", "outer width"),
              "height": Input("thermal.enclosure.height", "mm", "outer height"),
              "depth": Input("thermal.enclosure.depth", "mm", "outer depth"),
              "emissivity": Input("thermal.enclosure.emissivity", "1", "outer surface"),
              "t_room": T_ROOM},
             "wall of width, height, depth, emissivity at t_room, heat of solution"),),
    ),
)

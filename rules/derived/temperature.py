"""The operating temperatures: one heat balance at rated power, one at programme."""

from collections.abc import Callable

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Way,
    derivation,
)
from ..formulas.dissipation import hot_resistance
from ..formulas.heat import (
    Air,
    ChannelHeat,
    Sink,
    Solution,
    solve,
    switch_heat,
)
from ..formulas.maths import smaller
from .ways import as_stated, no

DEVICE = "output_stage.device"
RATED = Input("thermal_rated")
PROGRAMME = Input("thermal_programme")
NUMBER = Input("channel_index")
T_RATED = Input("t_junction_rated")
T_PROGRAMME = Input("t_junction_programme")
HEAT_RATED = Input("heat_rated")
HEAT_TESTED = Input("heat_tested")
HEAT_PROGRAMME = Input("heat_programme")
R_OWN = Input("r_th_own")
T_END = Input("t_end")
R_COLD = Input(f"{DEVICE}.r_ds_on")
FACTOR = Input(f"{DEVICE}.r_ds_on_hot_factor")
T_USUAL = Constant("100 degC", "junction while the heat path is open", COMMON_PRACTICE)
AT_100 = Assumption(None, "neutral", COMMON_PRACTICE)


def balance(
    air: Air,
    sink: Sink,
    heats: tuple[ChannelHeat, ...],
    r_own: tuple[float, ...],
    t_end: tuple[float, ...],
    p_other: float,
    converter_share: float,
) -> Solution:
    """Heat balance of the whole product."""
    return solve(air, sink, heats, r_own, t_end, p_other, converter_share)


def air_of(solution: Solution) -> float:
    """Inside air."""
    return solution.t_air_inside


def heatsink_of(solution: Solution) -> float:
    """Heatsink."""
    return solution.t_reference


def junction_of(solution: Solution, number: float, heat_known: str) -> float:
    """Hottest junction of a channel of which some loss is known: none would leave it cold."""
    return solution.t_junction[int(number)]


def shared_of(solution: Solution) -> float:
    """Heatsink and air over ambient for one watt more."""
    return solution.r_shared


def stated(r_ds_on: float) -> str:
    """An on-resistance is stated, whatever its value."""
    return "yes"


def channel_loss(heat: ChannelHeat, t_junction: float, t_end: float) -> float:
    """All heat of a channel at a junction temperature."""
    return switch_heat(heat, t_junction, t_end)[0] + heat.elsewhere


def ended_resistance(r_cold: float, hot_factor: float, t_junction: float, t_end: float) -> float:
    """On-resistance at the junction, or where the part ends its heat."""
    return hot_resistance(r_cold, hot_factor, smaller(t_junction, t_end))


def _balance_inputs(heat: str, sink: str) -> dict[str, Input]:
    return {
        "air": Input("air_path"),
        "sink": Input(sink),
        "heats": Input(f"all {heat}"),
        "r_own": Input("all r_th_own"),
        "t_end": Input("all t_end"),
        "p_other": Input("supply.p_auxiliary", meaning="other heat in the box"),
        "converter_share": Input("converter_share"),
    }


_PARTS = {
    "t_air_inside": "degC",
    "t_reference": "degC",
    "t_junction": "degC",
    "r_shared": "K/W",
    "heat_in_box": "W",
}


def balance_of(name: str, heat: str, meaning: str, sink: str = "sink_path") -> Derived:
    """The heat balance of the product with one heat of its channels."""
    way = Way(
        balance,
        _balance_inputs(heat, sink),
        "balance of air, sink, heats, r_own, t_end, p_other, converter_share",
    )
    source = derivation("what flows into a node of the thermal network flows out of it")
    return Derived(name, "set", "product", meaning, (way,), sources=(source,), parts=_PARTS)


def _read(
    name: str, unit: str, figure: Callable[[Solution], float], meaning: str, solution: Input
) -> Derived:
    way = Way(figure, {"solution": solution}, "solution")
    return Derived(name, unit, "product", meaning, (way,))


def _junction(name: str, solution: Input, meaning: str) -> Derived:
    known = Input("heat_known")
    way = Way(
        junction_of,
        {"solution": solution, "number": NUMBER, "heat_known": known},
        "solution at number, with heat_known",
    )
    return Derived(name, "degC", "channel", meaning, (way,))


def _loss(name: str, heat: Input, t_junction: Input, meaning: str) -> Derived:
    return Derived(
        name, "W", "channel", meaning,
        (
            Way(channel_loss, {"heat": heat, "t_junction": t_junction, "t_end": T_END},
                "heat at t_junction, at most t_end"),
            Way(channel_loss, {"heat": heat, "t_junction": T_USUAL, "t_end": T_END},
                "heat at t_junction, at most t_end", assumes=AT_100),
        ),
    )  # fmt: skip


DERIVED: tuple[Derived, ...] = (
    balance_of("thermal_rated", "heat_rated", "temperatures, sine at rated power"),
    balance_of("thermal_programme", "heat_tested", "temperatures while the programme plays"),
    Derived(
        "t_air_inside",
        "degC",
        "product",
        "air round the parts while the programme plays",
        (
            Way(air_of, {"solution": PROGRAMME}, "solution", when={"thermal.enclosure": "fitted"}),
            Way(
                as_stated,
                {"value": Input("t_air_open")},
                "value",
                when={"enclosure": ("none", "not given")},
            ),
        ),
        stated_at="thermal.t_air_inside",
        agree=0.0,
    ),
    Derived(
        "enclosure",
        "word",
        "product",
        "whether an enclosure is described",
        (
            Way(
                as_stated,
                {
                    "value": Input(
                        "thermal.enclosure",
                        default=Assumption("not given", "absent", COMMON_PRACTICE),
                    )
                },
                "value",
            ),
        ),
    ),
    Derived(
        "t_heatsink",
        "degC",
        "product",
        "heatsink while the programme plays",
        (Way(heatsink_of, {"solution": PROGRAMME}, "solution", when={"heatsink": "fitted"}),),
        stated_at="thermal.heatsink.t",
        agree=0.0,
    ),
    Derived(
        "t_sink_or_air",
        "degC",
        "product",
        "heatsink while the programme plays; without one the air round the parts",
        (
            Way(as_stated, {"value": Input("t_heatsink")}, "value", when={"heatsink": "fitted"}),
            Way(
                as_stated,
                {"value": Input("t_air_inside")},
                "value",
                when={"heatsink": ("none", "not given")},
            ),
        ),
    ),
    Derived(
        "r_th_to_sink",
        "K/W",
        "channel",
        "ONE package: junction to that heatsink, or to that air",
        (
            Way(
                as_stated,
                {"value": Input(f"{DEVICE}.r_th_jc")},
                "value",
                when={"heatsink": "fitted"},
            ),
            Way(
                as_stated,
                {"value": Input(f"{DEVICE}.r_th_ja")},
                "value",
                when={"heatsink": ("none", "not given")},
            ),
        ),
    ),
    _junction("t_junction_programme", PROGRAMME, "hottest junction while the programme plays"),
    _read("r_th_shared", "K/W", shared_of, "heatsink and inside air for one watt more", RATED),
    Derived(
        "r_ds_on_stated",
        "word",
        "channel",
        "whether an on-resistance is stated; without one it makes no sense to ask how hot it gets",
        (
            Way(stated, {"r_ds_on": R_COLD}, "yes where r_ds_on is stated"),
            Way(no, {}, "no"),
        ),
    ),
    Derived(
        "r_ds_on_hot",
        "mohm",
        "channel",
        "on-resistance of one switch, hot",
        (
            Way(
                ended_resistance,
                {"r_cold": R_COLD, "hot_factor": FACTOR, "t_junction": T_RATED, "t_end": T_END},
                "r_cold (t_junction / 298 K)^n, n through hot_factor at 150 degC; t_junction"
                " at most t_end",
                when={"r_ds_on_stated": "yes"},
            ),
            Way(
                hot_resistance,
                {"r_cold": R_COLD, "hot_factor": FACTOR, "t_junction": T_USUAL},
                "r_cold (t_junction / 298 K)^n, n through hot_factor at 150 degC",
                assumes=AT_100,
            ),
        ),
        sources=(derivation("power law in absolute temperature through two printed points"),),
    ),
    _loss("p_loss_rated", HEAT_RATED, T_RATED, "heat of the channel at rated power"),
    _loss("p_loss_programme", HEAT_PROGRAMME, T_PROGRAMME, "heat of the channel at programme"),
)

"""What several steps of the bring-up share: how the bench stands in for source and room."""

from collections.abc import Mapping
from dataclasses import replace

from ...linter.bringup_step import Amount, Bench, Hazard, Line, Reading, Side
from ...linter.check import COMMON_PRACTICE, Caution, Constant, Input, Words
from ..derived.ways import as_stated
from ..formulas.maths import smaller

DIRECT = ("pack", "source")
RAISED = {"rail_feed": DIRECT}
HELD = {"rail_feed": "converter"}
FULL_AT_ONCE = Caution(
    "WARNING",
    "Power parts that fail can burst and throw hot fragments. The converter brings the rail to its"
    " full voltage at once: keep the current limit low, the board covered and eye protection on.",
)
"""How the rail comes up: with the bench supply, or behind the product's own converter."""
ALWAYS: Mapping[str, Words] = {}
DISCRETE = {"output_stage.devices": "discrete"}
PACK = {"supply.source": "battery"}
NO_PACK = {"supply.source": ("dc-source", "mains-converter")}
DANGEROUS = {"rail_harmless": "no"}
MAINS = {"mains_side": "yes"}


def quantity(path: str, unit: str) -> Amount:
    """A quantity as it is, with its band."""
    return Amount(unit, as_stated, {"value": Input(path)})


def highest(path: str, unit: str, digits: int = 3) -> Amount:
    """A setting by the highest end of a quantity, rounded up."""
    return Amount(unit, as_stated, {"value": Input(path)}, "highest", digits)


def nominal(path: str, unit: str) -> Amount:
    """A setting at the nominal value of a quantity."""
    return Amount(unit, as_stated, {"value": Input(path)}, "nominal")


def word(path: str) -> Amount:
    """A word of the spec."""
    return Amount("word", as_stated, {"value": Input(path)})


def constant(value: Constant, unit: str) -> Amount:
    """A limit that the trade sets, whatever the design."""
    return Amount(unit, as_stated, {"value": value})


def times(value: float, factor: float) -> float:
    """A number of times a value."""
    return value * factor


def power_drawn(
    name: str, title: str, signal: str, bench: tuple[Bench, ...] = ()
) -> tuple[Reading, ...]:
    """Power from the supply: of all rails, or ahead of a converter; ``rated``, ``programme``."""
    paths: tuple[tuple[str, Words], ...] = (
        (f"p_in_{signal}", DIRECT),
        (f"p_source_{signal}", "converter"),
    )
    return tuple(
        Reading(
            name,
            title,
            quantity(path, "W"),
            limit=Amount("W", times, {"value": Input(path), "factor": MORE}, "highest"),
            harms=False,
            applies={"rail_feed": feed},
            bench=bench,
        )
        for path, feed in paths
    )


def warmer(t: float, step: float) -> float:
    """A temperature and some kelvin."""
    return t + step


MORE = Constant("1.2", "of the expected input power: look for the loss", COMMON_PRACTICE)
LITTLE_LESS = Constant("95 %", "below the band of a trip: reading and drift", COMMON_PRACTICE)
LITTLE_MORE = Constant("105 %", "beyond the band of a trip: reading and drift", COMMON_PRACTICE)


def past(path: str, unit: str, side: Side) -> Amount:
    """Where a trip should have acted: one end of its band, and a little past it."""
    factor = LITTLE_LESS if side == "lowest" else LITTLE_MORE
    return Amount(unit, times, {"value": Input(path), "factor": factor}, side)


def past_temperature(path: str) -> Amount:
    """The same of a temperature."""
    little = Constant("5 K", "reading and placing of a sensor", COMMON_PRACTICE)
    return Amount("degC", warmer, {"t": Input(path), "step": little}, "highest")


def set_to(path: str, side: Side) -> Amount:
    """A setting at one end of what occurs in use, tolerances nominal."""
    return Amount("V", as_stated, {"value": Input(path)}, side)


def supply_at(
    name: str, only: Mapping[str, Words] = ALWAYS, side: Side = "top"
) -> tuple[Bench, ...]:
    """A stiff bench supply at a voltage, in place of the source or of each rail."""
    direct: dict[str, Words] = {"rail_feed": DIRECT, **only}
    converted: dict[str, Words] = {"rail_feed": "converter", **only}
    return (
        Bench("supply.v_rail", set_to(name, side), direct),
        Bench("supply.r_source", "1 uohm", direct),
        Bench("supply.v_source", set_to(name, side), converted),
    )


def takes(v_rated: float, v_leg: tuple[float, ...], rails: float, v_other: float) -> float:
    """What one rail may reach: its capacitors, and the legs less the other rail."""
    lowest = v_leg[0]
    for limit in v_leg[1:]:
        lowest = smaller(lowest, limit)
    return smaller(v_rated, lowest - (rails - 1) * v_other)


def lasts(
    v_rated: float,
    v_lasting: tuple[float, ...],
    v_leg: tuple[float, ...],
    rails: float,
    v_rail: float,
) -> float:
    """The same by what the legs are recommended for, unless the rail itself lies above that."""
    found = takes(v_rated, v_lasting, rails, v_rail)
    return found if found >= v_rail else takes(v_rated, v_leg, rails, v_rail)


_RATED, _LEG = Input("supply.bulk.v_rated"), Input("all v_leg_absolute")
_RAILS, _RAIL = Input("rail_count"), Input("v_rail_high")
RAIL_MOST = Amount(
    "V",
    takes,
    {"v_rated": _RATED, "v_leg": _LEG, "rails": _RAILS, "v_other": _RAIL},
    "lowest",
)
"""Where a rail that is raised on purpose stops: what the first part takes that gives way."""
RAIL_LASTING = Amount(
    "V",
    lasts,
    {
        "v_rated": _RATED,
        "v_lasting": Input("all v_leg_lasting"),
        "v_leg": _LEG,
        "rails": _RAILS,
        "v_rail": _RAIL,
    },
    "lowest",
)
"""Where the rail at rest stops: at the recommended supply of the stage, if that comes first."""


FULL = replace(set_to("v_bench", "top"), as_designed=True)
FIRST = replace(set_to("v_bench_first", "top"), as_designed=True)
"""Where the bench supply is set: to the highest voltage at rest, and at the first power-up."""


def in_the_room(t: float, hottest: float, room: float) -> float:
    """A temperature of the hottest ambient, as it reads in the room."""
    return t - (hottest - room)


HOTTEST: dict[str, Input | Constant] = {
    "hottest": Input("environment.ambient:high"),
    "room": Constant("25 degC", "temperature of the room", COMMON_PRACTICE),
}
AIR = Amount("degC", in_the_room, {"t": Input("thermal.t_air_inside"), **HOTTEST})
ROOM = (Bench("environment.ambient", "25 degC"), Bench("thermal.t_air_inside", AIR))
"""Room temperature; inside air that is known is cooler there by as much as the room is."""

AT_FIRST = supply_at("v_bench_first")
AT_FULL = supply_at("v_bench")
PACK_AT_FULL = supply_at("v_bench", PACK)
"""In power tests a bench supply stands in for a pack; any other source is the product's own."""

CHARGED = Hazard("stored-voltage-service", DANGEROUS)
SHOCK = Hazard("shock-class-rails", DANGEROUS)
BY_LICENCE = Hazard("mains-barrier", MAINS)
"""Each only where the voltage or the mains is there."""

LIMIT_MARGIN = Constant("1.25", "of the current limit over the idle current", COMMON_PRACTICE)

BRIDGE = Line(
    "Neither output terminal of a bridge is ground: differential probe, or a floating meter.",
    applies={"output_stage.topology": "full-bridge"},
)

IDLE_MOST = Amount(
    "A",
    times,
    {
        "value": Input("i_idle"),
        "factor": Constant("1.5", "of the idle current: look for the cause", COMMON_PRACTICE),
    },
    "highest",
    2,
)

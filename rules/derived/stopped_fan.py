"""Temperatures with the fan stopped or the heatsinks covered, faults that have to be expected.

With the fan stopped the heatsinks have what they have in still air.  A heatsink temperature
that was measured was measured with the fan, so it does not count here.  What an
over-temperature trip ends is cut off where it acts.
"""

from ...linter.check import COMMON_PRACTICE, Constant, Derived, Input, Way, derivation
from ..formulas.heat import Sink
from .cooling import ALTITUDE, sink_resistance, solved
from .over_temperature import AT_CASE, AT_SINK, T_TRIP
from .temperature import NUMBER, balance_of, heatsink_of, junction_of
from .thermal_use import above
from .ways import as_stated

STOPPED = derivation("a fan wears out, clogs or is blocked; the heatsink is left in still air")
SINK = "sink_path_stopped"
UNDER_COVER = "sink_path_covered"


def covered(r_sink: float, factor: float, place: str) -> Sink:
    """Heatsinks that less air reaches."""
    return solved(factor * r_sink, place)


DERIVED: tuple[Derived, ...] = (
    Derived(
        "r_sink_stopped",
        "K/W",
        "product",
        "all heatsinks together to the air round them, fan stopped",
        (
            Way(
                sink_resistance,
                {
                    "r_th_sa": Input("thermal.heatsink.r_th_sa"),
                    "count": Input("thermal.heatsink.count"),
                    "altitude": ALTITUDE,
                },
                "r_th_sa / (count sqrt(density at altitude over that at sea level))",
            ),
        ),
        sources=(STOPPED,),
    ),
    Derived(
        SINK,
        "set",
        "product",
        "where the packages give their heat, fan stopped",
        (
            Way(
                solved,
                {"r_sink": Input("r_sink_stopped"), "place": Input("thermal.heatsink.place")},
                "r_sink; place",
            ),
        ),
        parts={"r": "K/W", "t_held": "degC"},
    ),
    Derived(
        UNDER_COVER,
        "set",
        "product",
        "where the packages give their heat, heatsinks covered",
        (
            Way(
                covered,
                {
                    "r_sink": Input("r_sink_stopped"),
                    "factor": Constant("2", "covered heatsink over a free one", COMMON_PRACTICE),
                    "place": Input("thermal.heatsink.place"),
                },
                "factor r_sink; place",
            ),
        ),
        parts={"r": "K/W", "t_held": "degC"},
    ),
    balance_of("covered_tested", "heat_tested", "temperatures at programme, covered", UNDER_COVER),
    Derived(
        "t_junction_covered",
        "degC",
        "channel",
        "hottest junction while the programme plays, heatsinks covered",
        (
            Way(
                junction_of,
                {
                    "solution": Input("covered_tested"),
                    "number": NUMBER,
                    "heat_known": Input("heat_known"),
                },
                "solution at number, with heat_known",
            ),
        ),
    ),
    balance_of("stopped_rated", "heat_rated", "temperatures, rated sine, fan stopped", SINK),
    balance_of("stopped_tested", "heat_tested", "temperatures at programme, fan stopped", SINK),
    Derived(
        "t_junction_stopped",
        "degC",
        "channel",
        "hottest junction, sine at rated power, fan stopped",
        (
            Way(
                junction_of,
                {
                    "solution": Input("stopped_rated"),
                    "number": NUMBER,
                    "heat_known": Input("heat_known"),
                },
                "solution at number, with heat_known",
            ),
        ),
    ),
    Derived(
        "t_heatsink_stopped",
        "degC",
        "product",
        "heatsink while the programme plays, fan stopped",
        (Way(heatsink_of, {"solution": Input("stopped_tested")}, "solution"),),
    ),
    Derived(
        "rise_stopped",
        "K",
        "product",
        "heatsink over the ambient at programme, fan stopped",
        (
            Way(
                above,
                {"t": Input("t_heatsink_stopped"), "t_ambient": Input("environment.ambient")},
                "t - t_ambient",
            ),
        ),
    ),
    Derived(
        "t_heatsink_trip",
        "degC",
        "product",
        "where a trip ends the heatsink, which is no hotter than the cases that it cools",
        (
            Way(as_stated, {"value": T_TRIP}, "value", when=AT_SINK),
            Way(as_stated, {"value": T_TRIP}, "value", when=AT_CASE),
        ),
    ),
)

"""Temperatures with the fan of the heatsinks stopped, a fault that has to be expected.

The heatsinks then have what they have in still air.  A heatsink temperature that was measured
was measured with the fan, so it does not count here.  What an over-temperature trip ends is cut
off where it acts.
"""

from ...linter.check import Derived, Input, Way, derivation
from .cooling import ALTITUDE, sink_resistance, solved
from .over_temperature import AT_CASE, AT_SINK, T_TRIP
from .temperature import NUMBER, balance_of, heatsink_of, junction_of
from .thermal_use import above
from .ways import as_stated

STOPPED = derivation("a fan wears out, clogs or is blocked; the heatsink is left in still air")
SINK = "sink_path_stopped"


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

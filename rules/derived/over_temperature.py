"""The over-temperature trip: where it is sensed, and what the junction has when it acts."""

from ...linter.check import Assumption, Derived, Input, Source, Way, derivation
from ..formulas.heat import junction_over
from .temperature import DEVICE, HEAT_RATED, R_OWN, T_END, T_PROGRAMME, T_RATED
from .ways import as_stated

OWN_TRIP = Source(
    "common practice: integrated stages shut down near their junction limit",
    kind="common practice",
)
AT_SINK = {"protection.over_temperature.at": "heatsink"}
AT_JUNCTION = {"protection.over_temperature.at": "junction", "output_stage.devices": "integrated"}
AT_CASE = {"protection.over_temperature.at": "case"}
AT_BOARD = {"protection.over_temperature.at": "board"}
LASTING_SINE = {"heat_basis": "full-sine"}
COOLER_BOARD = derivation("heat flows from the case to the board: no board is hotter than the case")
COOLER_SENSOR = derivation("heat flows from the junction to the sensor")
T_TRIP = Input("protection.over_temperature.t_trip")
R_PACKAGE = Input("r_th_package")
R_TOP = Input("r_th_to_top")
R_BOARD = Input("r_th_to_board")


def over_sensor(t_trip: float, below_junction: float) -> float:
    """Junction above a sensor of which the distance was measured."""
    return t_trip + below_junction


def by_trip(t_junction_trip: float) -> str:
    """A trip acts at some junction temperature, whatever that is."""
    return "trip"


def by_nothing() -> str:
    """Nothing switches off."""
    return "nothing"


def trip_none() -> str:
    """No over-temperature trip."""
    return "none"


def trip_inside() -> str:
    """The trip that integrated stages bring along."""
    return "junction"


DERIVED: tuple[Derived, ...] = (
    Derived(
        "t_junction_trip",
        "degC",
        "channel",
        "junction at rated power when the trip acts",
        (
            Way(
                over_sensor,
                {
                    "t_trip": T_TRIP,
                    "below_junction": Input("protection.over_temperature.below_junction"),
                },
                "t_trip + below_junction",
                when={"protection.over_temperature.at": ("case", "board")},
            ),
            Way(
                junction_over,
                {"t_reference": T_TRIP, "heat": HEAT_RATED, "r_own": R_OWN, "t_end": T_END},
                "t_reference + r_own heat at t_junction_trip, at most t_end",
                when=AT_SINK | {"heatsink": "fitted"},
            ),
            Way(
                junction_over,
                {"t_reference": T_TRIP, "heat": HEAT_RATED, "r_own": R_BOARD, "t_end": T_END},
                "t_reference + r_own heat at t_junction_trip, at most t_end",
                when=AT_BOARD,
            ),
            Way(
                junction_over,
                {"t_reference": T_TRIP, "heat": HEAT_RATED, "r_own": R_PACKAGE, "t_end": T_END},
                "t_reference + r_own heat at t_junction_trip, at most t_end",
                when=AT_CASE,
            ),
            Way(
                junction_over,
                {"t_reference": T_TRIP, "heat": HEAT_RATED, "r_own": R_TOP, "t_end": T_END},
                "t_reference + r_own heat at t_junction_trip, at most t_end",
                when=AT_CASE,
            ),
            Way(
                junction_over,
                {"t_reference": T_TRIP, "heat": HEAT_RATED, "r_own": R_PACKAGE, "t_end": T_END},
                "t_reference + r_own heat at t_junction_trip, at most t_end",
                when=AT_BOARD,
                assumes=Assumption(None, "floor", COOLER_BOARD),
            ),
            Way(
                as_stated,
                {"value": T_TRIP},
                "value",
                when=AT_BOARD,
                assumes=Assumption(None, "floor", COOLER_SENSOR),
            ),
            Way(as_stated, {"value": T_TRIP}, "value", when=AT_JUNCTION),
            Way(
                as_stated,
                {"value": Input(f"{DEVICE}.t_j_max")},
                "value",
                when={"output_stage.devices": "integrated", "over_temperature": "not given"},
                assumes=Assumption(None, "neutral", OWN_TRIP),
            ),
        ),
    ),
    Derived(
        "trip_place",
        "word",
        "channel",
        "where the over-temperature trip is sensed; none where there is no trip",
        (
            Way(trip_none, {}, "none", when={"over_temperature": "none"}),
            Way(
                as_stated,
                {"value": Input("protection.over_temperature.at")},
                "value",
            ),
            Way(
                trip_inside,
                {},
                "junction: integrated stages bring a trip along",
                when={"output_stage.devices": "integrated", "over_temperature": "not given"},
                assumes=Assumption(None, "neutral", OWN_TRIP),
            ),
        ),
    ),
    Derived(
        "heat_ended",
        "word",
        "channel",
        "what ends the heat of the stage: a trip with a sensor that can be there, or nothing",
        (
            Way(
                by_trip,
                {"t_junction_trip": Input("t_junction_trip")},
                "trip where there is a t_junction_trip",
            ),
            Way(by_nothing, {}, "nothing"),
        ),
    ),
    Derived(
        "t_trip_own",
        "degC",
        "channel",
        "junction at which an integrated stage switches itself off",
        (
            Way(as_stated, {"value": T_TRIP}, "value", when=AT_JUNCTION),
            Way(
                as_stated,
                {"value": Input(f"{DEVICE}.t_j_max")},
                "value",
                when={"output_stage.devices": "integrated", "over_temperature": "not given"},
                assumes=Assumption(None, "neutral", OWN_TRIP),
            ),
        ),
    ),
    Derived(
        "t_sensed",
        "degC",
        "channel",
        "where the trip is sensed, in stated use",
        (
            Way(
                as_stated,
                {"value": Input("t_heatsink_rated")},
                "value",
                when=AT_SINK | LASTING_SINE,
            ),
            Way(as_stated, {"value": Input("t_heatsink")}, "value", when=AT_SINK),
            Way(
                as_stated,
                {"value": Input("t_case_programme")},
                "value",
                when=AT_CASE | {"heat_basis": ("one-eighth", "one-third")},
            ),
            Way(as_stated, {"value": T_RATED}, "value", when=AT_JUNCTION | LASTING_SINE),
            Way(as_stated, {"value": T_PROGRAMME}, "value", when=AT_JUNCTION),
        ),
    ),
)

"""What place, band and time make of a product: bounds on dirt, band, trip and storage."""

from collections.abc import Callable, Mapping

from ...linter.check import (
    COMMON_PRACTICE,
    Arguments,
    Constant,
    Derived,
    Input,
    Way,
    from_memory,
)
from ..formulas.heat import ChannelHeat, junction_over
from ..formulas.safety import ip_digits
from .over_temperature import R_PACKAGE, T_TRIP
from .temperature import HEAT_RATED, T_END
from .ways import as_stated

DIRT = from_memory("IEC 60664-1, pollution degrees", "1: none, or dry and not conductive")
BOARD = from_memory("UL 796", "130 degC, highest operating temperature of common FR-4 boards")
HALF_OF_STEP = Constant("0.5", "least part of the computed step", COMMON_PRACTICE)
DUST_TIGHT = 6


def degree_by_code(ip_code: str) -> float:
    """Only a box into which no dust comes at all can keep its board clean."""
    return 1.0 if ip_digits(ip_code)[0] >= DUST_TIGHT else 2.0


def octave_below(band_high: float, octave: float) -> float:
    """An octave below the upper end of a band."""
    return band_high / octave


def own_step(share: float, t_trip: float, heat: ChannelHeat, r_own: float, t_end: float) -> float:
    """A share of what the junction lies above its own case at the trip."""
    return share * (junction_over(t_trip, heat, r_own, t_end) - t_trip)


def _degree(
    name: str,
    meaning: str,
    figure: Callable[..., float],
    inputs: Arguments,
    when: Mapping[str, str | tuple[str, ...]],
) -> Derived:
    return Derived(
        name,
        "1",
        "product",
        meaning,
        (Way(figure, inputs, next(iter(inputs)), when=when),),
        bounds_from_below=("environment.pollution_degree",),
        bounds_by="practice",
        sources=(DIRT,),
    )


_SECOND: Arguments = {"value": Constant("2", "degree where dust or damp gets in", DIRT)}


def _kept(chemistry: tuple[str, ...], time: str) -> Way:
    kept = Constant(time, f"the thriftiest cells empty themselves: {chemistry[0]}", COMMON_PRACTICE)
    return Way(as_stated, {"value": kept}, "value", when={"battery.chemistry": chemistry})


DERIVED: tuple[Derived, ...] = (
    _degree(
        "degree_outside",
        "what damp makes of a board outdoors or in a vehicle",
        as_stated,
        _SECOND,
        {"environment.place": ("outdoor", "vehicle")},
    ),
    _degree(
        "degree_behind_vents",
        "what dust makes of a board behind air holes",
        as_stated,
        _SECOND,
        {"thermal.enclosure.openings": "vented"},
    ),
    _degree(
        "degree_by_code",
        "what dust makes of a board where the code lets it in",
        degree_by_code,
        {"ip_code": Input("environment.ip_code")},
        {},
    ),
    Derived(
        "band_low_most",
        "Hz",
        "channel",
        "an octave below its upper end: a narrower band is a tone and no band",
        (
            Way(
                octave_below,
                {
                    "band_high": Input("band:high"),
                    "octave": Constant("2", "narrowest band", COMMON_PRACTICE),
                },
                "band_high / octave",
            ),
        ),
        bounds_from_above=("band:low",),
        bounds_by="practice",
        sources=(COMMON_PRACTICE,),
    ),
    Derived(
        "trip_below_board",
        "degC",
        "product",
        "what the board and all that sits on it withstand",
        (
            Way(
                as_stated,
                {"value": Constant("130 degC", "board and parts round the sensor", BOARD)},
                "value",
                when={"protection.over_temperature.at": ("board", "heatsink")},
            ),
        ),
        bounds_from_above=("protection.over_temperature.t_trip",),
        bounds_by="practice",
        sources=(BOARD,),
    ),
    Derived(
        "below_junction_least",
        "K",
        "channel",
        "half of what the junction lies above its own case at the trip",
        (
            Way(
                own_step,
                {
                    "share": HALF_OF_STEP,
                    "t_trip": T_TRIP,
                    "heat": HEAT_RATED,
                    "r_own": R_PACKAGE,
                    "t_end": T_END,
                },
                "share (junction over t_trip, by r_own heat, at most t_end, less t_trip)",
                when={"protection.over_temperature.at": ("case", "board")},
            ),
        ),
        bounds_from_below=("protection.over_temperature.below_junction",),
        sources=(COMMON_PRACTICE,),
    ),
    Derived(
        "shelf_time_of_cells",
        "s",
        "product",
        "the time in which the thriftiest cells empty themselves",
        (
            _kept(("li-ion", "lfp"), "73000 h"),
            _kept(("lead-acid-agm", "lead-acid-flooded"), "37000 h"),
            _kept(("nimh",), "90000 h"),
        ),
        bounds_from_above=("claims.shelf_time",),
        bounds_by="practice",
        bounds_always=True,
        sources=(COMMON_PRACTICE,),
    ),
)

"""What a reading shows by itself, what follows from it, and what no board can give."""

from collections.abc import Callable

from ..linter.check import AtLeast, AtMost, Input, Source, Way, derivation, from_memory
from ..linter.measurable import Shown
from .derived.rated import THD_MOST
from .formulas.modulation import clipped_power_ratio, share_of_clipped_power

ONE_PERCENT = 0.01
METER = Source("2 % of a reading: common practice, no source", kind="common practice")


def bare_rail(v_ideal: float, z_load: float) -> float:
    """Sine at the onset of clipping behind no resistance at all."""
    return v_ideal**2 / (2 * z_load)


def bare_rail_at_one_percent(v_ideal: float, z_load: float) -> float:
    """The same, clipped to 1 %."""
    return bare_rail(v_ideal, z_load) * clipped_power_ratio(ONE_PERCENT)


def onset(read: float) -> float:
    """Power at the onset of clipping, from that at 1 %."""
    return read / clipped_power_ratio(ONE_PERCENT)


def warmer(read: float, t: float, t_junction: float) -> float:
    """A junction that is warmer by as much as what it heats."""
    return t_junction + read - t


def share_of_onset(read: float, rated_power: float, rated_thd: float, thd_most: float) -> float:
    """Rated power over what was read at the onset, clipped to the distortion of the rating."""
    return share_of_clipped_power(rated_power / read, rated_thd, thd_most)


def share_of_read(read: float, rated_power: float, rated_thd: float, thd_most: float) -> float:
    """Rated power over what was read at 1 %, both at the distortion of the rating."""
    return share_of_onset(onset(read), rated_power, rated_thd, thd_most)


def warms(junction: str, part: str) -> dict[str, Way]:
    """What a part that is warmer than computed makes of a junction."""
    inputs = {"t": Input(part), "t_junction": Input(junction)}
    return {junction: Way(warmer, inputs, "t_junction + read - t")}


def powers(figure: Callable[..., float], formula: str) -> dict[str, Way]:
    """The power that the stage gives, by a reading of it."""
    return {name: Way(figure, {}, formula) for name in ("p_out_max", "p_out_usual")}


_RAIL = {"v_ideal": Input("v_ideal"), "z_load": Input("z_load")}
BARE = Way(bare_rail, _RAIL, "v_ideal^2 / (2 z_load)")
BARE_CLIPPED = Way(bare_rail_at_one_percent, _RAIL, "the same clipped to 1 %")
RATED_POWER = {
    "rated_power": Input("rated_power", "W"),
    "rated_thd": Input("rated_thd", "%"),
    "thd_most": Input("rated_thd", "%", default=THD_MOST.default),
}


def kept(figure: Callable[..., float]) -> Shown:
    """The rated power against one that was read: no error of a model stands between."""
    reached = derivation("rated power is reached or it is not")
    return Shown(
        figure,
        RATED_POWER,
        "Rated {rated_power} is {figure:% of} what the board gives at {thd_most} distortion",
        AtMost(major="1", minor="1", basis={"major": reached, "minor": METER}),
        check="output-power",
        instead=True,
    )


def above_trip(read: float, t_trip: float) -> float:
    """How far the heatsink stays below the trip that is sensed there."""
    return t_trip - read


def below_limit(read: float, t_j_max: tuple[float, ...]) -> float:
    """How far a trip inside the parts lies below the limit of the tenderest."""
    return min(t_j_max) - read


def as_read(read: float) -> float:
    """The reading itself."""
    return read


INSULATION = from_memory(
    "IEC 60085, thermal classes of insulation", "130 degC class B, 155 class F"
)
TOO_HOT_A_COIL = Shown(
    as_read,
    {},
    "Coil at {figure}; common insulation ends at 130 °C (class B) or 155 °C (class F)",
    AtMost(major="155 degC", minor="130 degC", basis={"major": INSULATION, "minor": INSULATION}),
    title="Inductor temperature vs. its insulation",
    unit="degC",
)
TOO_LATE_A_TRIP = Shown(
    below_limit,
    {"t_j_max": Input("all output_stage.device.t_j_max", "degC")},
    "The part's own trip acts {figure:+below|above} its {t_j_max} limit",
    AtLeast(
        major="-25 K",
        minor="-25 K",
        basis={
            "major": Source(
                "makers set it up to 25 K above the absolute maximum: common practice, no source",
                kind="common practice",
            ),
            "minor": METER,
        },
    ),
    when={"protection.over_temperature.at": "junction"},
    check="over-temperature-trip",
)
PAST_THE_TRIP = Shown(
    above_trip,
    {"t_trip": Input("protection.over_temperature.t_trip:high", "degC")},
    "The heatsink that was read is {figure:+below|above} the {t_trip} at which it has to trip",
    AtLeast(
        major="0 K",
        minor="0 K",
        basis={
            "major": derivation("a heatsink hotter than its trip: it does not act"),
            "minor": METER,
        },
    ),
    when={"protection.over_temperature.at": "heatsink"},
    check="over-temperature-trip-in-use",
)

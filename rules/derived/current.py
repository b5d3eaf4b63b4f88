"""Currents of the output stage: crest of the load, crest of a leg, trip when hot."""

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
from ..formulas.constants import NO_LIMITER, PRINTED_AT
from ..formulas.losses import hot_ratio
from ..formulas.maths import larger, smaller
from .stage import CIRCUIT, DEVICE
from .ways import as_stated, no

UNKNOWN_RIPPLE = Assumption(
    "0 A", "floor", derivation("the current without its ripple is a lower bound")
)


def clipped_peak(m_max: float, v_ideal: float, v_peak: float, z_load_min: float) -> float:
    """Largest load current: what modulator and limiter let through, into the lowest load."""
    return smaller(m_max * v_ideal, v_peak) / z_load_min


def crest_with_ripple(
    i_peak: float, v_ideal: float, z_load_min: float, ripple_idle: float, modulator: str
) -> float:
    """Largest inductor and switch current: load current m a and half the ripple on it.

    A clocked carrier's ripple falls as 1 - m^2, so the sum is largest at the top of the
    modulation or, where the ripple exceeds the load current, inside.  A self-oscillating
    loop keeps its ripple at every depth.
    """
    full, half = v_ideal / z_load_min, ripple_idle / 2
    if modulator == "self-oscillating":
        return i_peak + half
    m = smaller(i_peak / full, full / larger(2 * half, full * 1e-6))
    return m * full + half * (1 - m * m)


def trip_hot(i_trip: float, t: float, hot_factor: float, t_cold: float, t_span: float) -> float:
    """A trip that senses the switch's own resistance falls as that rises."""
    return i_trip / hot_ratio(t, hot_factor, t_cold, t_span)


def fitted(i_trip: float) -> str:
    """A stated trip is there, whatever its value."""
    return "fitted"


def yes_stated(i_trip: float) -> str:
    """A trip is stated, whatever its value."""
    return "yes"


def inside() -> str:
    """The part senses its own current."""
    return "internal"


def trip_as_printed(i_trip: float) -> float:
    """A trip that does not depend on the switch."""
    return i_trip


T_SPAN = Constant("125 K", "from 25 degC to 150 degC, where the hot factor is printed", CIRCUIT)
I_TRIP = Input("output_stage.over_current.i_trip")
HOT_FACTOR = Input(f"{DEVICE}.r_ds_on_hot_factor")


DERIVED: tuple[Derived, ...] = (
    Derived(
        "i_peak",
        "A",
        "channel",
        "largest load current, clipped into the lowest load",
        (
            Way(
                clipped_peak,
                {
                    "m_max": Input("m_max"),
                    "v_ideal": Input("v_ideal"),
                    "v_peak": Input("limiter.v_peak", default=NO_LIMITER),
                    "z_load_min": Input("z_load_min"),
                },
                "smaller of m_max v_ideal and v_peak, over z_load_min",
            ),
        ),
        sources=(CIRCUIT,),
    ),
    Derived(
        "i_leg_peak",
        "A",
        "channel",
        "largest current of a leg, ripple included",
        (
            Way(
                crest_with_ripple,
                {
                    "i_peak": Input("i_peak"),
                    "v_ideal": Input("v_ideal"),
                    "z_load_min": Input("z_load_min"),
                    "ripple_idle": Input("ripple_idle", default=UNKNOWN_RIPPLE),
                    "modulator": Input("modulator.type"),
                },
                "largest of m v_ideal / z_load_min + ripple_idle (1 - m^2) / 2 up to "
                "m = i_peak z_load_min / v_ideal; self-oscillating modulator: "
                "i_peak + ripple_idle / 2",
            ),
        ),
        sources=(CIRCUIT,),
    ),
    Derived(
        "trip_sensing",
        "word",
        "channel",
        "what senses the current of the over-current trip",
        (
            Way(
                as_stated,
                {"value": Input("output_stage.over_current.sensing")},
                "value",
            ),
            Way(
                inside,
                {},
                "internal",
                when={"output_stage.devices": "integrated"},
                assumes=Assumption(
                    None, "absent", derivation("a part with a trip senses inside; no other sensor")
                ),
            ),
        ),
    ),
    Derived(
        "over_current",
        "word",
        "channel",
        "over-current protection: none, or fitted where its trip is stated",
        (
            Way(
                as_stated,
                {"value": Input("output_stage.over_current")},
                "value",
                when={"output_stage.over_current": "none"},
            ),
            Way(fitted, {"i_trip": I_TRIP}, "fitted where i_trip is stated"),
        ),
    ),
    Derived(
        "trip_stated",
        "word",
        "channel",
        "whether the spec states an over-current trip",
        (Way(yes_stated, {"i_trip": I_TRIP}, "yes where i_trip is stated"), Way(no, {}, "no")),
    ),
    Derived(
        "i_trip_hot",
        "A",
        "channel",
        "lowest load-current peak that trips",
        (
            Way(
                trip_hot,
                {
                    "i_trip": I_TRIP,
                    "t": Input("t_junction_rated"),
                    "hot_factor": HOT_FACTOR,
                    "t_cold": PRINTED_AT,
                    "t_span": T_SPAN,
                },
                "i_trip / (1 + (hot_factor - 1) (t - t_cold) / t_span)",
                when={"trip_sensing": "r-ds-on"},
            ),
            Way(
                trip_hot,
                {
                    "i_trip": I_TRIP,
                    "t": Constant(
                        "373.15 K", "usual junction temperature at work", COMMON_PRACTICE
                    ),
                    "hot_factor": HOT_FACTOR,
                    "t_cold": PRINTED_AT,
                    "t_span": T_SPAN,
                },
                "i_trip / (1 + (hot_factor - 1) (t - t_cold) / t_span)",
                when={"trip_sensing": "r-ds-on"},
                assumes=Assumption(None, "neutral", COMMON_PRACTICE),
            ),
            Way(
                trip_as_printed,
                {"i_trip": I_TRIP},
                "i_trip",
                when={"trip_sensing": ("shunt", "internal")},
            ),
            Way(
                trip_as_printed,
                {"i_trip": I_TRIP},
                "i_trip",
                assumes=Assumption(
                    None,
                    "favourable",
                    derivation("a shunt does not change with the temperature of the switch"),
                ),
            ),
        ),
        sources=(
            Source(
                "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
                "p. 24: current sensed in the switches; trips tested at 25 degC",
            ),
        ),
    ),
)

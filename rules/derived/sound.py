"""Sound level of a channel and of the product."""

from math import inf

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Way,
    derivation,
)
from ..formulas.acoustics import (
    A_WEIGHTING,
    ONE_HERTZ,
    R_SENSITIVITY,
    V_SENSITIVITY,
    a_weighting_at_most,
    network_level,
    sensitivity_at_voltage,
    sum_of_levels,
)
from ..formulas.load import sine_voltage
from .level import RATED_SINE, RATED_STANDS_IN, rated_sine
from .load import NO_LOUDSPEAKER, PARALLEL, SERIES
from .ways import as_stated

SENSITIVITY = Input("loudspeaker.sensitivity")


def one_of_string(v_load_rms: float, series: float) -> float:
    """Voltage [V] across one loudspeaker of a string."""
    return v_load_rms / series


def most_of(v_rail_sine: float, share: float) -> float:
    """What is left of the rails behind switches, inductors and dead time."""
    return share * v_rail_sine


def least_sensitive(least: float) -> float:
    """What hardly any loudspeaker falls below."""
    return least


def level_at_rating(
    sensitivity: float, power: float, z: float, series: float, parallel: float, v_reference: float
) -> float:
    """Level [dB] at 1 m with each loudspeaker of the network at ``power``."""
    v_load = sine_voltage(power, z) * series
    return network_level(sensitivity, v_load, parallel, v_reference)


def level_at_most(level: float, f_top: float, one_hertz: float) -> float:
    """A-weighted level [dB(A)] of a channel whose band ends at ``f_top`` [Hz]."""
    return level + a_weighting_at_most(f_top, one_hertz)


NO_TOP = Assumption(inf, "adverse", derivation("bound: 1 kHz stands for A-weighting"))
USABLE = derivation("a stage that loses more than a fifth of its voltage is below 80 % efficient")
RAILS_AT_MOST = Assumption(
    None, "adverse", derivation("clip onset is open; a sine cannot go beyond the rails")
)


NO_RULE = Assumption("none", "absent", derivation("no rule for the ear is claimed"))
NO_NOTICE = Assumption("no", "absent", derivation("a notice that is not mentioned is not there"))


def rule_kept(rule: str, notice: str) -> str:
    """Whether a rule for the ear has to be kept: one is stated, or nobody is told of it."""
    return "no" if rule == "none" and notice == "yes" else "yes"


DERIVED: tuple[Derived, ...] = (
    Derived(
        name="v_clip_rms",
        unit="V",
        each="channel",
        meaning="sine at clip onset across the load, whatever the limiter allows",
        ways=(
            Way(
                sine_voltage,
                {"power": Input("p_out_max"), "z": Input("z_load")},
                "(power z)^0.5",
            ),
            Way(
                as_stated,
                {"value": Input("v_rail_sine")},
                "value",
                assumes=RAILS_AT_MOST,
            ),
            Way(
                rated_sine,
                RATED_SINE,
                "smaller of (rated_power/k z_load)^0.5 and v_rail_sine,"
                " k = 1 + 0.048 (rated_thd/1 %)^0.778",
                assumes=RATED_STANDS_IN,
            ),
            Way(
                most_of,
                {
                    "v_rail_sine": Input("v_rail_sine"),
                    "share": Constant("80 %", "of its voltage any working stage keeps", USABLE),
                },
                "share v_rail_sine",
                assumes=Assumption(None, "floor", USABLE),
            ),
        ),
    ),
    Derived(
        name="v_driver_rms",
        unit="V",
        each="channel",
        meaning="largest sine across one loudspeaker",
        ways=(
            Way(
                one_of_string,
                {"v_load_rms": Input("v_load_rms"), "series": SERIES},
                "v_load_rms / series",
            ),
        ),
    ),
    Derived(
        name="sensitivity_2v83",
        unit="dB",
        each="channel",
        meaning="level of one loudspeaker at 1 m for 2.83 V",
        ways=(
            Way(
                as_stated,
                {"value": SENSITIVITY},
                "value",
                when={"loudspeaker.sensitivity_basis": "2.83-volt"},
            ),
            Way(
                sensitivity_at_voltage,
                {"per_watt": SENSITIVITY, "z": Input("z_driver"), "r_reference": R_SENSITIVITY},
                "per_watt + 10 log10(r_reference / z)",
                when={"loudspeaker.sensitivity_basis": "1-watt"},
            ),
            Way(
                least_sensitive,
                {
                    "least": Constant(
                        "80 dB", "sensitivity of the least sensitive loudspeakers", COMMON_PRACTICE
                    )
                },
                "least",
                when=NO_LOUDSPEAKER,
                assumes=Assumption(None, "floor", COMMON_PRACTICE),
            ),
        ),
    ),
    Derived(
        name="level_channel",
        unit="dB",
        each="channel",
        meaning="level at 1 m of the channel with the largest sine",
        ways=(
            Way(
                network_level,
                {
                    "sensitivity": Input("sensitivity_2v83"),
                    "v_rms": Input("v_load_rms"),
                    "parallel": PARALLEL,
                    "v_reference": V_SENSITIVITY,
                },
                "sensitivity + 20 log10(v_rms parallel / v_reference)",
            ),
        ),
    ),
    Derived(
        name="level_max",
        unit="dB",
        each="product",
        meaning="level at 1 m of all channels with their largest sine, powers added",
        ways=(
            Way(
                sum_of_levels,
                {"levels": Input("all level_channel")},
                "10 log10(sum of 10^(levels / 10))",
            ),
        ),
    ),
    Derived(
        name="level_channel_a",
        unit="dB",
        each="channel",
        meaning="the most that the level of the channel can be with A-weighting",
        ways=(
            Way(
                level_at_most,
                {
                    "level": Input("level_channel"),
                    "f_top": Input("band:high", meaning="top of the stated band", default=NO_TOP),
                    "one_hertz": ONE_HERTZ,
                },
                "level + A-weighting at the smaller of f_top and 1 kHz, f in units of one_hertz",
            ),
        ),
        sources=(A_WEIGHTING,),
    ),
    Derived(
        name="level_a",
        unit="dB",
        each="product",
        meaning="A-weighted level at 1 m of all channels with their largest sine, powers added",
        ways=(
            Way(
                sum_of_levels,
                {"levels": Input("all level_channel_a")},
                "10 log10(sum of 10^(levels / 10))",
            ),
        ),
    ),
    Derived(
        name="level_rating",
        unit="dB",
        each="channel",
        meaning="level at 1 m of the channel with its loudspeakers at their noise rating",
        ways=(
            Way(
                level_at_rating,
                {
                    "sensitivity": Input("sensitivity_2v83"),
                    "power": Input("p_driver_noise"),
                    "z": Input("z_driver"),
                    "series": SERIES,
                    "parallel": PARALLEL,
                    "v_reference": V_SENSITIVITY,
                },
                "sensitivity + 20 log10((power z)^0.5 series parallel / v_reference)",
            ),
        ),
    ),
    Derived(
        name="hearing_rule_kept",
        unit="word",
        each="product",
        meaning="whether a rule for the ear has to be kept: it is stated, or no notice is given",
        ways=(
            Way(
                rule_kept,
                {
                    "rule": Input("safety.exposure_rule", default=NO_RULE),
                    "notice": Input("safety.hearing_notice", default=NO_NOTICE),
                },
                "no where notice is yes and no rule is stated",
            ),
        ),
    ),
)

"""Modulation: levels at the load, lowest carrier, clocks."""

from dataclasses import replace

from ...linter.check import (
    Assumption,
    Derived,
    Input,
    Source,
    Way,
    derivation,
)
from ..formulas.modulation import effective_carrier, oscillation_frequency
from .ways import as_stated, no, yes

CONVERTER = Input("supply.converter_frequency")
FAR_AWAY = Assumption(
    float("inf"), "floor", derivation("bound: a converter far from every carrier")
)
SELF_OSCILLATING = {"modulator.type": "self-oscillating"}
CLOCKED = {"modulator.type": ("natural-sampling", "uniform-sampling")}


def two_level() -> str:
    """A half-bridge has two levels whatever the modulator does."""
    return "two-level"


def endless() -> float:
    """A clock that nothing comes near to."""
    return float("inf")


def several(channel_count: float, converter: str) -> str:
    """More than one thing that runs on a clock."""
    return "no" if channel_count == 1 and converter == "none" else "yes"


LEVELS = Derived(
    "levels",
    "word",
    "channel",
    "levels of the voltage between the inputs of the filter",
    ways=(
        Way(two_level, {}, "two-level", when={"output_stage.topology": "half-bridge"}),
        Way(
            as_stated,
            {"value": Input("modulator.levels")},
            "value",
            when={"output_stage.topology": "full-bridge"},
        ),
    ),
)

LEVELS_AT_LEAST = Derived(
    "levels_at_least",
    "word",
    "channel",
    "levels at the load, where silence about a full bridge is taken for the better kind",
    ways=(
        Way(two_level, {}, "two-level", when={"output_stage.topology": "half-bridge"}),
        Way(
            as_stated,
            {
                "value": Input(
                    "modulator.levels",
                    default=Assumption(
                        "three-level",
                        "floor",
                        derivation("bound: no carrier between the terminals at idle"),
                    ),
                )
            },
            "value",
            when={"output_stage.topology": "full-bridge"},
        ),
    ),
)

F_CARRIER_LOW = Derived(
    "f_carrier_low",
    "Hz",
    "channel",
    "lowest switching frequency of one leg, at rated power",
    ways=(
        Way(
            oscillation_frequency,
            {"carrier": Input("modulator.carrier"), "depth": Input("depth_rated")},
            "carrier (1 - depth^2)",
            when=SELF_OSCILLATING,
        ),
        Way(
            as_stated,
            {"value": Input("modulator.carrier")},
            "value",
            when=CLOCKED,
        ),
    ),
    sources=(derivation("hysteretic loop: slopes (1 - M) and (1 + M) across a fixed band"),),
)

F_CARRIER_EFFECTIVE = Derived(
    "f_carrier_effective",
    "Hz",
    "channel",
    "lowest frequency of the carrier between the inputs of the filter",
    ways=(
        Way(
            effective_carrier,
            {"carrier": Input("modulator.carrier"), "levels": Input("levels")},
            "carrier, twice that if levels is three-level",
        ),
    ),
    sources=(derivation("the pulses of the two legs alternate in a three-level bridge"),),
)

AM_RECEPTION = Derived(
    "am_reception",
    "word",
    "product",
    "whether the product itself sits beside an AM receiver",
    ways=(
        Way(yes, {}, "yes", when={"environment.am_receiver": "in-product"}),
        Way(no, {}, "no, as stated", when={"environment.am_receiver": "none"}),
        Way(yes, {}, "yes", when={"environment.place": "vehicle"}),
        Way(no, {}, "no"),
    ),
    sources=(
        Source(
            "TAS6421-Q1 data sheet; TPA6304-Q1 data sheet",
            "first page: 2.1 MHz for vehicles, no interference with AM",
        ),
    ),
)

COMMON_MODE_DAMPED = Derived(
    "common_mode_damped",
    "word",
    "channel",
    "whether a damper from each terminal to ground is fitted",
    ways=(
        Way(
            yes,
            {},
            "yes",
            when={
                "filter.damper": "fitted",
                "filter.damper.connection": "each-terminal",
            },
        ),
        Way(no, {}, "no"),
    ),
)

SEVERAL_CLOCKS = Derived(
    "several_clocks",
    "word",
    "channel",
    "whether several channels, or channels and a converter, could run on clocks of their own",
    ways=(
        Way(
            several,
            {
                "channel_count": Input("channel_count"),
                "converter": Input("supply.converter"),
            },
            "yes if channel_count is above 1 or there is a converter",
        ),
    ),
)

F_CONVERTER = Derived(
    "f_converter",
    "Hz",
    "product",
    "switching frequency of the converter, without end where there is none",
    ways=(
        Way(as_stated, {"value": CONVERTER}, "value"),
        Way(endless, {}, "no converter, no beat with it", when={"supply.converter": "none"}),
        Way(as_stated, {"value": replace(CONVERTER, default=FAR_AWAY)}, "value"),
    ),
)

DERIVED = (
    LEVELS,
    LEVELS_AT_LEAST,
    F_CARRIER_LOW,
    F_CARRIER_EFFECTIVE,
    AM_RECEPTION,
    COMMON_MODE_DAMPED,
    SEVERAL_CLOCKS,
    F_CONVERTER,
)

"""Gain against the level of the source: can full power be reached.

With its controls at maximum the amplifier must turn the source's highest level into its
rated output voltage; otherwise the rated power is on paper only.  Half a decibel less, nine
tenths of the power, nobody hears.  Levels of the trade: consumer line -10 dBV (0.32 V),
professional line +4 dBu (1.23 V).

What to do first: more gain, or a source of higher level.  Too much gain is another check.
"""

from ...linter.check import COMMON_PRACTICE, AtLeast, Case, Check, Input, Lever, Source, derivation
from ..formulas.acoustics import decibel
from ..formulas.load import sine_voltage

LEVELS = Source(
    "G. Martin, tonmeister.ca textbook, 2006",
    "professional and consumer levels: +4 dBu is 1.228 V, -10 dBV is 0.316 V; no page given",
)


def figure(source_level: float, gain: float, rated_power: float, z_load: float) -> float:
    return decibel(source_level * gain / sine_voltage(rated_power, z_load))


CHECK = Check(
    title="Source level vs. level for rated power",
    figure=figure,
    unit="dB",
    each="channel",
    stake="performance",
    formula="20 log10(source_level gain / (rated_power z_load)^0.5)",
    sentence="{source_level} from the source at gain {gain} is {figure:+above|below} the level"
    " for rated power ({rated_power} into {z_load}).",
    inputs={
        "source_level": Input("signal.source_level"),
        "gain": Input("gain"),
        "rated_power": Input("rated_power"),
        "z_load": Input("z_load"),
    },
    limits=AtLeast(
        major="-0.5 dB",
        minor="0 dB",
        basis={
            "major": COMMON_PRACTICE,
            "minor": derivation("below it, less than rated power"),
        },
    ),
    levers=(Lever("gain", "1 V/V"),),
    sources=(LEVELS, derivation("gain times source level is the output voltage")),
    cases=(
        Case(
            {
                "source_level": "0.25 V",
                "gain": "56.57 V/V",
                "rated_power": "100 W",
                "z_load": "8 ohm",
            },
            gives="-6.0202 dB",
            origin="computed: by hand, 100 W in 8 ohm are 28.284 V; 0.25 V becomes 14.1425 V",
        ),
        Case(
            {
                "source_level": "1.2277 V",
                "gain": "46.08 V/V",
                "rated_power": "100 W",
                "z_load": "8 ohm",
            },
            gives="6.02 dB",
            origin="computed: by levels, +4 dBu and 33.27 dB are 37.27 dBu; 28.284 V are 31.25 dBu",
        ),
    ),
    topic=("signal.source_level",),
    fails="""
signal: {source_level: 0.32 V}
channels:
  main: {rated_power: 100 W, rated_load: 8 ohm, gain: 20 V/V}
""",
    passes="""
signal: {source_level: 1.23 V}
channels:
  main: {rated_power: 100 W, rated_load: 8 ohm, gain: 30 V/V}
""",
)

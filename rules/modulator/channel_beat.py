"""Beat between channels and converters that do not share a clock.

Two carriers that differ by a few kilohertz mix on the common rail and in the common
ground, and the difference is a whistle that comes and goes with temperature. Harmonics do
the same: the modulator samples what reaches it, so whatever lies near a multiple of its
carrier comes back as sound. A square wave's third harmonic is a third of its fundamental,
and off half duty its second is about as strong; from the fourth on little is left, so the
first three of either clock are compared with the other's fundamental.

Two published amplifiers whined: one with clocks of equal nominal value in each channel, one
with 330 and 340 kHz, whose maker also suspected the third harmonic of a 108 kHz converter. So
a difference that is heard is major where the spec says that there is no common clock; where it
is not given, carriers that would beat are a question. Equal nominal values are no fix: such
clocks drift through each other.
Tolerances alone make no more than a minor finding unless their sum in squares brings the clocks
together. Channels on one clock of their own, beside a converter on another, are `locked:
channels`.

The fix is one clock for all, or carriers that are more than the audio band apart: makers of
self-oscillating stereo boards set the channels 25 kHz or more apart on purpose.
"""

from ...linter.check import (
    AtLeast,
    Case,
    Check,
    Input,
    Lever,
    Source,
    derivation,
    from_memory,
)
from ..formulas.maths import smaller

HARMONICS = (1, 2, 3)
WHISTLE = Source("diyaudio thread 112889, page 2", "330 and 340 kHz whistle at 10 kHz")
WHINE = Source("diyaudio thread 91219, post 61", "two parts of about 250 kHz; one channel whines")


def apart(one: float, other: float) -> float:
    """Smallest distance of a low harmonic of either clock to the other's fundamental."""
    nearest = abs(one - other)
    for order in HARMONICS:
        nearest = smaller(nearest, abs(order * one - other))
        nearest = smaller(nearest, abs(one - order * other))
    return nearest


def figure(
    carrier: float,
    carriers: tuple[float, ...],
    channel_index: float,
    converter_frequency: float,
    locked: str,
) -> float:
    """Smallest distance to another channel or to the converter."""
    nearest = apart(converter_frequency, carrier)
    for number, other in enumerate(carriers):
        if number != channel_index and locked != "channels":
            nearest = smaller(nearest, apart(other, carrier))
    return nearest


CHECK = Check(
    title="Beat frequency of channels and converters vs. hearing range",
    figure=figure,
    unit="Hz",
    each="channel",
    stake="performance",
    formula="smallest distance of carrier from the other carriers (not channel_index itself, none"
    " for locked channels) and from converter_frequency, harmonics up to the third of either",
    sentence="Without a common clock the {carrier} carrier beats with another clock at {figure}.",
    inputs={
        "carrier": Input("modulator.carrier"),
        "carriers": Input("all modulator.carrier"),
        "channel_index": Input("channel_index"),
        "converter_frequency": Input("f_converter"),
        "locked": Input("modulator.locked"),
    },
    applies={"several_clocks": "yes", "modulator.locked": ("no", "channels")},
    limits=AtLeast(
        major="15 kHz",
        minor="20 kHz",
        basis={
            "major": from_memory("few adults hear more than 15 kHz"),
            "minor": derivation("a difference above hearing is not heard"),
        },
    ),
    levers=(Lever("modulator.carrier", "10 kHz", {"output_stage.devices": "discrete"}),),
    sources=(
        WHISTLE,
        WHINE,
        Source(
            "International Rectifier, IRAUDAMP7D reference design, rev. 2.9",
            "p. 22: idle frequencies of the channels equal, or at least 25 kHz apart",
        ),
    ),
    cases=(
        Case(
            {
                "carrier": "400 kHz",
                "carriers": ("400 kHz", "405 kHz"),
                "channel_index": 0.0,
                "converter_frequency": "600 kHz",
                "locked": "no",
            },
            gives="5 kHz",
            origin="derived: the second channel is nearest, by hand",
        ),
        Case(
            {
                "carrier": "330 kHz",
                "carriers": ("330 kHz", "340 kHz"),
                "channel_index": 0.0,
                "converter_frequency": "108 kHz",
                "locked": "no",
            },
            gives="6 kHz",
            origin="computed: 324 kHz, third harmonic of 108 kHz, beside 330 kHz (diyaudio 112889)",
        ),
        Case(
            {
                "carrier": "400 kHz",
                "carriers": ("400 kHz",),
                "channel_index": 0.0,
                "converter_frequency": "380 kHz",
                "locked": "no",
            },
            gives="20 kHz",
            origin="computed: difference tone of two sines by their product, by hand",
        ),
    ),
    topic=("modulator.locked",),
    peaks_inside=("modulator.carrier", "supply.converter_frequency"),
    fails="""
channels:
  left: {modulator: {carrier: 400 kHz, locked: no}}
  right: {modulator: {carrier: 403 kHz, locked: no}}
""",
    passes="""
channels:
  left: {modulator: {carrier: 300 kHz, locked: no}}
  right: {modulator: {carrier: 420 kHz, locked: no}}
""",
)

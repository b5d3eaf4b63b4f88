"""Beat between channels and converters that do not share a clock.

Two carriers that differ by a few kilohertz mix on the common rail and in the common
ground, and the difference is an audible whistle that comes and goes with temperature. The
cure is one clock for all channels and the converter, or carriers that are more than the
audio band apart: makers of self-oscillating stereo boards set the channels 25 kHz or more
apart on purpose. The check speaks only where the spec says that there is no common clock;
silence about it proves nothing. The figure is the smallest difference between this
channel's carrier and any other, worst tolerance included.
"""

from typing import Any

from ...linter.check import Assumption, AtLeast, Case, Check, Input, Lever, Source, derivation
from ..formulas.maths import smaller


def figure(carrier: Any, carriers: Any, channel_index: Any, converter_frequency: Any) -> Any:
    """Smallest distance to another carrier or to the converter."""
    nearest = abs(converter_frequency - carrier)
    for number, other in enumerate(carriers):
        if number != channel_index:
            nearest = smaller(nearest, abs(other - carrier))
    return nearest


CHECK = Check(
    title="Beat between channels and converters",
    figure=figure,
    unit="Hz",
    each="channel",
    stake="performance",
    formula="smallest distance of carrier from the other carriers (not channel_index itself)"
    " and from converter_frequency",
    sentence="Without a common clock the carrier of {carrier} comes within {figure} of another.",
    inputs={
        "carrier": Input("modulator.carrier", "Hz", "switching frequency of one leg"),
        "carriers": Input("all modulator.carrier", "Hz", "switching frequencies of all channels"),
        "channel_index": Input("channel_index", "1", "number of this channel"),
        "converter_frequency": Input(
            "supply.converter_frequency",
            "Hz",
            "switching frequency of the converter",
            Assumption(float("inf"), "absent", derivation("no converter, no beat with it")),
        ),
    },
    applies={"several_clocks": "yes"},
    limits=AtLeast(
        minor="20 kHz", basis={"minor": derivation("a difference above hearing is not heard")}
    ),
    levers=(Lever("modulator.carrier", "10 kHz"),),
    sources=(
        Source("IRAUDAMP7D reference design, rev 2.9", "idle frequency adjustable by 25 kHz"),
    ),
    cases=(
        Case(
            {
                "carrier": "400 kHz",
                "carriers": ("400 kHz", "405 kHz"),
                "channel_index": 0.0,
                "converter_frequency": "600 kHz",
            },
            gives="5 kHz",
            origin="derived: the second channel is nearest, by hand",
        ),
        Case(
            {
                "carrier": "400 kHz",
                "carriers": ("400 kHz",),
                "channel_index": 0.0,
                "converter_frequency": "380 kHz",
            },
            gives="20 kHz",
            origin="computed: difference tone of two sines by their product, by hand",
        ),
    ),
    topic=("modulator.locked",),
    asked_from=None,
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

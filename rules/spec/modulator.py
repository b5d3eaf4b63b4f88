"""How a channel makes its pulse width."""

from typing import ClassVar

from ...linter.declare import (
    Nature,
    Section,
    Value,
    absent,
    adverse,
    count,
    favourable,
    flag,
    quantity,
    usually,
    word,
)
from .designs import FEEDBACK, FULL_BRIDGE, SAMPLED, SEVERAL_CLOCKS, UNIFORM


class Modulator(Section):
    """Modulator, carrier and feedback loop of ONE channel."""

    nature: ClassVar[Nature] = "setting"

    type: str | None = word(
        ("natural-sampling", "uniform-sampling", "self-oscillating"),
        "how the pulse width is made",
        default=usually("natural-sampling"),
        nature="topology",
    )
    levels: str | None = word(
        ("two-level", "three-level"),
        "differential output of a full bridge; a half bridge always has two levels",
        concerns=FULL_BRIDGE,
        default=adverse("two-level"),
        nature="topology",
    )
    carrier: Value | None = quantity(
        "Hz",
        "switching frequency of ONE leg; self-oscillating: at idle",
        "40 .. 4000 kHz",
        possible="0.1 .. 1000000 kHz",
        given="tol",
        example="384 kHz ± 3 %",
    )
    waveform: str | None = word(
        ("triangle", "sawtooth"),
        "carrier waveform: a triangle moves both edges, a sawtooth one",
        concerns=SAMPLED,
        default=usually("triangle"),
        nature="topology",
    )
    carrier_shift: str | None = flag(
        "the carrier can move away from a received station",
        default=absent("no"),
        nature="topology",
    )
    feed_forward: str | None = flag(
        "the carrier's amplitude follows the rail",
        default=absent("no"),
        nature="topology",
    )
    locked: str | None = word(
        ("yes", "channels", "no"),
        "what runs on one clock; yes: all channels and converters; channels: the channels, but"
        " not the converter; no: neither",
        concerns=SEVERAL_CLOCKS,
        default=adverse("no"),
        nature="topology",
    )
    m_max: Value | None = quantity(
        "%",
        "largest modulation depth let through; default: from the shortest pulse",
        "40 .. 100 %",
        example="93 %",
    )
    feedback: str | None = word(
        ("none", "before-filter", "after-filter"),
        "where the loop takes its signal",
        nature="topology",
    )
    loop_crossover: Value | None = quantity(
        "Hz",
        "where the high-frequency asymptote of the loop gain crosses 1",
        "2 .. 900 kHz",
        concerns=FEEDBACK,
    )
    loop_corner: Value | None = quantity(
        "Hz",
        "frequency below which the loop gain is flat; default: it rises down to 0 Hz, at best",
        "0 or 0.1 .. 50 kHz",
        given="typ",
        concerns=FEEDBACK,
        default=favourable("0 Hz"),
    )
    loop_gain: Value | None = quantity(
        "V/V",
        "loop gain at 1 kHz; default: from loop_crossover, loop_order and loop_corner",
        "3 .. 2500 V/V",
        given="typ",
        also="2500 .. 100000 V/V",
        concerns=FEEDBACK,
        example="40 dB",
    )
    loop_order: Value | None = count(
        "slope of the loop gain above loop_corner, in units of 20 dB per decade",
        "1 .. 7",
        possible="1 .. 20",
        concerns=FEEDBACK,
        default=adverse(1.0),
    )
    loop_delay: Value | None = quantity(
        "s",
        "delay once round the loop",
        "10 .. 9000 ns",
        given="typ",
        concerns=FEEDBACK,
        nature="outcome",
    )
    clock: Value | None = quantity(
        "Hz",
        "clock of the counter that times the edges",
        "10 .. 3000 MHz",
        concerns=UNIFORM,
        also="1 .. 10 MHz",  # counters of controllers
        nature="part",
    )
    noise_shaping: Value | None = count(
        "order of the noise shaping, 0: none",
        "0 or 1 .. 8",
        possible="0 .. 20",
        concerns=UNIFORM,
        default=adverse(0.0),
        nature="topology",
    )
    jitter: Value | None = quantity(
        "s",
        "jitter of one edge, rms, independent from edge to edge",
        "2 .. 1900 ps",
        given="typ",
        also="0.05 .. 2 ps or 1.9 .. 50 ns",  # crystals; software timers
        nature="part",
    )

"""One channel: what it is rated for, and its parts from gate to loudspeaker."""

from typing import ClassVar, Literal

from ...linter.declare import Nature, Section, Value, absent, flag, quantity, section, usually
from .designs import NO_LOUDSPEAKER
from .filter import Filter
from .gate_drive import GateDrive
from .loudspeaker import HighPass, Loudspeaker
from .modulator import Modulator
from .output_stage import OutputStage
from .trade_sizes import AWG


class Limiter(Section):
    """Level limiter, as seen at the load."""

    nature: ClassVar[Nature] = "setting"

    v_rms: Value | None = quantity(
        "V",
        "highest long-term level that the limiter lets reach the load, rms",
        "1 .. 200 V",
        example="11 V",
    )
    v_peak: Value | None = quantity(
        "V",
        "highest fast level that the limiter lets reach the load, peak",
        "1 .. 200 V",
        example="17 V",
    )


class Line(Section):
    """Constant-voltage line of ONE channel, loudspeakers behind tapped transformers."""

    v_line: Value | None = quantity(
        "V",
        "rated voltage of the line, rms",
        "20 .. 200 V",
        example="100 V",
        nature="topology",
    )
    p_tap: Value | None = quantity(
        "W",
        "power of all taps of the line together",
        "3 .. 1000 W",
        example="120 W",
        nature="setting",
    )
    ratio: Value | None = quantity(
        "1",
        "step-up of a transformer ahead of the line, line over amplifier; default: none fitted",
        "1 .. 20",
        given="tol",
        default=absent("1"),
        example="5",
    )
    f_full: Value | None = quantity(
        "Hz",
        "lowest frequency at which every transformer of the line takes v_line unsaturated",
        "20 .. 300 Hz",
        example="60 Hz",
    )
    high_pass: HighPass | Literal["none"] | None = section(
        HighPass, part="high-pass ahead of the line", can_be_none=True, default=absent()
    )


class LoudspeakerLead(Section):
    """Lead from amplifier to loudspeaker; the way back is added by the program."""

    length: Value | None = quantity(
        "m",
        "length of the loudspeaker lead, ONE way",
        "0.05 .. 45 m",
        also="5 .. 50 mm or 45 .. 500 m",  # on the board; installations
    )
    area: Value | None = quantity(
        "mm2",
        "copper of ONE conductor of the loudspeaker lead",
        "0.05 .. 10 mm2",
        also="10 .. 50 mm2",  # vehicle leads
        called=AWG,
    )


class Channel(Section):
    """ONE channel of the amplifier."""

    rated_power: Value | None = quantity(
        "W",
        "rated power, sine, ONE channel with all driven, into rated_load at rated_thd",
        "1.3 .. 1290 W",
        promise="higher",
        also="0.02 .. 1.3 W or 1290 .. 10000 W",  # wearables; big subwoofers
    )
    rated_thd: Value | None = quantity(
        "%",
        "distortion at which rated_power is stated",
        "0.05 .. 10 %",
        default=usually("1 %"),
        example="1 %",
        promise="lower",
        also="0.0005 .. 0.05 %",  # high fidelity
    )
    rated_duration: Value | None = quantity(
        "s",
        "how long rated_power lasts on a stage that is warm from its programme; default: for ever",
        "10 .. 7200 s",
        also="10 .. 9900 ms",  # a burst of music
        example="300 s",
        promise="limit",
    )
    rated_voltage: Value | None = quantity(
        "V",
        "output at rated power, rms, if stated beside it; only compared",
        "1 .. 200 V",
        example="12 V",
        nature="claim",
    )
    rated_load: Value | None = quantity(
        "ohm",
        "whole load of the channel for rated_power; default: from the loudspeakers",
        "1 .. 100 ohm",
        example="4 ohm",
        promise="lower",
        also="0.3 .. 1 ohm or 100 .. 10000 ohm",  # vehicles; constant-voltage lines
    )
    load_range: Value | None = quantity(
        "ohm",
        "rated loads that may be connected, lowest to highest; default: the rated load",
        "1 .. 600 ohm",
        given="range",
        example="4 ohm .. 8 ohm",
        promise="wider",
        also="0.3 .. 1 ohm or 600 .. 20000 ohm",  # vehicles; constant-voltage lines
    )
    loudspeaker_rating: Value | None = quantity(
        "W",
        "noise rating that any loudspeaker to be connected must have, where the product"
        " has none of its own",
        "1.5 .. 1400 W",
        concerns=NO_LOUDSPEAKER,
        example="100 W",
        also="0.02 .. 1.5 W or 1400 .. 10000 W",  # wearables; big subwoofers
        nature="claim",
    )
    open_load: str | None = flag(
        "running with nothing connected is a stated use",
        default=absent("no"),
        promise="lower",
    )
    band: Value | None = quantity(
        "Hz",
        "audio band of this channel, lowest to highest frequency",
        "10 .. 9000 Hz",
        possible="0.1 .. 1000000 Hz",
        usual_high="200 .. 99000 Hz",
        given="range",
        default=usually("20 Hz .. 20 kHz"),
        example="60 Hz .. 16 kHz",
        promise="wider",
    )
    gain: Value | None = quantity(
        "V/V",
        "from input to load with the controls at maximum",
        "1 .. 500 V/V",
        given="tol",
        example="24 dB ± 0.3 dB",
        nature="setting",
    )
    dc_offset: Value | None = quantity(
        "V",
        "steady DC at the load, magnitude",
        "0 or 3 .. 2900 mV",
        given="max",
        also="0.01 .. 3 mV",  # small parts
        nature="setting",
    )
    turn_on_step: Value | None = quantity(
        "V",
        "step at the load at switch-on, magnitude",
        "0 or 3 .. 2900 mV",
        given="max",
        also="0.01 .. 3 mV",  # small parts
        nature="outcome",
    )
    limiter: Limiter | Literal["none"] | None = section(
        Limiter, part="level limiter", can_be_none=True, default=absent()
    )
    lead: LoudspeakerLead | Literal["none"] | None = section(
        LoudspeakerLead, part="loudspeaker lead", can_be_none=True
    )
    output_stage: OutputStage | None = section(OutputStage, part="output stage")
    gate_drive: GateDrive | None = section(GateDrive, part="gate drive")
    modulator: Modulator | None = section(Modulator, part="modulator")
    filter: Filter | None = section(Filter, part="output filter")
    line: Line | Literal["none"] | None = section(
        Line, part="constant-voltage line", can_be_none=True, default=absent()
    )
    loudspeaker: Loudspeaker | Literal["none"] | None = section(
        Loudspeaker, part="loudspeaker", can_be_none=True
    )

"""What was measured on boards."""

from typing import ClassVar

from ...linter.declare import Nature, Section, Value, quantity, text


class Measurement(Section):
    """A figure read on the bench, and under which conditions.

    Conditions are those at the board while it was read; without those on which the figure
    depends it cannot be held against the model.
    """

    nature: ClassVar[Nature] = "outcome"

    figure: str = text(
        "what was measured: a derived quantity, a field or a check, by its name",
        example="p_idle",
        required=True,
    )
    place: str | None = text(
        "name of the channel, or the word product; default: the product, or its only channel",
        example="left",
    )
    value: str = text(
        "what was read, with its unit and its uncertainty", example="2.4 W ± 5 %", required=True
    )
    board: str | None = text("number of the board", example="7")
    date: str | None = text("day of the measurement", example="2025-06-30")
    instrument: str | None = text("what it was read on", example="power meter 2, calibrated 2025")
    supply: Value | None = quantity("V", "ONE rail to ground at the board", "3 .. 200 V")
    load: Value | None = quantity("ohm", "load of each channel, a resistor", "1 .. 100 ohm")
    power: Value | None = quantity("W", "power of each channel that was driven", "1.3 .. 1290 W")
    frequency: Value | None = quantity("Hz", "frequency of the signal", "20 .. 19900 Hz")
    bandwidth: Value | None = quantity(
        "Hz", "bandwidth of the instrument", "20 .. 19900 kHz", also="20 .. 1000 MHz"
    )
    crest_factor: Value | None = quantity(
        "dB", "of a programme, peak over rms; power is then that of the peaks", "3 .. 20 dB"
    )
    ambient: Value | None = quantity(
        "degC", "air outside the product", "-40 .. 85 degC", example="25 degC"
    )
    sun: Value | None = quantity(
        "W/m2",
        "sun, or a lamp in its place, on the enclosure; default: none",
        "0 or 100 .. 1150 W/m2",
        possible="0 .. 1500 W/m2",
        example="900 W/m2",
    )
    other_loads: Value | None = quantity(
        "W",
        "other loads of the source that were on, as p_auxiliary; default: none",
        "0 or 0.05 .. 45 W",
        also="1 .. 50 mW",  # a sleeping controller
    )

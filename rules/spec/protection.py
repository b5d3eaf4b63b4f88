"""What guards the product beside the over-current protection of a channel."""

from typing import ClassVar, Literal

from ...linter.declare import Nature, Section, Value, absent, flag, quantity, section, usually, word


class OverVoltage(Section):
    """Over-voltage shutdown, in whatever part the circuit sits."""

    nature: ClassVar[Nature] = "setting"

    v_trip: Value | None = quantity(
        "V", "ONE rail: the amplifier stops above it", "3 .. 220 V", given="line"
    )


class UnderVoltage(Section):
    """Under-voltage shutdown of the amplifier."""

    nature: ClassVar[Nature] = "setting"

    v_trip: Value | None = quantity(
        "V", "ONE rail: the amplifier stops below it", "2 .. 150 V", given="line"
    )


class OverTemperature(Section):
    """Over-temperature shutdown."""

    nature: ClassVar[Nature] = "setting"

    t_trip: Value | None = quantity(
        "degC",
        "temperature at the sensor at which the amplifier stops",
        "50 .. 190 degC",
        possible="-55 .. 400 degC",
        given="line",
        example="85 degC ± 4 K",
    )
    at: str | None = word(
        ("junction", "case", "heatsink", "board"),
        "where the temperature is sensed; junction: by a sensor inside the part",
        nature="topology",
    )
    below_junction: Value | None = quantity(
        "K",
        "how far the sensor stays below the hottest junction, lasting sine at rated power",
        "2 .. 150 K",
        given="max",
        example="40 K",
        nature="outcome",
    )


class DcDetector(Section):
    """Detector of direct voltage at the load."""

    nature: ClassVar[Nature] = "setting"

    v_trip: Value | None = quantity(
        "V",
        "DC at the load at which the detector acts, magnitude",
        "0.3 .. 25 V",
        given="line",
        also="5 .. 300 mV",  # digital detectors
    )
    t_trip: Value | None = quantity(
        "s",
        "time from the onset of DC until the detector has acted",
        "10 .. 5000 ms",
        given="max",
        also="0.02 .. 10 ms",  # detectors inside parts
    )
    senses: str | None = word(
        ("filtered-output", "timed-output", "duty", "oscillation"),
        "what the detector looks at; the output behind a low-pass, how long the output stays on"
        " one side, the duty cycle, or whether the stage still switches",
        nature="topology",
    )
    action: str | None = word(
        ("mute", "disconnect-load", "remove-supply"),
        "what the detector does when it acts",
        nature="topology",
    )
    v_break: Value | None = quantity(
        "V",
        "direct voltage that the relay or switch in the loudspeaker lead breaks, at i_break",
        "5 .. 400 V",
        given="max",
        example="60 V",
        nature="part",
    )
    i_break: Value | None = quantity(
        "A",
        "direct current that it breaks at v_break",
        "0.3 .. 100 A",
        given="max",
        example="10 A",
        nature="part",
    )
    independent: str | None = flag(
        "the detector still works with a shorted switch or a dead driver or controller",
        nature="outcome",
    )


class Fuse(Section):
    """Fuse of the source, wherever it sits: lead, pack, vehicle, board."""

    i_rated: Value | None = quantity(
        "A",
        "rated current of the source fuse",
        "0.1 .. 90 A",
        example="10 A",
        also="90 .. 400 A",  # vehicle leads
    )
    place: str | None = word(
        ("source", "board"),
        "the end of the supply lead that it sits at; one inside the pack sits at the source",
        default=usually("source"),
        nature="topology",
    )
    standard: str | None = word(
        ("ul-248-14", "iec-60127"), "standard that defines the rated current of the fuse"
    )
    v_dc: Value | None = quantity(
        "V", "rating of the fuse for direct voltage", "12 .. 1000 V", given="max", example="58 V"
    )
    i_breaking: Value | None = quantity(
        "A",
        "breaking capacity of the fuse at its v_dc",
        "30 .. 25000 A",
        given="max",
        example="1000 A",
    )
    i2t: Value | None = quantity(
        "A2s",
        "melting I2t of the fuse",
        "1 .. 900 A2s",
        given="typ",
        also="0.0005 .. 1 A2s or 900 .. 200000 A2s",  # chip fuses; vehicle leads
    )
    k_ambient: Value | None = quantity(
        "%",
        "share of the rated current left in the hottest air round the fuse",
        "60 .. 105 %",
        possible="1 .. 200 %",
        given="typ",
        default=usually("90 %"),
        example="90 %",
        nature="outcome",
    )


class Inrush(Section):
    """Limiting of the charging current at switch-on."""

    r: Value | None = quantity(
        "ohm",
        "resistance of the charging loop as a whole; default: that of the rail",
        "0.03 .. 29 ohm",
        also="29 .. 2200 ohm",  # a charging resistor that a relay bridges
    )
    i_limit: Value | None = quantity(
        "A", "constant current of a controlled start, in place of r", "0.05 .. 20 A"
    )
    e_rated: Value | None = quantity(
        "J",
        "pulse energy rating of the limiting part",
        "1 .. 900 J",
        given="max",
        also="0.05 .. 1 J",  # small thermistors
    )
    i_surge: Value | None = quantity(
        "A", "weakest surge current rating in the charging path, peak", "2 .. 1500 A", given="max"
    )


class ReversePolarity(Section):
    """What blocks a source connected the wrong way round."""

    method: str | None = word(
        ("schottky", "p-channel", "n-channel", "shunt-diode-and-fuse"),
        "part that blocks a reversed source",
        nature="topology",
    )
    gate_clamp: str | None = flag("the gate of the blocking transistor is clamped")
    v_f: Value | None = quantity(
        "V", "drop of the blocking diode at the source current", "0.2 .. 2 V", given="typ"
    )
    r_on: Value | None = quantity(
        "ohm", "on-resistance of the blocking transistor", "0.5 .. 300 mohm", given="typ"
    )
    v_block: Value | None = quantity(
        "V",
        "drain-source rating of the blocking transistor; reverse voltage of the diode",
        "8 .. 200 V",
        given="max",
        example="60 V",
    )
    v_gss: Value | None = quantity(
        "V", "gate-source rating of the blocking transistor", "5 .. 40 V", given="max"
    )
    r_th_ja: Value | None = quantity(
        "K/W",
        "blocking part: junction to the air in the box, as it is mounted",
        "18 .. 165 K/W",
        given="typ",
        example="50 K/W",
        also="2 .. 18 K/W or 165 .. 400 K/W",  # on a heatsink; the smallest packages
    )
    t_j_max: Value | None = quantity(
        "degC",
        "blocking part: absolute maximum of the junction temperature",
        "100 .. 200 degC",
        possible="0 .. 700 degC",
        given="max",
        default=usually("150 degC"),
        example="175 degC",
    )


class SurgeSuppressor(Section):
    """Suppressor across the source terminals."""

    v_rwm: Value | None = quantity(
        "V", "stand-off voltage of the suppressor", "3 .. 250 V", given="max", example="26 V"
    )
    v_clamp: Value | None = quantity(
        "V",
        "clamping voltage of the suppressor at i_pp",
        "5 .. 400 V",
        given="max",
        example="42 V",
        also="400 .. 1500 V",  # varistors
    )
    i_pp: Value | None = quantity(
        "A",
        "peak current for which v_clamp is printed",
        "1 .. 900 A",
        given="max",
        example="70 A",
        also="900 .. 40000 A",  # varistors, 8/20 us
    )


class Bleeder(Section):
    """Discharge resistor of ONE rail."""

    r: Value | None = quantity(
        "ohm",
        "discharge resistor of ONE rail",
        "68 .. 47000 ohm",
        given="tol",
        also="10 .. 68 ohm or 47 .. 1000 kohm",  # switched ones; slow ones
    )
    p_rated: Value | None = quantity(
        "W", "power rating of the discharge resistor", "0.05 .. 40 W", given="max"
    )


class Protection(Section):
    """Protections of the whole product."""

    guards: ClassVar[bool] = True

    over_voltage: OverVoltage | Literal["none"] | None = section(
        OverVoltage, part="over-voltage protection", can_be_none=True, default=absent()
    )
    under_voltage: UnderVoltage | Literal["none"] | None = section(
        UnderVoltage, part="under-voltage protection", can_be_none=True
    )
    over_temperature: OverTemperature | Literal["none"] | None = section(
        OverTemperature, part="over-temperature protection", can_be_none=True
    )
    dc_detector: DcDetector | Literal["none"] | None = section(
        DcDetector, part="DC detector", can_be_none=True
    )
    fuse: Fuse | Literal["none"] | None = section(Fuse, part="fuse", can_be_none=True)
    inrush: Inrush | Literal["none"] | None = section(
        Inrush, part="inrush limiter", can_be_none=True
    )
    reverse_polarity: ReversePolarity | Literal["none"] | None = section(
        ReversePolarity, part="reverse-polarity protection", can_be_none=True
    )
    surge: SurgeSuppressor | Literal["none"] | None = section(
        SurgeSuppressor, part="surge clamp", can_be_none=True, default=absent()
    )
    bleeder: Bleeder | Literal["none"] | None = section(
        Bleeder, part="bleeder", can_be_none=True, default=absent()
    )

"""What hangs on a channel."""

from typing import ClassVar, Literal

from ...linter.check import from_memory
from ...linter.declare import (
    Nature,
    Section,
    Value,
    absent,
    count,
    quantity,
    section,
    usually,
    word,
)
from .designs import MEASURED_TRAVEL
from .loudspeaker_enclosure import LoudspeakerEnclosure

RATING_METHODS = (
    "aes2-1984",
    "aes2-2012",
    "iec-60268-5-noise",
    "iec-60268-5-long-term",
    "iec-60268-5-short-term",
    "eia-426-b",
    "programme",
    "peak",
    "unstated",
)


class HighPass(Section):
    """Electrical high-pass ahead of the loudspeaker."""

    nature: ClassVar[Nature] = "setting"

    f: Value | None = quantity(
        "Hz",
        "corner frequency of the high-pass",
        "10 .. 5000 Hz",
        possible="0.1 .. 1000000 Hz",
        example="48 Hz",
    )
    order: Value | None = count(
        "order of the high-pass, 2: 12 dB per octave", "1 .. 8", possible="1 .. 20"
    )


class SeriesCapacitor(Section):
    """Capacitor in series with ONE loudspeaker."""

    c: Value | None = quantity(
        "F", "capacitor ahead of ONE loudspeaker", "3 .. 2200 uF", given="tol", also="1 .. 3 uF"
    )
    v_rated: Value | None = quantity(
        "V", "rated voltage of the series capacitor", "25 .. 630 V", given="max"
    )
    i_rated: Value | None = quantity(
        "A",
        "ripple rating of the capacitor ahead of ONE loudspeaker, rms",
        "0.1 .. 30 A",
        given="max",
    )


class Zobel(Section):
    """Series R-C across the loudspeaker that levels its impedance."""

    r: Value | None = quantity(
        "ohm", "resistor across the loudspeaker", "1 .. 100 ohm", given="tol"
    )
    c: Value | None = quantity("F", "capacitor of the network", "0.22 .. 100 uF", given="tol")
    p_rated: Value | None = quantity(
        "W", "power rating of the resistor of the network", "0.1 .. 50 W", given="max"
    )


class Piezo(Section):
    """Piezo transducer in place of ONE voice coil: a capacitor as load."""

    c: Value | None = quantity(
        "F",
        "capacitance of ONE piezo transducer at 1 kHz",
        "5 .. 1000 nF",
        given="tol",
        also="1 .. 20 uF",  # multilayer exciters
    )
    r_series: Value | None = quantity(
        "ohm",
        "resistor in series with ONE piezo transducer; 0 ohm: none fitted",
        "0 or 1 .. 220 ohm",
        given="tol",
        default=absent("0 ohm"),
        example="22 ohm",
    )
    v_rated: Value | None = quantity(
        "V",
        "highest drive of ONE piezo transducer, rms",
        "3 .. 60 V",
        given="max",
        example="20 V",
    )


class Loudspeaker(Section):
    """The loudspeakers of ONE channel: equal, in series and in parallel."""

    series: Value | None = count(
        "equal loudspeakers of this channel in series",
        "1 .. 16",
        default=absent(1.0),
        nature="topology",
    )
    parallel: Value | None = count(
        "equal loudspeakers of this channel, or strings of them, in parallel",
        "1 .. 16",
        default=absent(1.0),
        nature="topology",
    )
    z_rated: Value | None = quantity(
        "ohm",
        "rated impedance of ONE loudspeaker",
        "1 .. 64 ohm",
        example="8 ohm",
        also="64 .. 1000 ohm",  # headphones
    )
    z_min: Value | None = quantity(
        "ohm",
        "lowest modulus of ONE loudspeaker in the band; default: 0.8 of z_rated",
        "0.8 .. 64 ohm",
        example="6.4 ohm",
        also="64 .. 1000 ohm",  # headphones
    )
    phase: Value | None = quantity(
        "deg",
        "phase of the impedance at the low end of the band, magnitude",
        "0 or 1 .. 75 deg",
        default=usually("45 deg", from_memory("impedance curves of loudspeakers")),
        example="40 deg",
        nature="outcome",
    )
    r_e: Value | None = quantity(
        "ohm",
        "DC resistance of ONE voice coil, cold; default: 0.8 of z_rated",
        "0.8 .. 50 ohm",
        given="tol",
        also="50 .. 1000 ohm",  # headphones
    )
    l_e: Value | None = quantity(
        "H",
        "inductance of ONE voice coil at the top of the band",
        "0.01 .. 6 mH",
        given="tol",
        also="1 .. 10 uH",  # micro speakers
    )
    p_rated: Value | None = quantity(
        "W",
        "power rating of ONE loudspeaker by its rating_method",
        "1 .. 990 W",
        also="0.02 .. 1 W or 990 .. 10000 W",  # micro speakers; big subwoofers
    )
    rating_method: str | None = word(
        RATING_METHODS, "method behind the power rating", nature="outcome"
    )
    coil_rise: Value | None = quantity(
        "K",
        "rise of the voice coil's temperature in sustained use",
        "40 .. 250 K",
        default=usually("150 K"),
        example="150 K",
        nature="outcome",
    )
    sensitivity: Value | None = quantity(
        "dB",
        "sound level of ONE loudspeaker at 1 m, re 20 uPa, for the drive of sensitivity_basis",
        "70 .. 118 dB",
        possible="-20 .. 194 dB",
    )
    sensitivity_basis: str | None = word(
        ("2.83-volt", "1-watt"),
        "drive for which the sensitivity is printed",
        nature="outcome",
    )
    f_s: Value | None = quantity(
        "Hz",
        "resonance of ONE loudspeaker in free air",
        "15 .. 2500 Hz",
        possible="0.1 .. 1000000 Hz",
        given="tol",
        example="50 Hz ± 10 %",
    )
    q_ms: Value | None = quantity(
        "1", "mechanical Q at f_s", "0.5 .. 20", possible="0.01 .. 1000", given="tol"
    )
    q_es: Value | None = quantity(
        "1", "electrical Q at f_s", "0.1 .. 3", possible="0.01 .. 1000", given="tol"
    )
    v_as: Value | None = quantity(
        "L",
        "air volume as compliant as the suspension of ONE loudspeaker",
        "0.5 .. 450 L",
        given="tol",
        also="0.0003 .. 0.5 L or 450 .. 3000 L",  # micro speakers; big cones
    )
    s_d: Value | None = quantity(
        "cm2",
        "effective cone area of ONE loudspeaker",
        "4 .. 1300 cm2",
        given="tol",
        example="137 cm2",
        also="0.2 .. 4 cm2",  # micro speakers
    )
    bl: Value | None = quantity(
        "T m",
        "force factor of ONE loudspeaker",
        "1 .. 40 T m",
        given="tol",
        also="0.1 .. 1 T m",  # micro speakers
    )
    x_max: Value | None = quantity(
        "mm", "linear excursion, ONE way from rest, peak", "0.2 .. 60 mm", example="5 mm"
    )
    x_mech: Value | None = quantity(
        "mm", "excursion that damages, ONE way from rest, peak", "0.2 .. 60 mm", example="12 mm"
    )
    x_peak: Value | None = quantity(
        "mm",
        "largest excursion over the band at the limiter, ONE way from rest, peak, measured",
        "0.1 .. 60 mm",
        given="max",
        concerns=MEASURED_TRAVEL,
        example="1.5 mm",
        nature="outcome",
    )
    enclosure: LoudspeakerEnclosure | None = section(
        LoudspeakerEnclosure, part="loudspeaker enclosure"
    )
    high_pass: HighPass | Literal["none"] | None = section(
        HighPass, part="high-pass ahead of the loudspeaker", can_be_none=True
    )
    c_series: SeriesCapacitor | Literal["none"] | None = section(
        SeriesCapacitor,
        part="capacitor ahead of the loudspeaker",
        can_be_none=True,
        default=absent(),
    )
    piezo: Piezo | Literal["none"] | None = section(
        Piezo,
        part="piezo transducer in place of the voice coil",
        can_be_none=True,
        default=absent(),
    )
    zobel: Zobel | Literal["none"] | None = section(
        Zobel, part="zobel network", can_be_none=True, default=absent()
    )

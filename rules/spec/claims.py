"""What the paperwork says of the product; default: no claim."""

from typing import ClassVar

from ...linter.declare import Nature, Section, Value, absent, flag, listed, quantity, usually, word
from .designs import BATTERY
from .trade_sizes import MARKETS


class Claims(Section):
    """Claims about the WHOLE product, to be compared with what follows."""

    nature: ClassVar[Nature] = "claim"
    voluntary: ClassVar[bool] = True

    rated_supply: Value | None = quantity(
        "V",
        "voltage of pack or DC source (ONE rail) for rated_power; default: the whole range",
        "2.5 .. 200 V",
        possible="0.1 .. 100000 V",
        example="14.4 V",
        promise="lower",
    )
    efficiency: Value | None = quantity(
        "%",
        "efficiency of the whole product at rated power, all channels driven",
        "40 .. 98 %",
        example="85 %",
        promise="higher",
    )
    heat: Value | None = quantity(
        "W",
        "claimed heat of the whole product at the signal of thermal.basis",
        "0.3 .. 290 W",
        promise="lower",
    )
    thd: Value | None = quantity(
        "%",
        "distortion and noise at 1 kHz below clipping",
        "0.002 .. 1.9 %",
        given="max",
        promise="lower",
        also="0.0001 .. 0.002 % or 1.9 .. 10 %",  # high fidelity; small portables
    )
    noise: Value | None = quantity(
        "V",
        "noise at the output of ONE channel, A-weighted, rms",
        "5 .. 4000 uV",
        given="max",
        promise="lower",
        also="0.5 .. 5 uV or 4 .. 50 mV",  # high fidelity; loud systems
    )
    response: Value | None = quantity(
        "dB",
        "deviation of the response allowed in the band, magnitude",
        "0.1 .. 6 dB",
        possible="0.001 .. 60 dB",
        default=usually("3 dB"),
        example="3 dB",
        promise="lower",
    )
    sound_level: Value | None = quantity(
        "dB",
        "sound level of the whole product: sine at clip onset, rms, re 20 uPa",
        "60 .. 140 dB",
        possible="-20 .. 194 dB",
        promise="higher",
    )
    sound_distance: Value | None = quantity(
        "m",
        "distance at which sound_level is claimed",
        "0.2 .. 100 m",
        example="1 m",
        promise="higher",
    )
    run_time: Value | None = quantity(
        "h",
        "run time: programme at the highest level without clipping, full to empty",
        "0.3 .. 200 h",
        concerns=BATTERY,
        promise="higher",
    )
    shelf_time: Value | None = quantity(
        "h",
        "shelf time: switched off, full to empty",
        "100 .. 90000 h",
        concerns=BATTERY,
        promise="higher",
    )
    life: Value | None = quantity(
        "h",
        "required operating life",
        "500 .. 200000 h",
        promise="higher",
    )
    air_travel: str | None = word(
        ("none", "cabin", "cargo"),
        "how the product is said to travel by air",
        concerns=BATTERY,
        default=absent(),
        promise="stated",
    )
    markets: tuple[str, ...] | None = listed(
        "where the product is sold",
        words=("eu", "uk", "us", "ca", "other"),
        called=MARKETS,
        example="[eu, uk]",
        promise="stated",
    )
    standards: tuple[str, ...] | None = listed(
        "standards that the paperwork cites",
        example="[IEC 62368-1, EN 55032]",
        promise="stated",
    )
    emission_class: str | None = word(
        ("a", "b"),
        "class after CISPR 32",
        promise="higher",
    )
    radio: str | None = flag("a radio transmitter is inside", default=absent("no"))

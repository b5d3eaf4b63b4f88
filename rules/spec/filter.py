"""The output filter of a channel."""

from typing import Literal

from ...linter.check import from_memory, quoted
from ...linter.declare import Section, Value, absent, favourable, quantity, section, usually, word
from .designs import BEAD, LC, SINGLE_HALF, UNFILTERED
from .trade_sizes import FILMS

DIELECTRICS = ("polypropylene", "polyester", "ceramic-class-1", "ceramic-class-2")


class Inductor(Section):
    """ONE inductor of the filter; a full bridge has two."""

    l: Value | None = quantity(  # noqa: E741
        "H",
        "inductance of ONE inductor at small current",
        "0.5 .. 470 uH",
        given="tol",
        concerns=LC,
        example="10 uH ± 20 %",
    )
    dcr: Value | None = quantity(
        "ohm",
        "DC resistance of ONE inductor at 20 degC",
        "1 .. 900 mohm",
        given="line",
        concerns=LC,
        default=favourable("0 ohm"),
        also="0.1 .. 1 mohm or 0.9 .. 5 ohm",  # bars; chip inductors
    )
    r_ac: Value | None = quantity(
        "ohm",
        "resistance of the winding of ONE inductor at the carrier; default: its DC resistance",
        "0.005 .. 2 ohm",
        given="typ",
        concerns=LC,
        example="0.15 ohm",
    )
    i_sat: Value | None = quantity(
        "A",
        "saturation current of ONE inductor at 25 degC, peak",
        "0.3 .. 200 A",
        given="typ",
        concerns=LC,
        example="14 A",
    )
    i_sat_drop: Value | None = quantity(
        "%",
        "loss of inductance that defines i_sat",
        "5 .. 50 %",
        given="typ",
        concerns=LC,
        example="20 %",
    )
    i_sat_hot_factor: Value | None = quantity(
        "1",
        "saturation current at 100 degC over that at 25 degC; default: ferrite 0.8, powder 1",
        "0.5 .. 1.05",
        given="typ",
        concerns=LC,
        example="0.9",
    )
    i_rms: Value | None = quantity(
        "A",
        "rated current of ONE inductor for the rise rise_rated, rms",
        "0.3 .. 100 A",
        given="max",
        concerns=LC,
    )
    rise_rated: Value | None = quantity(
        "K",
        "temperature rise that defines i_rms",
        "15 .. 60 K",
        given="max",
        concerns=LC,
        default=usually("40 K", quoted("inductor maker's tutorial on rated current: 40 K rise")),
        example="40 K",
    )
    core: str | None = word(("ferrite", "powder", "air"), "core material", concerns=LC)
    turns: Value | None = quantity(
        "1", "turns of ONE inductor; default: no core loss", "3 .. 150", concerns=LC
    )
    a_e: Value | None = quantity(
        "mm2", "effective core area of ONE inductor", "5 .. 900 mm2", concerns=LC
    )
    v_e: Value | None = quantity(
        "mm3", "effective core volume of ONE inductor", "50 .. 45000 mm3", concerns=LC
    )
    p_v: Value | None = quantity(
        "kW/m3",
        "core loss at 100 kHz, 200 mT peak, 100 degC; default: no core loss",
        "20 .. 9000 kW/m3",
        given="typ",
        concerns=LC,
    )
    exponent_f: Value | None = quantity(
        "1",
        "exponent of frequency in the core loss",
        "1.0 .. 2.2",
        possible="0.5 .. 5",
        given="typ",
        concerns=LC,
        default=usually("1.4", from_memory("core loss fits of power ferrites")),
        example="1.4",
    )
    exponent_b: Value | None = quantity(
        "1",
        "exponent of flux density in the core loss",
        "1.8 .. 3.2",
        possible="0.5 .. 5",
        given="typ",
        concerns=LC,
        default=usually("2.6", from_memory("core loss fits of power ferrites")),
        example="2.5",
    )


class FilterCapacitor(Section):
    """Capacitor of the filter: across the load, or from EACH terminal to ground."""

    c: Value | None = quantity(
        "F",
        "capacitance of ONE capacitor at small voltage",
        "0.01 .. 4.7 uF",
        given="tol",
        concerns=LC,
        example="680 nF ± 5 %",
        also="0.047 .. 10 nF",  # behind beads
        also_in=UNFILTERED,
    )
    dielectric: str | None = word(
        DIELECTRICS, "dielectric of the capacitor", concerns=LC, called=FILMS
    )
    v_rated: Value | None = quantity(
        "V", "DC rating of ONE capacitor", "6.3 .. 1250 V", given="max", concerns=LC
    )
    i_rated: Value | None = quantity(
        "A",
        "rated current of ONE capacitor at the carrier, rms; default: from the loss factor",
        "0.05 .. 20 A",
        given="max",
        concerns=LC,
    )
    tan_delta: Value | None = quantity(
        "1",
        "loss factor at 100 kHz; default: by dielectric",
        "0.0001 .. 0.09",
        given="max",
        concerns=LC,
    )
    bias_retention: Value | None = quantity(
        "%",
        "capacitance left at working voltage; default: 60 % for class 2 ceramic, else 100 %",
        "15 .. 100 %",
        given="typ",
        concerns=LC,
        example="60 %",
    )


class BlockCapacitor(Section):
    """Capacitor in series with the load of a half bridge on a single supply."""

    c: Value | None = quantity(
        "F",
        "capacitance in series with the load",
        "0.047 .. 22 mF",
        given="tol",
        concerns=SINGLE_HALF,
        also="1 .. 47 uF or 22 .. 200 mF",  # high loads; subwoofers
    )
    v_rated: Value | None = quantity(
        "V", "DC rating of the series capacitor", "6.3 .. 160 V", given="max", concerns=SINGLE_HALF
    )
    i_rated: Value | None = quantity(
        "A",
        "ripple rating of the series capacitor, rms",
        "0.1 .. 30 A",
        given="max",
        concerns=SINGLE_HALF,
    )


class Damper(Section):
    """Series R-C at the output of the filter."""

    r: Value | None = quantity(
        "ohm",
        "resistor of ONE damper",
        "0.5 .. 220 ohm",
        given="tol",
        concerns=LC,
        also="220 .. 4700 ohm",  # against an open output
    )
    c: Value | None = quantity(
        "F",
        "capacitor of ONE damper",
        "0.01 .. 4.7 uF",
        given="tol",
        concerns=LC,
        also="0.1 .. 10 nF",  # against ringing alone
    )
    p_rated: Value | None = quantity(
        "W", "power rating of the resistor of ONE damper", "0.05 .. 40 W", given="max", concerns=LC
    )
    v_rated: Value | None = quantity(
        "V",
        "rated direct voltage of the capacitor of ONE damper",
        "6 .. 2000 V",
        given="max",
        concerns=LC,
        example="100 V",
    )
    connection: str | None = word(
        ("across", "each-terminal"),
        "one damper across the load, or one from EACH terminal to ground",
        concerns=LC,
        default=usually("across"),
    )


class SecondStage(Section):
    """Second filter section that follows the first."""

    l: Value | None = quantity(  # noqa: E741
        "H",
        "inductor of the second section in ONE leg",
        "0.5 .. 470 uH",
        given="tol",
        concerns=LC,
        also="1 .. 500 nH",  # beads and straight wire
    )
    c: Value | None = quantity(
        "F",
        "capacitor of the second section, across the load",
        "0.01 .. 4.7 uF",
        given="tol",
        concerns=LC,
    )
    c_ground: Value | None = quantity(
        "F",
        "capacitor of the second section, from EACH terminal of a bridge to ground; default: none",
        "0.01 .. 4.7 uF",
        given="tol",
        concerns=LC,
    )


class Bead(Section):
    """Ferrite bead in ONE leg."""

    i_rated: Value | None = quantity(
        "A", "rated current of ONE ferrite bead", "0.2 .. 20 A", given="max", concerns=BEAD
    )


class Filter(Section):
    """What lies between the switch nodes and the load."""

    type: str | None = word(
        ("lc", "bead", "filterless"),
        "what lies between switch node and load; default: lc where an inductor is stated",
        asked_first="filter",
    )
    corner: Value | None = quantity(
        "Hz",
        "corner frequency, if stated beside L and C; default: follows from them",
        "5 .. 500 kHz",
        concerns=LC,
        also="0.5 .. 100 MHz",  # beads
        also_in=BEAD,
    )
    inductor: Inductor | None = section(Inductor, part="filter inductor", concerns=LC)
    c_across: FilterCapacitor | Literal["none"] | None = section(
        FilterCapacitor,
        part="filter capacitor across the load",
        can_be_none=True,
        concerns=LC,
        meaning="Capacitor across the load; half bridge: from the output to ground.",
    )
    c_ground: FilterCapacitor | Literal["none"] | None = section(
        FilterCapacitor,
        part="filter capacitor to ground",
        can_be_none=True,
        concerns=LC,
        default=absent(),
        meaning="Capacitor from EACH terminal of a full bridge to ground.",
    )
    c_block: BlockCapacitor | Literal["none"] | None = section(
        BlockCapacitor, part="output capacitor", can_be_none=True, concerns=SINGLE_HALF
    )
    damper: Damper | Literal["none"] | None = section(
        Damper, part="filter damper", can_be_none=True, concerns=LC, default=absent()
    )
    second_stage: SecondStage | Literal["none"] | None = section(
        SecondStage, part="second filter stage", can_be_none=True, concerns=LC, default=absent()
    )
    bead: Bead | None = section(Bead, part="ferrite bead", concerns=BEAD)

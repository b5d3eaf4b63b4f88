"""The output filter of a channel."""

from typing import Literal

from ...linter.declare import Section, Value, absent, quantity, section, usually, word
from .designs import BEAD, LC, SINGLE_HALF, UNFILTERED
from .inductor import Inductor
from .trade_sizes import FILMS

DIELECTRICS = ("polypropylene", "polyester", "ceramic-class-1", "ceramic-class-2")


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
        possible="0.000001 .. 10",
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
        nature="outcome",
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
        also="0.1 .. 10 nF or 4.7 .. 22 uF",  # against ringing alone; against the filter's peak
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
        nature="topology",
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
        nature="topology",
    )
    corner: Value | None = quantity(
        "Hz",
        "corner frequency, if stated beside L and C; default: follows from them",
        "5 .. 500 kHz",
        concerns=LC,
        also="0.5 .. 100 MHz",  # beads
        also_in=BEAD,
        nature="outcome",
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

"""One inductor of the output filter."""

from ...linter.check import from_memory, quoted
from ...linter.declare import Section, Value, favourable, quantity, usually, word
from .designs import LC


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
        nature="outcome",
    )
    i_sat_hot_factor: Value | None = quantity(
        "1",
        "saturation current at 100 degC over that at 25 degC; default: ferrite 0.8, powder 1",
        "0.5 .. 1.05",
        possible="0.01 .. 2",
        given="typ",
        concerns=LC,
        example="0.9",
        nature="outcome",
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
        nature="outcome",
    )
    core: str | None = word(("ferrite", "powder", "air"), "core material", concerns=LC)
    turns: Value | None = quantity(
        "1",
        "turns of ONE inductor; default: no core loss",
        "3 .. 150",
        possible="0.25 .. 100000",
        concerns=LC,
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
        nature="outcome",
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
        nature="outcome",
    )

"""What feeds the amplifier, up to the rail."""

from typing import ClassVar

from ...linter.declare import (
    Nature,
    Section,
    Value,
    absent,
    adverse,
    favourable,
    flag,
    quantity,
    section,
    usually,
    word,
)
from .designs import CONVERTER, MAINS_OR_HIGH, NOT_THE_PACK, VEHICLE


class Bulk(Section):
    """Capacitors of the amplifier from ONE rail to ground, all added."""

    c: Value | None = quantity(
        "F",
        "ONE rail to ground: all capacitors of the amplifier on it added",
        "0.047 .. 33 mF",
        given="tol",
        also="1 .. 47 uF or 33 .. 200 mF",  # parts of a few watts; big linear supplies
    )
    v_rated: Value | None = quantity(
        "V",
        "lowest rated voltage among the bulk capacitors",
        "4 .. 450 V",
        given="max",
        example="35 V",
    )
    i_ripple: Value | None = quantity(
        "A",
        "rated ripple current of the whole group on ONE rail, rms",
        "0.2 .. 60 A",
        given="max",
        also="20 .. 200 mA",  # small electrolytics
    )
    life: Value | None = quantity(
        "h",
        "endurance printed for the bulk capacitors at t_rated",
        "1000 .. 20000 h",
        given="max",
        example="5000 h",
    )
    t_rated: Value | None = quantity(
        "degC",
        "temperature for which the endurance holds",
        "85 .. 150 degC",
        possible="0 .. 500 degC",
        given="max",
        example="105 degC",
    )


class SupplySurge(Section):
    """Credible surge at the terminals of the source."""

    nature: ClassVar[Nature] = "use"

    v: Value | None = quantity(
        "V",
        "peak of the surge with nothing connected",
        "20 .. 400 V",
        concerns=VEHICLE,
        also="400 .. 1000 V",  # 24 V systems
    )
    r: Value | None = quantity(
        "ohm", "resistance behind the surge", "0.05 .. 40 ohm", concerns=VEHICLE
    )


class Supply(Section):
    """The source, its converter if there is one, and the rail."""

    source: str | None = word(
        ("battery", "dc-source", "mains-converter"),
        "what feeds the amplifier",
        asked_first="source",
        nature="topology",
    )
    rails: str | None = word(
        ("single", "split"),
        "one rail and ground, or two equal rails about ground; default: single for a battery",
        asked_first="rails",
        nature="topology",
    )
    converter: str | None = word(
        ("none", "step-up", "step-down", "step-up-down"),
        "converter between the battery or DC source and the rail",
        default=absent(),
        nature="topology",
        asked_first="converter",
    )
    v_source: Value | None = quantity(
        "V",
        "voltage at the terminals of the source, ahead of the converter; default: from the pack",
        "2.5 .. 500 V",
        possible="0.1 .. 100000 V",
        given="range",
        concerns=CONVERTER,
        example="11.4 V .. 15 V",
        nature="use",
    )
    v_rail: Value | None = quantity(
        "V",
        "voltage of ONE rail to ground, amplifier idle; default: the pack, where it is the rail",
        "2.5 .. 200 V",
        possible="0.1 .. 100000 V",
        given="range",
        concerns=NOT_THE_PACK,
        example="24 V ± 2 %",
        nature="setting",
    )
    r_source: Value | None = quantity(
        "ohm",
        "resistance of the source at ONE rail, its leads included; default: from the pack, or 0",
        "1 .. 900 mohm",
        also="0.9 .. 20 ohm",  # small primary cells
    )
    i_max: Value | None = quantity(
        "A",
        "largest continuous current of source or converter on ONE rail (give i_max or p_max)",
        "0.3 .. 150 A",
        given="max",
        concerns=NOT_THE_PACK,
        example="6 A",
    )
    p_max: Value | None = quantity(
        "W",
        "largest continuous power of source or converter, all rails (give p_max or i_max)",
        "3 .. 2900 W",
        given="max",
        concerns=NOT_THE_PACK,
        example="120 W",
    )
    p_peak: Value | None = quantity(
        "W",
        "largest power of source or converter for some milliseconds; default: 1.5 times p_max",
        "3 .. 2900 W",
        given="max",
        concerns=NOT_THE_PACK,
        example="180 W",
    )
    self_limiting: str | None = flag(
        "the source by itself ends or limits the current into a short circuit, for good"
    )
    v_source_abs: Value | None = quantity(
        "V",
        "absolute maximum input voltage of the converter",
        "3 .. 500 V",
        given="max",
        concerns=CONVERTER,
        example="40 V",
    )
    v_lockout: Value | None = quantity(
        "V",
        "source voltage below which the converter stops",
        "0.7 .. 400 V",
        given="line",
        concerns=CONVERTER,
        example="10.8 V",
    )
    converter_efficiency: Value | None = quantity(
        "%",
        "efficiency of the converter ahead of the rail at full load",
        "60 .. 99 %",
        given="typ",
        concerns=CONVERTER,
        default=usually("85 %"),
        example="90 %",
    )
    converter_frequency: Value | None = quantity(
        "Hz",
        "switching frequency of the converter ahead of the rail",
        "20 .. 4000 kHz",
        given="typ",
        concerns=CONVERTER,
    )
    sinks_current: str | None = flag(
        "the source takes back returned current without rising; a pack that is the rail does",
        default=adverse("no"),
    )
    ripple: Value | None = quantity(
        "V",
        "ripple of the source itself on ONE rail, peak to peak",
        "5 .. 4000 mV",
        given="max",
        concerns=NOT_THE_PACK,
        also="0.05 .. 5 mV",  # linear regulators
    )
    p_auxiliary: Value | None = quantity(
        "W",
        "all other loads of the source together: signal processing, radio, lamps",
        "0 or 0.05 .. 45 W",
        default=favourable("0 W"),
        also="1 .. 50 mW",  # a sleeping controller
        nature="use",
    )
    certified: str | None = flag(
        "the barrier to mains, or to a source above 60 V, carries a safety certificate",
        concerns=MAINS_OR_HIGH,
        nature="outcome",
    )
    surge: SupplySurge | None = section(
        SupplySurge, part="surge at the supply terminals", concerns=VEHICLE
    )
    bulk: Bulk | None = section(Bulk, part="bulk capacitors")
    c_source: Value | None = quantity(
        "F",
        "output capacitance of source or converter on ONE rail, beside the bulk capacitors",
        "0 or 0.02 .. 19 mF",
        given="tol",
        concerns=NOT_THE_PACK,
        default=adverse("0 F"),
        also="0.019 .. 20 F",  # stiffening capacitors
    )

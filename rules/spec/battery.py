"""The battery: cells, pack, protection, charger."""

from typing import ClassVar, Literal

from ...linter.check import Source
from ...linter.declare import (
    Nature,
    Section,
    Value,
    absent,
    count,
    favourable,
    quantity,
    section,
    usually,
    word,
)
from .cell import Cell
from .designs import BATTERY, LEAD_ACID
from .trade_sizes import CHEMISTRIES_CALLED

CHEMISTRIES = ("li-ion", "lfp", "lead-acid-agm", "lead-acid-flooded", "nimh")


class PackProtection(Section):
    """Protection circuit of the WHOLE pack."""

    guards: ClassVar[bool] = True
    nature: ClassVar[Nature] = "setting"

    i_trip: Value | None = quantity(
        "A",
        "WHOLE pack: discharge current at which it disconnects",
        "1 .. 300 A",
        given="line",
        concerns=BATTERY,
        also="0.1 .. 1 A",  # tiny cells
    )
    t_trip: Value | None = quantity(
        "s",
        "WHOLE pack: time above i_trip until it disconnects",
        "0.5 .. 450 ms",
        given="line",
        concerns=BATTERY,
        also="5 .. 500 us or 450 .. 30000 ms",  # short-circuit and overload steps
    )
    i_breaking: Value | None = quantity(
        "A",
        "WHOLE pack: short-circuit current that it is rated to interrupt, in place of a fuse",
        "5 .. 4500 A",
        given="max",
        concerns=BATTERY,
        example="200 A",
        nature="part",
    )
    v_cutoff: Value | None = quantity(
        "V",
        "WHOLE pack: voltage below which it disconnects",
        "0.9 .. 500 V",
        given="line",
        concerns=BATTERY,
    )
    r: Value | None = quantity(
        "ohm",
        "WHOLE pack: resistance of the protection's switches and current sensing",
        "0 or 0.5 .. 200 mohm",
        given="line",
        concerns=BATTERY,
        default=favourable("0 ohm"),
        nature="part",
    )


class Charger(Section):
    """Charger of the WHOLE pack, in the product or apart from it."""

    nature: ClassVar[Nature] = "setting"

    v: Value | None = quantity(
        "V",
        "voltage of the WHOLE pack at the end of charge; default: cells in series",
        "1.3 .. 500 V",
        given="tol",
        concerns=BATTERY,
        example="25.2 V ± 1 %",
    )
    i: Value | None = quantity(
        "A",
        "WHOLE pack: charge current",
        "0.1 .. 60 A",
        given="tol",
        concerns=BATTERY,
        also="0.01 .. 0.1 A",  # tiny cells
    )
    sensor: str | None = word(
        ("cell", "board", "none"),
        "where the temperature is sensed that lets charging start",
        concerns=BATTERY,
        nature="topology",
    )
    t_window: Value | None = quantity(
        "degC",
        "temperatures at the sensor between which charging is let through",
        "-20 .. 70 degC",
        possible="-100 .. 300 degC",
        given="range",
        concerns=BATTERY,
        example="3 degC .. 43 degC",
    )
    t_reduced: Value | None = quantity(
        "degC",
        "temperature above which it lowers voltage or current; default: it lowers neither",
        "35 .. 60 degC",
        possible="-100 .. 300 degC",
        concerns=BATTERY,
        example="45 degC",
    )
    playing: str | None = word(
        ("impossible", "power-path", "from-the-cells"),
        "what feeds the amplifier if it plays while charging",
        concerns=BATTERY,
        nature="topology",
    )


class Battery(Section):
    """The battery: how many cells of which kind, and what guards them."""

    nature: ClassVar[Nature] = "topology"

    chemistry: str | None = word(
        CHEMISTRIES,
        "kind of cell; li-ion means NMC, NCA and cobalt; decides the defaults of a cell",
        concerns=BATTERY,
        called=CHEMISTRIES_CALLED,
    )
    series: Value | None = count(
        "CELLS in series; a 12 V lead-acid block counts six", "1 .. 200", concerns=BATTERY
    )
    parallel: Value | None = count(
        "strings of cells in parallel", "1 .. 100", concerns=BATTERY, default=absent(1.0)
    )
    packs: Value | None = count(
        "separately removable packs that make up these cells",
        "1 .. 8",
        concerns=BATTERY,
        default=absent(1.0),
    )
    i_standby: Value | None = quantity(
        "A",
        "current drawn from the WHOLE pack while the product is switched off",
        "0 or 2 .. 1900 uA",
        given="max",
        concerns=BATTERY,
        also="0.01 .. 2 uA or 1.9 .. 100 mA",  # shutdown of a part; radio on standby
        nature="outcome",
    )
    connection: str | None = word(
        ("fixed", "keyed", "reversible"),
        "how the pack connects: built in, one way round only, or either way round",
        concerns=BATTERY,
    )
    vent_area: Value | None = quantity(
        "cm2",
        "free area of each of the two openings, inlet and outlet, of the space it is charged in",
        "0 or 0.2 .. 180 cm2",
        concerns=LEAD_ACID,
        example="4 cm2",
        nature="setting",
    )
    usable_share: Value | None = quantity(
        "%",
        "part of the capacity that lies above the cut-off",
        "40 .. 100 %",
        concerns=BATTERY,
        default=usually("90 %"),
        example="90 %",
        nature="outcome",
    )
    cold_share: Value | None = quantity(
        "%",
        "part of the capacity that is left at the coldest ambient",
        "40 .. 100 %",
        concerns=BATTERY,
        default=usually("80 %"),
        example="80 %",
        nature="outcome",
    )
    peukert: Value | None = quantity(
        "1",
        "exponent of capacity against discharge rate; default: 1.15 AGM, 1.3 flooded",
        "1.0 .. 1.5",
        possible="1 .. 3",
        concerns=LEAD_ACID,
        example="1.15",
        nature="outcome",
    )
    rating_hours: Value | None = quantity(
        "h",
        "discharge time for which the capacity is printed",
        "1 .. 100 h",
        concerns=LEAD_ACID,
        default=usually(
            "20 h", Source("utilitiesbunker.com, Peukert's Law", "lead-acid often rated at C/20")
        ),
        example="20 h",
        nature="outcome",
    )
    cell: Cell | None = section(Cell, part="battery cells", concerns=BATTERY)
    protection: PackProtection | Literal["none"] | None = section(
        PackProtection, part="protection circuit of the battery", can_be_none=True, concerns=BATTERY
    )
    charger: Charger | Literal["none"] | None = section(
        Charger, part="battery charger", can_be_none=True, concerns=BATTERY
    )

"""From the source to the board, and on the board."""

from typing import Literal

from ...linter.declare import (
    Section,
    Value,
    absent,
    adverse,
    count,
    quantity,
    section,
    usually,
    word,
)
from .trade_sizes import AWG, COPPER_WEIGHTS

SURFACES = (
    "inner",
    "outer-bare",
    "outer-coated",
    "assembly-coated",
    "lead-bare",
    "lead-coated",
)


class SupplyLead(Section):
    """Lead from source to board; the way back is added by the program."""

    length: Value | None = quantity(
        "m", "length of the supply lead, ONE way; default: no resistance in a pack", "0.03 .. 25 m"
    )
    area: Value | None = quantity(
        "mm2", "copper of ONE conductor of the supply lead", "0.05 .. 49 mm2", called=AWG
    )
    i_rated: Value | None = quantity(
        "A",
        "current that the insulation of the supply lead allows; default: by area",
        "0.5 .. 300 A",
        nature="outcome",
    )


class Connector(Section):
    """Supply connector."""

    i_rated: Value | None = quantity(
        "A", "rated current of ONE contact, for a rise of 30 K", "0.5 .. 200 A", given="max"
    )
    i_surge: Value | None = quantity(
        "A",
        "surge current that contacts and switch in the path of the source may close onto, peak",
        "2 .. 1500 A",
        given="max",
    )
    contacts: Value | None = count(
        "contacts in parallel per pole", "1 .. 40", default=absent(1.0), nature="topology"
    )
    t_max: Value | None = quantity(
        "degC",
        "highest temperature of the connector",
        "70 .. 150 degC",
        possible="0 .. 700 degC",
        given="max",
        default=usually("85 degC"),
        example="105 degC",
    )


class Trace(Section):
    """Narrowest trace that carries the source current."""

    width: Value | None = quantity("mm", "width of the trace", "0.2 .. 100 mm")
    copper: Value | None = quantity(
        "m",
        "copper thickness of the trace",
        "12 .. 210 um",
        default=usually("35 um"),
        example="70 um",
        called=COPPER_WEIGHTS,
    )
    layer: str | None = word(
        ("outer", "inner"),
        "layer that the trace lies on",
        default=usually("outer"),
        nature="topology",
    )


class Spacing(Section):
    """Smallest gap on the board beside a rail or a switch node."""

    gap: Value | None = quantity(
        "mm", "smallest gap between conductors, one of them rail or switch node", "0.05 .. 25 mm"
    )
    surface: str | None = word(
        SURFACES,
        "kind of surface at the gap, as the columns of IPC-2221 divide them",
        default=adverse("outer-bare"),
        nature="part",
    )


class Wiring(Section):
    """Supply lead, supply connector, trace and spacing of the board."""

    supply_lead: SupplyLead | None = section(SupplyLead, part="supply lead")
    connector: Connector | Literal["none"] | None = section(
        Connector, part="supply connector", can_be_none=True
    )
    trace: Trace | None = section(Trace, part="board trace")
    spacing: Spacing | None = section(Spacing, part="spacing on the board")

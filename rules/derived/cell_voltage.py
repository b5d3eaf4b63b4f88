"""Voltages between which the cells of the pack are kept, and the air round them."""

from ...linter.check import (
    COMMON_PRACTICE,
    Assumption,
    Constant,
    Derived,
    Input,
    Source,
    Way,
    derivation,
)
from ..formulas.maths import smaller
from ..formulas.pack import CHARGE_ENDS, FILLED
from .cell_limits import KIND, LEAD_ACID
from .pack import LITHIUM, by_chemistry
from .ways import as_stated

NO_PROTECTION = {"battery.protection": "none"}
IN_THE_BOX = COMMON_PRACTICE
EMPTIED = Constant("0 V", "nothing ends the discharge", derivation("no cut-off, no lockout"))


def _stop(path: str, meaning: str, **when: str | tuple[str, ...]) -> Way:
    words = {name.replace("__", "."): word for name, word in when.items()}
    return Way(as_stated, {"value": Input(path)}, "value", when=words)


def _filled(kind: str | tuple[str, ...], value: str, basis: Source) -> Way:
    """Of one kind of cell."""
    filled = Constant(value, "charge voltage that fills this kind of cell", basis)
    return Way(as_stated, {"value": filled}, "value", when={KIND: kind})


DERIVED = (
    Derived(
        "v_cell_limit",
        "V",
        "product",
        "charge voltage that one cell allows",
        (
            Way(
                smaller,
                {
                    "a": Input("battery.cell.v_charge:nominal", meaning="as stated, no tolerance"),
                    "b": Input("v_cell_most"),
                },
                formula="smaller of a and b",
                when={KIND: LITHIUM},
            ),
            Way(
                as_stated,
                {"value": Input("v_cell_full")},
                formula="value",
                when={KIND: LITHIUM},
            ),
            Way(
                smaller,
                {
                    "a": Input("battery.cell.v_charge:high", meaning="as stated, with tolerance"),
                    "b": Input("v_cell_most"),
                },
                formula="smaller of a and b",
                when={KIND: (*LEAD_ACID, "nimh")},
            ),
            Way(
                as_stated,
                {"value": Input("v_cell_most")},
                formula="value",
                when={KIND: (*LEAD_ACID, "nimh")},
            ),
        ),
    ),
    Derived(
        "v_cell_charger",
        "V",
        "product",
        "what a charger is set to for one cell, without the burst that equalises flooded ones",
        (
            Way(as_stated, {"value": Input("battery.cell.v_charge")}, formula="value"),
            by_chemistry("lead-acid-flooded", "2.40 V", CHARGE_ENDS),
            Way(as_stated, {"value": Input("v_cell_full")}, formula="value"),
        ),
    ),
    Derived(
        "v_cell_filled",
        "V",
        "product",
        "charge voltage at which nine tenths or more of a cell are filled",
        (
            _filled("li-ion", "4.10 V", FILLED),
            _filled("lfp", "3.40 V", COMMON_PRACTICE),
            _filled(LEAD_ACID, "2.20 V", COMMON_PRACTICE),
            _filled("nimh", "1.40 V", COMMON_PRACTICE),
        ),
    ),
    Derived(
        "v_discharge_end",
        "V",
        "product",
        "pack voltage at which something ends the discharge",
        (
            _stop(
                "battery.protection.v_cutoff",
                "cut-off of the pack",
                battery__protection="fitted",
            ),
            _stop(
                "protection.under_voltage.v_trip",
                "lockout of the amplifier",
                battery__protection="none",
                rail_feed="pack",
                protection__under_voltage="fitted",
            ),
            _stop(
                "supply.v_lockout",
                "lockout of the converter",
                battery__protection="none",
                rail_feed="converter",
            ),
            Way(
                as_stated,
                {"value": EMPTIED},
                "value",
                when={**NO_PROTECTION, "rail_feed": "pack", "protection.under_voltage": "none"},
            ),
        ),
    ),
    Derived(
        "vent_area_seen",
        "cm2",
        "product",
        "free area of each opening of the space in which the battery is charged",
        (
            Way(
                as_stated,
                {"value": Constant("0 m2", "sealed enclosure", IN_THE_BOX)},
                "value",
                when={"thermal.enclosure.openings": "sealed"},
                assumes=Assumption(None, "neutral", IN_THE_BOX),
            ),
        ),
        stated_at="battery.vent_area",
    ),
)

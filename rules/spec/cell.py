"""One cell of the battery, as its data sheet prints it."""

from ...linter.declare import (
    Section,
    Value,
    absent,
    quantity,
    text,
    word,
)
from .designs import BATTERY


class Cell(Section):
    """ONE cell of the pack; a 12 V lead-acid block is six of them."""

    capacity: Value | None = quantity(
        "Ah",
        "capacity of ONE cell when new",
        "0.2 .. 150 Ah",
        given="line",
        concerns=BATTERY,
        also="0.02 .. 0.2 Ah or 150 .. 400 Ah",  # button and prismatic cells
    )
    v_charge: Value | None = quantity(
        "V",
        "voltage of ONE cell at the end of charge; default: by chemistry",
        "1.3 .. 4.4 V",
        given="tol",
        concerns=BATTERY,
        example="4.20 V ± 1 %",
        also="4.4 .. 4.5 V",  # high-voltage lithium-ion
    )
    v_nominal: Value | None = quantity(
        "V",
        "ONE cell: the voltage that makes watt-hours out of ampere-hours; default: by chemistry",
        "1.1 .. 3.9 V",
        concerns=BATTERY,
        example="3.6 V",
    )
    v_oc_low: Value | None = quantity(
        "V",
        "ONE cell at rest, at the lowest charge for which full power is promised",
        "0.9 .. 3.8 V",
        concerns=BATTERY,
        example="3.45 V",
        nature="use",
    )
    r_internal: Value | None = quantity(
        "ohm",
        "ONE cell: resistance from new and warm to aged and cold; a range, not one value",
        "0.5 .. 300 mohm",
        given="range",
        concerns=BATTERY,
        example="28 mohm .. 84 mohm",
        also="0.1 .. 0.5 mohm or 300 .. 3000 mohm",  # big and tiny cells
    )
    i_cont: Value | None = quantity(
        "A",
        "ONE cell: largest continuous discharge current, rms",
        "0.2 .. 150 A",
        given="max",
        concerns=BATTERY,
        example="8 A",
        also="0.02 .. 0.2 A",  # tiny cells
    )
    i_pulse: Value | None = quantity(
        "A",
        "ONE cell: largest discharge current for seconds, peak",
        "0.5 .. 400 A",
        given="max",
        concerns=BATTERY,
        example="15 A",
        also="0.04 .. 0.5 A",  # tiny cells
    )
    i_charge: Value | None = quantity(
        "A",
        "ONE cell: largest charge current; default: half the capacity in one hour",
        "0.1 .. 80 A",
        given="max",
        concerns=BATTERY,
        example="1.7 A",
        also="0.01 .. 0.1 A",  # tiny cells
    )
    t_charge: Value | None = quantity(
        "degC",
        "cell temperatures at which its maker lets it be charged; default: by chemistry",
        "-40 .. 80 degC",
        possible="-100 .. 300 degC",
        given="range",
        concerns=BATTERY,
        example="0 degC .. 45 degC",
    )
    t_discharge: Value | None = quantity(
        "degC",
        "cell temperatures at which its maker lets it be discharged; default: by chemistry",
        "-40 .. 80 degC",
        possible="-100 .. 300 degC",
        given="range",
        concerns=BATTERY,
        example="-20 degC .. 60 degC",
    )
    made_for: str | None = word(
        ("usual", "high-voltage", "cold-charge"),
        "what its data sheet allows beyond its chemistry: charging above 4.2 V, or below 0 degC",
        concerns=BATTERY,
        default=absent("usual"),
    )
    part: str | None = text(
        "type number of the cell; needed where it is made for more than its chemistry",
        example="XYZ1234",
        concerns=BATTERY,
    )

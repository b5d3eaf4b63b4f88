"""Sag and end of discharge of the pack, into the dummy loads."""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import Input
from ..formulas.supply import loaded_voltage
from .shared import CHARGED, PACK, SHOCK, quantity


def sag(v: float, r: float, p: float) -> float:
    """Voltage that the pack loses under a constant power."""
    return v - loaded_voltage(v, r, p)


def end_of_cells(v_cell: float, series: float) -> float:
    """Pack voltage at which the cells are at their lowest."""
    return v_cell * series


STEP = Step(
    title="Pack: sag and cut-off",
    order=190,
    instrument="voltmeter at the pack's connector; thermocouple on a middle cell; watch",
    applies=PACK,
    lines=(
        Line("All channels at rated power for two seconds, dummy loads, pack at low charge."),
        Line("Then at one eighth until something stops; note what stopped, and the time."),
        Line("Charge at once afterwards; leave no pack empty."),
    ),
    hazards=(
        Hazard("pack-current"),
        Hazard("pack-collapse"),
        Hazard("cell-discharge-end"),
        CHARGED,
        SHOCK,
    ),
    readings=(
        Reading(
            "pack-at-rest", "Pack at rest, low charge", quantity("v_pack_low", "V"), stop="below"
        ),
        Reading(
            "pack-sag",
            "Sag from rest to rated power",
            Amount(
                "V",
                sag,
                {"v": Input("v_pack_low"), "r": Input("r_pack"), "p": Input("p_source_rated")},
            ),
        ),
        Reading(
            "amplifier-stops",
            "Rail at which the amplifier stops",
            quantity("protection.under_voltage.v_trip", "V"),
            stop="below",
            applies={"protection.under_voltage": "fitted", "rail_feed": "pack"},
            limit=quantity("battery.protection.v_cutoff", "V"),
        ),
        Reading(
            "pack-cut-off",
            "Pack at its cut-off, if the amplifier does not stop first",
            quantity("battery.protection.v_cutoff", "V"),
            stop="below",
            applies={"battery.protection": "fitted"},
            limit=Amount(
                "V",
                end_of_cells,
                {"v_cell": Input("v_cell_least"), "series": Input("battery.series")},
            ),
        ),
        Reading(
            "cell-temperature",
            "Middle cell",
            quantity("t_discharge_high", "degC"),
            kind="at most",
            limit=quantity("t_discharge_high", "degC"),
        ),
    ),
)

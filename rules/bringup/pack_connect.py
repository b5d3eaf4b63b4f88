"""The pack, connected for the first time: polarity, voltage, charging current."""

from ...linter.bringup_step import Hazard, Line, Reading, Step
from .shared import CHARGED, PACK, SHOCK, quantity

STEP = Step(
    title="The pack, first connection",
    order=180,
    instrument="voltmeter at the pack's connector; oscilloscope with current probe in its lead",
    applies=PACK,
    lines=(
        Line("Polarity at the pack's connector, with the voltmeter, before it is plugged in."),
        Line(
            "Fit the fuse of {i} at the pack.",
            {"i": quantity("protection.fuse.i_rated", "A")},
            applies={"protection.fuse": "fitted"},
        ),
        Line(
            "On a surface that cannot burn, with sand or a lidded metal bin in reach; never alone."
        ),
        Line("Plug it in once, stage off; note the charging current and the rail."),
    ),
    hazards=(
        Hazard("reverse-polarity"),
        Hazard("unprotected-source-power"),
        Hazard("pack-current"),
        Hazard("inrush-limiter"),
        Hazard("protection-present"),
        CHARGED,
        SHOCK,
    ),
    readings=(
        Reading(
            "pack-full",
            "Pack full, its charger still on",
            quantity("v_pack_full", "V"),
            limit=quantity("v_pack_full", "V").at("highest"),
        ),
        Reading(
            "pack-inrush",
            "Charging current, peak",
            quantity("i_inrush", "A"),
            kind="at most",
            limit=quantity("i_surge_path", "A"),
        ),
    ),
)

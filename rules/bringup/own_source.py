"""The product's own supply: its rails alone first, then the stage on it, without load."""

from ...linter.bringup_step import Hazard, Line, Reading, Step
from .shared import BY_LICENCE, CHARGED, MAINS, NO_PACK, RAIL_LASTING, SHOCK, quantity

STEP = Step(
    title="The product's own supply",
    order=140,
    instrument="voltmeter on each rail; oscilloscope with current probe in the supply lead",
    applies=NO_PACK,
    lines=(
        Line(
            "Rails off and discharged. Fit the fuse of {i}.",
            {"i": quantity("protection.fuse.i_rated", "A")},
            applies={"protection.fuse": "fitted"},
        ),
        Line(
            "Mains side closed, on a residual-current device and an isolating switch in reach.",
            applies=MAINS,
        ),
        Line("Supply alone first: polarity and voltage. Then, switched off, connect the stage."),
        Line("Switch on without load; note the charging current and the rails."),
    ),
    hazards=(BY_LICENCE, CHARGED, SHOCK, Hazard("fuse-current"), Hazard("inrush-limiter")),
    readings=(
        Reading(
            "own-rail",
            "Each rail, no load",
            quantity("v_rail_high", "V"),
            limit=RAIL_LASTING,
        ),
        Reading(
            "inrush-current",
            "Charging current of a rail, peak",
            quantity("i_inrush", "A"),
            kind="at most",
            limit=quantity("i_surge_path", "A"),
        ),
    ),
)

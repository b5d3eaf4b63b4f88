"""Inspection before any power: parts the wrong way round, solder bridges, gaps, shorted rails.

Most first boards that burn hold a part that is the wrong way round.  A rail that measures
less than the bench supply's voltage over its current limit would hold it in its limit.
"""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import Caution, Input
from ..formulas.bench import supply_limit
from ..formulas.constants import TABLE_METRE, TABLE_MILLIMETRE, TABLE_VOLT
from ..formulas.safety import gap_needed
from .shared import AT_FIRST, BY_LICENCE, CHARGED, LIMIT_MARGIN, MAINS, PACK, SHOCK, quantity


def least_resistance(v: float, i_idle: float, i_charge: float, margin: float) -> float:
    """The rail as a resistance that just takes the current limit at the first voltage."""
    return v / supply_limit(i_idle, i_charge, margin)


def needed(
    v_rail: float,
    rail_count: float,
    degree: float,
    surface: str,
    altitude: float,
    volt: float,
    metre: float,
    millimetre: float,
) -> float:
    """The gap that all rails together need."""
    return gap_needed(v_rail * rail_count, degree, surface, altitude, volt, metre, millimetre)


LEAST = Amount(
    "ohm",
    least_resistance,
    {
        "v": Input("v_bench"),
        "i_idle": Input("i_idle"),
        "i_charge": Input("i_charge"),
        "margin": LIMIT_MARGIN,
    },
    "lowest",
    2,
)
GAP = Amount(
    "mm",
    needed,
    {
        "v_rail": Input("v_rail_high"),
        "rail_count": Input("rail_count"),
        "degree": Input("pollution_degree"),
        "surface": Input("wiring.spacing.surface"),
        "altitude": Input("environment.altitude"),
        "volt": TABLE_VOLT,
        "metre": TABLE_METRE,
        "millimetre": TABLE_MILLIMETRE,
    },
)

STEP = Step(
    title="Inspection, without power",
    order=10,
    instrument="lens with good light; multimeter, ohms range; calliper",
    lines=(
        Line("Mains side: only the certified converter, closed and unplugged.", applies=MAINS),
        Line(
            "Pack disconnected and put away. Nothing connected to the supply terminals.",
            applies=PACK,
        ),
        Line("Loudspeakers off. Nothing on the output terminals."),
        Line(
            "Polarity of every electrolytic capacitor, diode, connector and integrated part;"
            " solder bridges; joints under pads."
        ),
        Line("Output to each rail and to ground, both ways: no path near 0 ohm."),
        Line("Meter on the rail until the reading settles: the bulk capacitors charge from it."),
    ),
    hazards=(
        BY_LICENCE,
        CHARGED,
        SHOCK,
        Hazard("unprotected-source-power", PACK),
        Hazard(Caution("CAUTION", "Clipped leads fly and cut. Wear eye protection.")),
    ),
    readings=(
        Reading(
            "rail-resistance",
            "Supply terminals, each rail to ground",
            LEAST,
            kind="at least",
            stop="below",
            limit=LEAST,
            bench=AT_FIRST,
        ),
        Reading(
            "bleeder-resistance",
            "The same, through the discharge resistor",
            quantity("protection.bleeder.r", "ohm"),
            kind="at most",
            stop="below",
            applies={"protection.bleeder": "fitted", "rail_feed": ("pack", "source")},
        ),
        Reading(
            "smallest-gap",
            "Smallest gap between rails and nodes",
            quantity("wiring.spacing.gap", "mm"),
            kind="at least",
            stop="below",
            limit=GAP,
        ),
    ),
)

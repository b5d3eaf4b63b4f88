"""First power-up on a bench supply whose current limit leaves room for idle and charging alone.

The limit does not hold back what the bulk capacitors hold, so the voltage starts where the
stage just runs.
"""

from ...linter.bringup_step import Amount, Hazard, Line, Reading, Step
from ...linter.check import Caution, Constant, Input
from ..formulas.bench import supply_limit
from ..formulas.safety import stored_energy
from .shared import (
    AT_FIRST,
    AT_FULL,
    CHARGED,
    FIRST,
    FULL_AT_ONCE,
    HELD,
    IDLE_MOST,
    LIMIT_MARGIN,
    PACK,
    RAIL_LASTING,
    RAISED,
    SHOCK,
    quantity,
)


def power(v: float, i_idle: float, i_charge: float, margin: float) -> float:
    """Power that the bench supply gives to a fault while its limit holds the voltage."""
    return v * supply_limit(i_idle, i_charge, margin)


_LIMIT: dict[str, Input | Constant] = {
    "i_idle": Input("i_idle"),
    "i_charge": Input("i_charge"),
    "margin": LIMIT_MARGIN,
}
LIMIT = Amount("A", supply_limit, _LIMIT, "highest", 2)
FAULT = Amount("W", power, {"v": Input("v_bench"), **_LIMIT}, "highest", 2)
ENERGY = Amount(
    "J", stored_energy, {"c": Input("supply.bulk.c"), "v": Input("v_rail_high")}, "highest", 2
)

STEP = Step(
    title="First power-up on a current-limited supply",
    order=20,
    instrument="isolated bench supply with current limit and meter; voltmeter on each rail",
    bench=AT_FIRST,
    lines=(
        Line("A bench supply in place of the pack.", applies=PACK),
        Line(
            "A bench supply in place of the product's own, one for each rail.",
            applies={"supply.rails": "split"},
        ),
        Line(
            "A bench supply in place of the product's own.",
            applies={"supply.rails": "single", "supply.source": ("dc-source", "mains-converter")},
        ),
        Line(
            "Set {voltage}, limit {limit} (idle with a margin, and 5 s to charge the capacitors).",
            {"voltage": FIRST, "limit": LIMIT},
        ),
        Line(
            "At this limit a fault takes {fault} from each supply, but first the {energy} that the"
            " capacitors of a rail hold, and what the bench supply's own hold.",
            {"fault": FAULT, "energy": ENERGY},
        ),
        Line(
            "The converter starts at that and brings the rail to its full voltage at once.",
            applies=HELD,
        ),
        Line("No load, no signal, inputs shorted. Cover the board. Switch on."),
        Line("Off at once if the limit lasts beyond 10 s, or at smell, smoke or noise."),
        Line("Touch nothing: look with a thermal camera, or measure when off."),
    ),
    hazards=(
        Hazard("dead-time-margin", RAISED),
        Hazard("device-voltage-margin", RAISED),
        Hazard(FULL_AT_ONCE, HELD),
        Hazard("pumping-against-capacitor"),
        CHARGED,
        SHOCK,
        Hazard(
            Caution("WARNING", "Two supplies in series reach above 60 V. Insulate every terminal."),
            {"supply.rails": "split", "rail_harmless": "no"},
        ),
    ),
    readings=(
        Reading(
            "first-supply-current",
            "Current of each supply, capacitors charged",
            quantity("i_idle", "A"),
            limit=LIMIT,
        ),
        Reading(
            "full-supply-current",
            "The same, raised slowly to the full voltage",
            quantity("i_idle", "A"),
            bench=AT_FULL,
            limit=IDLE_MOST,
        ),
        Reading(
            "full-rail",
            "Each rail by then",
            quantity("v_rail_high", "V"),
            bench=AT_FULL,
            limit=RAIL_LASTING,
        ),
    ),
)

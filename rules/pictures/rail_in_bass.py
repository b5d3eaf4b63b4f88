"""ONE rail over one period of the lowest note, all channels at rated power.

As ``battery_in_bass``, for a rail that is no battery by itself; the crest is that of the check
of the sagging rail.
"""

from ...linter.check import Arguments, Input
from ...linter.picture import Amount, Axis, Curve, Curves, Mark
from ..derived.power import crest_inputs
from .battery_in_bass import BASS, NOTE, period, sagging
from .parts import as_read, nothing, of

RAIL: Arguments = {
    **BASS,
    "v_open": Input("v_rail_low"),
    "r": Input("r_rail_known"),
    **crest_inputs("rail"),
}

PICTURE = Curves(
    title="Does the rail hold through the lowest note?",
    each="product",
    x=Axis("time", "s", Amount({}, nothing), Amount(BASS, period)),
    y=Axis("ONE rail", "V"),
    curves=(
        Curve(
            "rail",
            (Amount(RAIL, sagging, {"rail_feed": ("source", "converter")}),),
        ),
    ),
    marks=(
        Mark("lockout", "y", (of("protection.under_voltage.v_trip"),), "trip"),
        Mark("trough", "y", (Amount({}, as_read),), "measured", measures="v_rail_loaded"),
    ),
    note=NOTE,
    checks=("rail-trough", "rail-ripple"),
)

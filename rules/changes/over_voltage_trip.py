"""An over-voltage trip at another voltage, with the parts that it guards.

A trip above the rating of the capacitors guards nothing: they follow it, and so do the output
devices.
"""

from ...linter.check import COMMON_PRACTICE, Input
from ...linter.design_change import DesignChange, Follow
from .cells_in_series import CAPACITORS
from .device_class import DEAD_TIME, DEVICE, VOLTAGE


def above_the_trip(v_trip: float, v_rail: float) -> float:
    """A rating that neither the rail at nine tenths nor the trip itself exceeds."""
    return max(v_trip, v_rail / 0.9)


CHANGE = DesignChange(
    title="another over-voltage trip, with capacitors and output devices above it",
    moves=("protection.over_voltage.v_trip",),
    kind="part",
    follows=(
        Follow(
            "supply.bulk.v_rated",
            above_the_trip,
            {"v_trip": Input("protection.over_voltage.v_trip"), "v_rail": Input("v_rail_high")},
            CAPACITORS,
            "up",
        ),
        VOLTAGE,
        *DEVICE,
        DEAD_TIME,
    ),
    sources=(COMMON_PRACTICE,),
)

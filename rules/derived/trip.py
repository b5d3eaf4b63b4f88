"""What stands across a leg, or at the pins of a part, when the over-voltage trip acts."""

from ...linter.check import Derived, Input, Way, derivation
from .ways import as_stated

V_TRIP = Input("protection.over_voltage.v_trip")


def both_rails(v_trip: float, v_rail_high: float) -> float:
    """One rail at its trip, the other one at its highest without pumping."""
    return v_trip + v_rail_high


DERIVED = (
    Derived(
        "v_leg_at_trip",
        "V",
        "product",
        "voltage across a leg when the over-voltage trip acts",
        (
            Way(as_stated, {"value": V_TRIP}, "value", when={"supply.rails": "single"}),
            Way(
                both_rails,
                {
                    "v_trip": V_TRIP,
                    "v_rail_high": Input("v_rail_high", meaning="the other rail, highest"),
                },
                "v_trip + v_rail_high",
                when={"supply.rails": "split"},
            ),
        ),
        sources=(derivation("a leg spans both rails, of which one is pumped at a time"),),
    ),
    Derived(
        "v_leg_absolute",
        "V",
        "channel",
        "absolute maximum of the voltage across a leg",
        (
            Way(
                as_stated,
                {"value": Input("output_stage.device.v_supply_abs")},
                "value",
                when={"output_stage.devices": "integrated"},
            ),
            Way(
                as_stated,
                {"value": Input("output_stage.device.v_dss")},
                "value",
                when={"output_stage.devices": "discrete"},
            ),
        ),
    ),
    Derived(
        "v_leg_lasting",
        "V",
        "channel",
        "voltage across a leg that may last: as recommended, else the absolute maximum",
        (
            Way(
                as_stated,
                {"value": Input("output_stage.device.v_supply:high")},
                "value",
                when={"output_stage.devices": "integrated"},
            ),
            Way(as_stated, {"value": Input("v_leg_absolute")}, "value"),
        ),
    ),
)

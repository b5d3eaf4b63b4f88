"""Where a part ends its heat: at its own trip, else at the limit of its junction."""

from ...linter.check import Assumption, Constant, Derived, Input, Source, Way
from .ways import as_stated

DEVICE = "output_stage.device"
TYPICAL = Source(
    "TPA3106D1 data sheet SLOS516C; TDA7491LP data sheet Doc ID 13541",
    "p. 4: thermal trip 150 degC; table 5: shutdown at 150 degC, typical",
)
USUAL_LIMIT = Constant("150 degC", "junction at which silicon is usually ended", TYPICAL)

DERIVED: tuple[Derived, ...] = (
    Derived(
        "t_end",
        "degC",
        "channel",
        "junction at which the part ends its heat; no resistance is known beyond",
        (
            Way(
                as_stated,
                {"value": Input("protection.over_temperature.t_trip")},
                "value",
                when={
                    "protection.over_temperature.at": "junction",
                    "output_stage.devices": "integrated",
                },
            ),
            Way(as_stated, {"value": Input(f"{DEVICE}.t_j_max")}, "value"),
            Way(
                as_stated,
                {"value": USUAL_LIMIT},
                "value",
                assumes=Assumption(None, "neutral", TYPICAL),
            ),
        ),
    ),
)

"""A converter that keeps the rail within what the power stage is made for.

Where a full pack or a generous source lies above the limits of an integrated stage, the rail
is regulated below them.  The other way is fewer cells.
"""

from ...linter.check import COMMON_PRACTICE, Input, derivation
from ...linter.design_change import DesignChange, Follow


def below(v_most: tuple[float, ...]) -> float:
    """The recommended maximum of the weakest part, less the tolerance of the regulator."""
    return min(v_most) / 1.05


CHANGE = DesignChange(
    title="a regulated rail within the limits of the power stage",
    helps=("supply-above-recommended", "supply-above-part-limit", "pin-overshoot"),
    applies={"rail_feed": "pack"},
    follows=(
        Follow("supply.converter", word="step-up-down", new=True),
        Follow(
            "supply.v_rail",
            below,
            {"v_most": Input("all output_stage.device.v_supply:high")},
            "0.5 V",
            "down",
            spread="± 2 %",
            new=True,
        ),
    ),
    sources=(derivation("rail and its tolerance below the part's limit"), COMMON_PRACTICE),
)

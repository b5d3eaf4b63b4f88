"""A high-pass below the tuning of a vented box, with its order.

Corner and order belong together: solved for first order, as a filter of which nothing is said, the
corner comes out far too high, and takes the bass for which the box was tuned.  The usual one is
of second order at 0.8 to 0.9 of the tuning.
"""

from ...linter.check import COMMON_PRACTICE, Constant, Input
from ...linter.design_change import DesignChange, Follow
from ..formulas.driver import SMALL_VENTED
from .high_pass import ORDER, as_usual


def below(share: float, f_b: float) -> float:
    """A share of the tuning."""
    return share * f_b


CHANGE = DesignChange(
    title="a high-pass at 0.8 of the tuning, 12 dB per octave",
    kind="part",
    helps=("vented-box-unloading",),
    applies={"loudspeaker.enclosure.type": "vented"},
    follows=(
        Follow(
            "loudspeaker.high_pass.f",
            below,
            {
                "share": Constant("0.8", "corner over the tuning", COMMON_PRACTICE),
                "f_b": Input("loudspeaker.enclosure.f_b"),
            },
            "1 Hz",
            "up",
            new=True,
        ),
        Follow(
            "loudspeaker.high_pass.order",
            as_usual,
            {"order": ORDER},
            "1",
            "up",
            new=True,
        ),
    ),
    sources=(SMALL_VENTED, COMMON_PRACTICE),
)
